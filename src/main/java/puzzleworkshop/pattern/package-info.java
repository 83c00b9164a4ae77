/**
 * The cut lines of a puzzle: piece grids, patterns from a seed, cut files, the inspection of cut files drawn elsewhere,
 * and whether a piece is a small part.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Pattern")
package puzzleworkshop.pattern;
