/**
 * The customer's page: a private link to one order, on which the picture is sent, seen with its cut lines, approved or
 * wished otherwise.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Proofs")
package puzzleworkshop.proofs;
