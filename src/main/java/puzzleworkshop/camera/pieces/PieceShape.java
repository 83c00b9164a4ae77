package puzzleworkshop.camera.pieces;

/**
 * A piece of a pattern as it should look.
 *
 * @param number as the pattern counts it
 * @param ring its edge as drawn, clockwise as seen from the picture side; x, y in turn, mm
 */
public record PieceShape(int number, double[] ring) {}
