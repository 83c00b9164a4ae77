/**
 * Papers and the money on them: quotes, invoices with numbers without gaps, credit notes, payments, who owes what, and
 * what the accountant gets.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Papers")
package puzzleworkshop.papers;
