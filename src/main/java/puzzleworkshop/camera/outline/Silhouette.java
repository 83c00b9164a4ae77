package puzzleworkshop.camera.outline;

import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.Sweep;

/**
 * From the edge seen on the plane of the sheet to the board's own edge. Where a side turns away from the camera, its top edge is
 * seen against the sheet, and the top lies nearer by the thickness: it shrinks towards the point below the camera by (H − t)/H. Where
 * a side faces the camera, its wall is seen down to the sheet, and the edge is where it stands.
 */
final class Silhouette {

    private static final double SWEEP_STEP = 0.8;
    private static final int MOST_STEPS = 24;

    private final Photo photo;
    private final View view;
    private final double thickness;
    private final double eyeX;
    private final double eyeY;
    private final double height;

    Silhouette(Photo photo, View view, double thickness) {
        this.photo = photo;
        this.view = view;
        this.thickness = thickness;
        double[] eye = view.eye();
        eyeX = eye[0];
        eyeY = eye[1];
        height = -eye[2];
    }

    /** How far the top of a side facing the camera is seen from its foot, along the normal, mm; below zero where it turns away. */
    double wall(double[] ring, double[] normals, int i) {
        double facing = normals[2 * i] * (eyeX - ring[2 * i]) + normals[2 * i + 1] * (eyeY - ring[2 * i + 1]);
        return facing * thickness / (height - thickness);
    }

    /**
     * The same ring as it lies on the board, points {@link Ring#SPACING} apart. What is seen is the board swept from its foot
     * to where its top is seen, along the lines that run away from the point below the camera; so the board is what remains when the
     * same sweep is taken off again (an erosion by a short stretch of those lines), and a hole in it is swept up.
     */
    double[] onBoard(double[] ring, boolean wallsShow) {
        double shrink = (height - thickness) / height;
        if (!wallsShow) {
            return Ring.spaced(nearer(ring, shrink), Ring.SPACING);
        }
        double farthest = 0;
        for (int i = 0; i < ring.length; i += 2) {
            farthest = Math.max(farthest, Math.hypot(ring[i] - eyeX, ring[i + 1] - eyeY) * (1 - shrink));
        }
        // in steps that are narrower than any gap that is seen
        int steps = Math.clamp((int) Math.ceil(farthest / SWEEP_STEP), 1, MOST_STEPS);
        Sweep sweep = new Sweep(ring);
        for (int step = 1; step <= steps; step++) {
            sweep.with(nearer(ring, 1 - (1 - shrink) * step / steps));
        }
        return Ring.spaced(sweep.ring(), Ring.SPACING);
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

    /** The widest wall that faces the camera, mm as seen on the sheet. */
    double widestWall(double[] ring) {
        double[] normals = Ring.normals(ring, 4);
        double widest = 0;
        for (int i = 0; i < Ring.size(ring); i++) {
            widest = Math.max(widest, wall(ring, normals, i));
        }
        return widest;
    }

    /**
     * Whether the sides that face the camera show a wall: a band of another brightness or colour as wide as the wall must be. Without such
     * a band (a chamfered or rounded-off edge, a lid of paper) the edge seen is that of the top.
     */
    boolean wallsShow(double[] ring) {
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 4);
        double[] differences = new double[n];
        double[] colours = new double[n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            double wide = wall(ring, normals, i);
            if (wide * view.pixelsPerMm(ring[2 * i], ring[2 * i + 1]) < 4) {
                continue;
            }
            double[] wall = mean(ring, normals, i, -0.72 * wide, -0.3 * wide);
            double[] face = mean(ring, normals, i, -2.2 * wide - 0.3, -1.3 * wide - 0.2);
            double red = Math.log((wall[0] + 1e-3) / (face[0] + 1e-3));
            double blue = Math.log((wall[2] + 1e-3) / (face[2] + 1e-3));
            colours[count] = red - blue;
            differences[count++] =
                    Math.log((wall[0] + wall[1] + wall[2] + 1e-3) / (face[0] + face[1] + face[2] + 1e-3));
        }
        if (count < 12) {
            return true;
        }
        java.util.Arrays.sort(differences, 0, count);
        java.util.Arrays.sort(colours, 0, count);
        double middle = differences[count / 2];
        return Math.abs(middle) > 0.13 || differences[count / 4] < -0.25 || Math.abs(colours[count / 2]) > 0.2;
    }

    private double[] mean(double[] ring, double[] normals, int i, double from, double to) {
        double[] uv = new double[2];
        double[] sum = new double[3];
        for (int s = 0; s < 5; s++) {
            double d = from + (to - from) * s / 4;
            if (view.project(ring[2 * i] + d * normals[2 * i], ring[2 * i + 1] + d * normals[2 * i + 1], 0, uv)) {
                photo.addLight(uv[0], uv[1], 0.2, sum);
            }
        }
        return sum;
    }
}
