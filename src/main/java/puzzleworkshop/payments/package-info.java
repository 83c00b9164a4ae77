/**
 * Money that customers paid for their orders or got back, and orders whose work begins only when money has come. Low enough
 * that print runs and the plan of the week can ask; invoices stand above, in papers.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Payments")
package puzzleworkshop.payments;
