/** Puzzle pieces in photos: which pieces of a pattern they are, and which one is missing. */
@org.springframework.modulith.NamedInterface("pieces")
package puzzleworkshop.camera.pieces;
