package puzzleworkshop.camera.walls;

import java.util.Arrays;
import java.util.Optional;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.measure.Refused;

/**
 * Notches that the board's own wall hides. No paper is seen in them, so the seen edge runs past; but of the plane of the top nothing is
 * hidden, and there their inner walls are seen. Where walls are clearly darker than the face (cut by a laser, or turned away from the
 * light), what is as dark from the edge inwards is wall and no board. Walls as bright as the face tell nothing, and all stays as it is.
 */
public final class DarkNotches {

    /** Depths at which the face is read, mm, and points to both sides over which. */
    private static final double FACE_FROM = 3;

    private static final int FACE_READINGS = 6;
    private static final int AROUND = 30;
    private static final int EACH = 5;

    /** A wall is read where so much of it is seen, mm, at so many points at least. */
    private static final double WALL_SEEN = 1;

    private static final int FEWEST = 12;

    /** Walls brighter than this share of the face tell nothing. */
    private static final double MOST_WALL = 0.45;

    /** Wood's own dark lines are brighter than this share of the face. */
    private static final double DARKEST_GRAIN = 0.6;

    /** A wall that hides less than this hides no notch, mm. */
    private static final double LEAST_HIDDEN = 0.6;

    private static final double STEP = 0.15;

    /** Less than this is the photo's blur, mm. */
    private static final double LEAST = 0.45;

    /** What is dark farther in than this may be a notch as well as a knot, mm. */
    private static final double DEEPEST = 15;

    /** What is narrower is a pore, and what begins farther in a knot, mm. */
    private static final double NARROWEST = 0.3;

    private static final double FARTHEST_IN = 2;

    /** A notch that is not at its end by then is asked about. */
    private static final int PASSES = 6;

    private final Photo photo;
    private final View view;
    private final double thickness;
    private final double[] ring;
    private final double[] normals;
    private final int size;

    private DarkNotches(Photo photo, View view, double thickness, double[] ring) {
        this.photo = photo;
        this.view = view;
        this.thickness = thickness;
        this.ring = ring;
        normals = Ring.normals(ring, 4);
        size = Ring.size(ring);
    }

    /**
     * The same ring without what is wall.
     *
     * @param ring edge of the top, in mm, points {@link Ring#SPACING} apart, the board to its right
     * @throws Refused when something dark reaches so far in that it cannot be told what it is
     */
    public static double[] leftOut(double[] ring, Photo photo, View view, double thickness) {
        double[] now = ring;
        for (int pass = 0; pass < PASSES; pass++) {
            // where a notch bends away from the normals, the next pass goes on from there
            double[] next = new DarkNotches(photo, view, thickness, now).leftOut(new Silhouette(view, thickness));
            if (next == now) {
                return now;
            }
            now = next;
        }
        throw new Refused("camera.outline.notch");
    }

    /** The same ring where nothing within it is as dark as a wall. */
    private double[] leftOut(Silhouette silhouette) {
        double[] face = face();
        Optional<Double> limit = wall(silhouette, face).map(wall -> Math.min(DARKEST_GRAIN, Math.sqrt(wall)));
        if (limit.isEmpty()) {
            return ring;
        }
        double[] moved = ring.clone();
        boolean some = false;
        for (int i = 0; i < size; i++) {
            double hidden = silhouette.hidden(ring[2 * i], ring[2 * i + 1]);
            double deep = hidden < LEAST_HIDDEN ? 0 : dark(i, limit.get() * face[i], Math.min(hidden, FARTHEST_IN));
            if (deep > DEEPEST) {
                throw new Refused("camera.outline.notch");
            }
            if (deep > LEAST) {
                some = true;
                moved[2 * i] -= deep * normals[2 * i];
                moved[2 * i + 1] -= deep * normals[2 * i + 1];
            }
        }
        return some ? Ring.spaced(moved, Ring.SPACING) : ring;
    }

    /** Brightness of the face near each point: the median of what is seen farther in along a stretch. */
    private double[] face() {
        double[][] read = new double[size][FACE_READINGS];
        for (int i = 0; i < size; i++) {
            for (int k = 0; k < FACE_READINGS; k++) {
                read[i][k] = bright(i, FACE_FROM + k, -thickness);
            }
        }
        double[] face = new double[size];
        for (int i = 0; i < size; i++) {
            double[] some = new double[(2 * AROUND / EACH + 1) * FACE_READINGS];
            int count = 0;
            for (int on = -AROUND; on <= AROUND; on += EACH) {
                System.arraycopy(read[Math.floorMod(i + on, size)], 0, some, count, FACE_READINGS);
                count += FACE_READINGS;
            }
            Arrays.sort(some);
            face[i] = some[count / 2];
        }
        return face;
    }

    /** Brightness of the walls that face the camera as a share of the face's; nothing where they are seen too little or too bright. */
    private Optional<Double> wall(Silhouette silhouette, double[] face) {
        double[] shares = new double[size];
        int count = 0;
        for (int i = 0; i < size; i++) {
            if (silhouette.wall(ring, normals, i) > WALL_SEEN) {
                shares[count++] = bright(i, 0, -thickness / 2) / Math.max(1e-6, face[i]);
            }
        }
        Arrays.sort(shares, 0, count);
        return count < FEWEST || shares[count / 2] > MOST_WALL ? Optional.empty() : Optional.of(shares[count / 2]);
    }

    /** How far in it is dark, where it is dark at the edge or just within it, mm. */
    private double dark(int i, double limit, double within) {
        double from = 0;
        while (from < within && bright(i, from, -thickness) >= limit) {
            from += STEP;
        }
        double deep = from;
        while (deep <= DEEPEST && bright(i, deep, -thickness) < limit) {
            deep += STEP;
        }
        return deep - from < NARROWEST ? 0 : deep;
    }

    private double bright(int i, double deep, double z) {
        double[] uv = new double[2];
        return view.project(ring[2 * i] - deep * normals[2 * i], ring[2 * i + 1] - deep * normals[2 * i + 1], z, uv)
                ? photo.brightness(uv[0], uv[1])
                : 1;
    }
}
