package puzzleworkshop.placing;

import puzzleworkshop.geometry.Point;

/**
 * One mark visited with the pilot dot.
 *
 * @param mark 1 to 4: top left of the print as drawn, then clockwise
 * @param drawn where it is on the print, millimetres, not turned
 * @param shownX X as the machine showed it, in its own unit
 * @param shownY Y likewise
 */
public record MarkVisit(int mark, Point drawn, double shownX, double shownY) {

    public MarkVisit {
        if (mark < 1 || mark > 4) {
            throw new IllegalArgumentException("Marks are numbered 1 to 4, not " + mark);
        }
        if (!Double.isFinite(shownX) || !Double.isFinite(shownY)) {
            throw new IllegalArgumentException("Coordinates are numbers");
        }
    }
}
