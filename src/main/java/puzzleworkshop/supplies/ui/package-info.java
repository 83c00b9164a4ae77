/** The screen of supplies: what is on the shelf, what to buy, what was used. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.supplies.ui;
