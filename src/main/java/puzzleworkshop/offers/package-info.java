/** New order: what a customer asks for and everything that is worked out for it while one types. */
@org.springframework.modulith.ApplicationModule(displayName = "Offers")
package puzzleworkshop.offers;
