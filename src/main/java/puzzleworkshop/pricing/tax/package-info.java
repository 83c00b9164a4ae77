/** Value added tax: rates, rounding, sums. */
@org.springframework.modulith.NamedInterface("tax")
package puzzleworkshop.pricing.tax;
