/** Settings of a machine for a kind of board, and how far they are proven. */
@org.springframework.modulith.NamedInterface("settings")
package puzzleworkshop.cutting.settings;
