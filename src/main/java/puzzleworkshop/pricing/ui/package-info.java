/** Screens of money before it is earned: rates and prices, and the price bar that other rooms' screens show. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.pricing.ui;
