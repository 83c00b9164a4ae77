/** Rates, price rules and lists, each with the day from which it holds. */
@org.springframework.modulith.NamedInterface("rates")
package puzzleworkshop.pricing.rates;
