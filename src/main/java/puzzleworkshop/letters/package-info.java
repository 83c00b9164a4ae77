/**
 * Letters to customers: their wording, what was written about each order, and the outbox from which mail is sent where the
 * owner set that up.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Letters")
package puzzleworkshop.letters;
