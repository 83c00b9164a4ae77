package puzzleworkshop.pattern;

import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * One piece of a pattern, as drawn (the beam takes half its kerf off all round).
 *
 * @param number from 1, in reading order
 * @param outline closed, clockwise as seen
 * @param areaMm2 area inside the outline
 * @param centre of its area
 * @param atEdge whether a part of the outer edge belongs to it
 * @param shape name of the personal shape it is, empty for an ordinary piece
 */
public record Piece(int number, CurvePath outline, double areaMm2, Point centre, boolean atEdge, String shape) {

    public boolean isPersonal() {
        return !shape.isEmpty();
    }
}
