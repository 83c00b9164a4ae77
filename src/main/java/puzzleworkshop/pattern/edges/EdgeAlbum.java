package puzzleworkshop.pattern.edges;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The edges drawn so far, each from both sides, to ask how near a new one comes to the one most like it. Their marks lie one
 * after another in a single row: of thousands of edges nearly all are told apart there, without looking at their curves.
 */
public final class EdgeAlbum {

    private final List<EdgeShape> shapes = new ArrayList<>();
    private float[] marks = new float[256 * EdgeShape.MARKS];

    public void add(EdgeShape shape) {
        keep(shape);
        keep(shape.turned());
    }

    private void keep(EdgeShape shape) {
        int from = shapes.size() * EdgeShape.MARKS;
        if (from == marks.length) {
            marks = Arrays.copyOf(marks, 2 * marks.length);
        }
        System.arraycopy(shape.marks, 0, marks, from, EdgeShape.MARKS);
        shapes.add(shape);
    }

    /** Whether some edge comes nearer than this. */
    public boolean hasNearer(EdgeShape shape, double limitMm) {
        for (int i = 0; i < shapes.size(); i++) {
            if (shape.couldBeWithin(marks, i * EdgeShape.MARKS, limitMm)
                    && shape.mayFit(shapes.get(i), limitMm)
                    && shape.distanceTo(shapes.get(i), limitMm) < limitMm) {
                return true;
            }
        }
        return false;
    }

    /**
     * Distance to the edge most like it, as far as it lies between two bounds.
     *
     * @param enough distances from here on do not interest: then this is answered
     * @param tooNear as soon as one is this near, the search ends with it
     */
    public double nearest(EdgeShape shape, double enough, double tooNear) {
        double nearest = enough;
        for (int i = 0; i < shapes.size(); i++) {
            if (shape.couldBeWithin(marks, i * EdgeShape.MARKS, nearest) && shape.mayFit(shapes.get(i), nearest)) {
                nearest = Math.min(nearest, shape.distanceTo(shapes.get(i), nearest));
                if (nearest <= tooNear) {
                    return nearest;
                }
            }
        }
        return nearest;
    }
}
