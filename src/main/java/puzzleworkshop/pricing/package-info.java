/**
 * What a puzzle costs and what it must sell for: rates with dates, the cost sheet as lines that say where they come
 * from, and the price that leaves the margin after fees and VAT.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Pricing")
package puzzleworkshop.pricing;
