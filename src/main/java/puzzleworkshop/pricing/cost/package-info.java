/** What an order costs, line by line. */
@org.springframework.modulith.NamedInterface("cost")
package puzzleworkshop.pricing.cost;
