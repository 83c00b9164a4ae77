/**
 * Small pieces that every screen shows alike: numbers in the house's units, sentences in its language, verdicts,
 * drawings as SVG.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Display")
package puzzleworkshop.display;
