/** Machines and settings: what can be cut, what the trials say, and the cut at the bench. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.cutting.ui;
