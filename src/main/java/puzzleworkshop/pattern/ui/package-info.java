/**
 * Drawings of cut lines for every screen and paper, the choice of a pattern, and the screen that checks a cut file drawn
 * elsewhere.
 */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.pattern.ui;
