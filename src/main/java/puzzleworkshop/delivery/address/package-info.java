/** How an address is written in each country, and which one an order goes to. */
@org.springframework.modulith.NamedInterface("address")
package puzzleworkshop.delivery.address;
