/**
 * What is set once for the whole workshop: its name, money and units, the trade numbers, the stages of an order and
 * what each stage takes.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Workshop")
package puzzleworkshop.workshop;
