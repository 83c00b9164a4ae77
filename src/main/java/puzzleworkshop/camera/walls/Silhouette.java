package puzzleworkshop.camera.walls;

import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.Sweep;

/**
 * From the edge seen on the plane of the sheet to the board's own edge. Where a side turns away from the camera, its top edge is
 * seen against the sheet, and the top lies nearer by the thickness: it shrinks towards the point below the camera by (H − t)/H. Where
 * a side faces the camera, its wall is seen down to the sheet, and the edge is where it stands; so it is whatever the wall looks like,
 * for a wall as bright as the face is not told from it.
 */
public final class Silhouette {

    private static final double SWEEP_STEP = 0.8;
    private static final int MOST_STEPS = 24;

    private final double thickness;
    private final double eyeX;
    private final double eyeY;
    private final double height;

    public Silhouette(View view, double thickness) {
        this.thickness = thickness;
        double[] eye = view.eye();
        eyeX = eye[0];
        eyeY = eye[1];
        height = -eye[2];
    }

    /** How far the top of a side facing the camera is seen from its foot, along the normal, mm; below zero where it turns away. */
    public double wall(double[] ring, double[] normals, int i) {
        double facing = normals[2 * i] * (eyeX - ring[2 * i]) + normals[2 * i + 1] * (eyeY - ring[2 * i + 1]);
        return facing * thickness / (height - thickness);
    }

    /**
     * The same ring as it lies on the board, points {@link Ring#SPACING} apart. What is seen is the board swept from its foot
     * to where its top is seen, along the lines that run away from the point below the camera; so the board is what remains when the
     * same sweep is taken off again (an erosion by a short stretch of those lines), and a hole in it is swept up.
     */
    public double[] onBoard(double[] ring) {
        double shrink = (height - thickness) / height;
        // in steps that are narrower than any gap that is seen
        double widest = 0;
        for (int i = 0; i < ring.length; i += 2) {
            widest = Math.max(widest, hidden(ring[i], ring[i + 1]));
        }
        int steps = Math.clamp((int) Math.ceil(widest / SWEEP_STEP), 1, MOST_STEPS);
        Sweep sweep = new Sweep(ring);
        for (int step = 1; step <= steps; step++) {
            sweep.with(nearer(ring, 1 - (1 - shrink) * step / steps));
        }
        return Ring.spaced(sweep.ring(), Ring.SPACING);
    }

    /** How long a piece of the sheet a wall hides there, mm, as seen from the camera. */
    public double hidden(double x, double y) {
        return Math.hypot(x - eyeX, y - eyeY) * thickness / height;
    }

    /** Shrunk towards the point below the camera. */
    private double[] nearer(double[] ring, double share) {
        double[] near = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            near[i] = eyeX + share * (ring[i] - eyeX);
            near[i + 1] = eyeY + share * (ring[i + 1] - eyeY);
        }
        return near;
    }
}
