package puzzleworkshop.camera.outline;

import java.util.List;
import puzzleworkshop.geometry.Point;

/**
 * A board found in a photo, in millimetres on the plane of the sheet.
 *
 * @param outer its edge, clockwise as seen
 * @param holes what shows through it or is dark as a knot, each a ring
 * @param uncertaintyMm the edge is surely not farther inside than this
 * @param straight edges that are straight, of 20 mm and more
 * @param squared of them, set square to each other
 * @param squaredWithinMm how far an end of those lay from square in the photo, at most
 * @param heightMm of its top over the sheet, for looking its corners up in the photo
 */
public record FoundBoard(
        List<Point> outer,
        List<List<Point>> holes,
        double uncertaintyMm,
        int straight,
        int squared,
        double squaredWithinMm,
        double heightMm) {

    public FoundBoard {
        outer = List.copyOf(outer);
        holes = holes.stream().map(List::copyOf).toList();
    }
}
