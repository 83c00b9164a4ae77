package puzzleworkshop.camera.outline;

import java.util.Arrays;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.rings.Ring;

/**
 * Under a hard lamp in a dark room the shadow beside a board is as dark as a burnt wall, and its end may be taken for the board's.
 * But seen from above a board's face begins where its wall ends, and how wide that looks is known. So where the face begins farther
 * in than the wall can be wide, along a stretch and to one side of the board, the edge lies that much farther in.
 */
final class DeepShadow {

    /** Light against lit paper: brighter is no shadow that could be taken for a board. */
    private static final double SHADED = 0.8;

    /** Difference of logarithms of light, in its strongest channel, that is another thing than the same face. */
    private static final double OTHER = 0.6;

    /** The same where the paper beside it lies in a shadow anyway. */
    private static final double OTHER_IN_SHADE = 0.33;

    /** A burnt rim and the photo's blur between wall and face, mm. */
    private static final double RIM = 0.5;

    /** Around a corner a wall is seen wider than the edge's own direction says. */
    private static final double WIDER = 1.25;

    /** How far outside of the edge is looked for shade, mm. */
    private static final double BESIDE = 0.4;

    /** How far inside of the wall the face itself is read, mm. */
    private static final double[] FACE = {3.4, 4, 4.6, 5.2};

    private static final double STEP = 0.15;
    private static final double FARTHEST = 3;

    /** Points of a stretch that is mended: what is shorter is a knot or a mark. */
    private static final int FEWEST = 8;

    /** The same where the paper beside it is lit: so long is no knot. */
    private static final int LONG = 22;

    /** Sum of the outward directions against their number: towards one side, or two that meet. */
    private static final double ONE_SIDED = 0.5;

    private static final int AROUND = 4;

    private static final double LEAST_SHARE = 0.04;

    private final Photo photo;
    private final BoardMask mask;
    private final Silhouette silhouette;
    /** How far the edge was moved in anywhere, mm: so deep a shadow may have hidden more of it. */
    double moved;

    DeepShadow(Photo photo, BoardMask mask, Silhouette silhouette) {
        this.photo = photo;
        this.mask = mask;
        this.silhouette = silhouette;
    }

    /** @param ring edge as seen on the plane z = 0, the board to its right */
    double[] leftOut(double[] ring) {
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 4);
        double[] in = new double[n];
        boolean[] shaded = new boolean[n];
        for (int i = 0; i < n; i++) {
            shaded[i] = level(light(ring, normals, i, BESIDE)) < SHADED;
            in[i] = tooFar(ring, normals, i, shaded[i] ? OTHER_IN_SHADE : OTHER);
        }
        boolean oneSided = isOneSided(in, normals);
        double[] mend = ring.clone();
        int mended = 0;
        double most = 0;
        for (int i = 0; i < n; i++) {
            double[] around = new double[2 * AROUND + 1];
            for (int d = -AROUND; d <= AROUND; d++) {
                around[d + AROUND] = in[Math.floorMod(i + d, n)];
            }
            Arrays.sort(around);
            double by = around[AROUND];
            if (by > 0 && inStretch(in, i, shaded[i] ? FEWEST : oneSided ? LONG : n)) {
                mend[2 * i] -= by * normals[2 * i];
                mend[2 * i + 1] -= by * normals[2 * i + 1];
                mended++;
                most = Math.max(most, by);
            }
        }
        // a few points are a corner of a thick board
        if (mended < LEAST_SHARE * n) {
            return ring;
        }
        moved = most;
        return mend;
    }

    /** A lamp throws shadows to one side; a rim burnt all round is none. */
    private static boolean isOneSided(double[] in, double[] normals) {
        double x = 0;
        double y = 0;
        int count = 0;
        for (int i = 0; i < in.length; i++) {
            if (in[i] > 0) {
                x += normals[2 * i];
                y += normals[2 * i + 1];
                count++;
            }
        }
        return Math.hypot(x, y) > ONE_SIDED * count;
    }

    private static boolean inStretch(double[] in, int i, int reach) {
        int n = in.length;
        int count = 0;
        for (int d = -reach; d <= reach && 2 * reach < n; d++) {
            count += in[Math.floorMod(i + d, n)] > 0 ? 1 : 0;
        }
        return count > reach;
    }

    /** By how much the face begins farther in than it must, mm; 0 where nothing speaks against the edge. */
    private double tooFar(double[] ring, double[] normals, int i, double other) {
        double wall = WIDER * Math.max(0, silhouette.wall(ring, normals, i)) + RIM;
        double[] face = new double[3];
        for (double deep : FACE) {
            double[] there = light(ring, normals, i, -wall - deep);
            for (int c = 0; c < 3; c++) {
                face[c] += there[c] / FACE.length;
            }
        }
        double by = 0;
        while (by < FARTHEST && isOther(light(ring, normals, i, -wall - by), face, other)) {
            by += STEP;
        }
        return by < FARTHEST && by > 2 * STEP ? by : 0;
    }

    private static double level(double[] light) {
        return (light[0] + light[1] + light[2]) / 3;
    }

    private static boolean isOther(double[] light, double[] face, double other) {
        double most = 0;
        for (int c = 0; c < 3; c++) {
            most = Math.max(most, Math.abs(Math.log((light[c] + 0.02) / (face[c] + 0.02))));
        }
        return most > other;
    }

    /** Against white paper, so far outside of a point. */
    private double[] light(double[] ring, double[] normals, int i, double off) {
        double x = ring[2 * i] + off * normals[2 * i];
        double y = ring[2 * i + 1] + off * normals[2 * i + 1];
        double[] light = new double[3];
        double[] uv = new double[2];
        double[] white = new double[3];
        mask.paper.at(x, y, white);
        if (mask.ground.seen.view().project(x, y, 0, uv)) {
            photo.addLight(uv[0], uv[1], 1, light);
        }
        for (int c = 0; c < 3; c++) {
            light[c] /= white[c];
        }
        return light;
    }
}
