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
    private int[] later = new int[64];
    private float[] marks = new float[256 * EdgeMarks.COUNT];

    public void add(EdgeShape shape) {
        keep(shape);
        keep(shape.turned());
    }

    private void keep(EdgeShape shape) {
        int from = shapes.size() * EdgeMarks.COUNT;
        if (from == marks.length) {
            marks = Arrays.copyOf(marks, 2 * marks.length);
        }
        System.arraycopy(shape.marks, 0, marks, from, EdgeMarks.COUNT);
        shapes.add(shape);
    }

    /**
     * Whether some edge comes nearer than this. Those whose first waves already lie within it are looked at first: where there
     * is one, it is found soon.
     */
    public boolean hasNearer(EdgeShape shape, double limitMm) {
        int count = 0;
        for (int i = 0; i < shapes.size(); i++) {
            double apart = EdgeMarks.apart(shape.marks, marks, i * EdgeMarks.COUNT, limitMm);
            if (apart < limitMm * limitMm) {
                if (isNearer(shape, i, limitMm)) {
                    return true;
                }
            } else if (apart < Double.POSITIVE_INFINITY) {
                if (count == later.length) {
                    later = Arrays.copyOf(later, 2 * count);
                }
                later[count++] = i;
            }
        }
        for (int k = 0; k < count; k++) {
            if (isNearer(shape, later[k], limitMm)) {
                return true;
            }
        }
        return false;
    }

    private boolean isNearer(EdgeShape shape, int i, double limitMm) {
        EdgeShape other = shapes.get(i);
        return FirstOrderFit.mayBeWithin(shape, other, limitMm)
                && BestMotion.distanceMm(shape, other, limitMm) < limitMm;
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
            if (EdgeMarks.apart(shape.marks, marks, i * EdgeMarks.COUNT, nearest) < Double.POSITIVE_INFINITY) {
                nearest = Math.min(nearest, shape.distanceTo(shapes.get(i), nearest));
                if (nearest <= tooNear) {
                    return nearest;
                }
            }
        }
        return nearest;
    }
}
