package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.List;

/** The edges drawn so far, each from both sides, to ask how near a new one comes to the one most like it. */
final class EdgeAlbum {

    private final List<EdgeShape> shapes = new ArrayList<>();
    private final List<Integer> owners = new ArrayList<>();

    void add(int edge, EdgeShape shape) {
        shapes.add(shape);
        owners.add(edge);
        shapes.add(shape.turned());
        owners.add(edge);
    }

    void remove(int edge) {
        for (int i = owners.size() - 1; i >= 0; i--) {
            if (owners.get(i) == edge) {
                owners.set(i, owners.getLast());
                owners.removeLast();
                shapes.set(i, shapes.getLast());
                shapes.removeLast();
            }
        }
    }

    /** Whether some edge comes nearer than this. */
    boolean hasNearer(EdgeShape shape, double limitMm) {
        for (EdgeShape other : shapes) {
            if (shape.couldBeWithin(other, limitMm) && shape.distanceTo(other, limitMm) < limitMm) {
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
    double nearest(EdgeShape shape, double enough, double tooNear) {
        double nearest = enough;
        for (EdgeShape other : shapes) {
            if (shape.couldBeWithin(other, nearest)) {
                nearest = Math.min(nearest, shape.distanceTo(other, nearest));
                if (nearest <= tooNear) {
                    return nearest;
                }
            }
        }
        return nearest;
    }
}
