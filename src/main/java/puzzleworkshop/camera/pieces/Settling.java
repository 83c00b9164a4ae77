package puzzleworkshop.camera.pieces;

import java.util.Arrays;
import puzzleworkshop.camera.outline.TopView;

/**
 * One outline laid into a photo, which settles round by round where brightness and colour step along it: closest points along the
 * normals, after Chen and Medioni, Object modelling by registration of multiple range images, 1992. What of it finds no step counts
 * as far off: nothing speaks for it.
 */
final class Settling {

    /**
     * Rounds between which one looks which outlines are worth going on with. The first ones find the way by every third point and
     * every second sample.
     *
     * @param reach how far to both sides a step is looked for in each round, mm; the last one is not moved by but judged by
     * @param every so many points along the edge there is one that counts
     * @param step between samples across the edge, mm
     */
    private record Stage(double[] reach, int every, double step) {}

    private static final Stage[] STAGES = {
        new Stage(new double[] {2.4, 2, 1.6, 1.2}, 3, 0.2),
        new Stage(new double[] {1.2, 1, 0.8, 0.8}, 2, 0.1),
        new Stage(new double[] {0.6, 0.5, 0.5, 0.5, 0.5}, 1, 0.1)
    };

    static final int ROUGH = 0;
    static final int NEARER = 1;
    static final int FINE = 2;

    /** Steps are taken between what lies so far to both sides, mm: more than a photo's blur. */
    private static final double HALF_MM = 0.2;

    /**
     * In code values of all three colours together: less is noise or the weave of a cloth, so many times the lower quarter of what is
     * seen beside the piece. Where there is but noise alike in three colours that is four times the median (chi distribution with
     * three degrees of freedom: quartile 1.10, median 1.54 deviations).
     */
    private static final double OVER_NOISE = 5.6;

    private static final double LEAST_STEP = 0.025;
    private static final double MOST_NOISE = 0.06;

    /** Steps beyond this are all equally clear. */
    private static final double CLEAR_STEP = 0.3;

    /** A point without a step counts as far off as this, mm. */
    private static final double UNSEEN_MM = 1;

    /** Where nothing is but what lies below, mm outside of a piece. */
    private static final double BESIDE = 2.6;

    /** Some of the walls draw an edge to their foot, the other sides hold it back: so far it may have come, as shares. */
    private static final double[] FROM_FOOT = {1, 0.5};

    private static final int POINTS = PlaceEdge.POINTS;

    final int place;
    final Pose pose;
    private final PlaceEdge edge;
    private final TopView.Patch patch;
    private final double[] off = new double[POINTS];
    private final double[] size = new double[POINTS];
    /** How far the edge is from the steps, root mean square in mm, after the last stage. */
    private double distance;

    Settling(int place, PlaceEdge edge, Pose pose, TopView.Patch patch) {
        this.place = place;
        this.edge = edge;
        this.pose = pose;
        this.patch = patch;
    }

    double distance() {
        return distance;
    }

    /** @param which {@link #ROUGH}, {@link #NEARER} and {@link #FINE} in turn */
    void settle(int which) {
        Stage stage = STAGES[which];
        pose.least = Math.clamp(OVER_NOISE * beside(stage), LEAST_STEP, MOST_NOISE);
        int last = stage.reach.length - 1;
        for (int round = 0; round < last; round++) {
            steps(stage, stage.reach[round]);
            move(stage, stage.reach[round]);
        }
        steps(stage, stage.reach[last]);
        double sum = 0;
        int count = 0;
        for (int i = 0; i < POINTS; i += stage.every) {
            sum += size[i] > 0 ? off[i] * off[i] : UNSEEN_MM * UNSEEN_MM;
            count++;
        }
        distance = Math.sqrt(sum / count);
        if (which == FINE) {
            unseen();
        }
    }

    /**
     * A dark wall steps from the paper as clearly as from the face, so an edge may have settled at the foot of its walls where it
     * should be at their top. Settled once more from there, it is this one or the one that lies nearer.
     *
     * @param foot where the foot of a wall is seen beside its top, x and y in mm
     */
    Settling besides(double[] foot) {
        Settling nearest = this;
        for (double share : FROM_FOOT) {
            Settling other = new Settling(place, edge, pose.moved(-share * foot[0], -share * foot[1]), patch);
            other.settle(NEARER);
            other.settle(FINE);
            nearest = other.distance < nearest.distance ? other : nearest;
        }
        return nearest;
    }

    private void unseen() {
        int run = 0;
        int longest = 0;
        // around the ring, a single step within a pale stretch may be chance
        for (int i = 0; i < 2 * POINTS; i++) {
            boolean seen = size[i % POINTS] > 0 && size[(i + 1) % POINTS] > 0;
            run = seen ? 0 : Math.min(POINTS, run + 1);
            longest = Math.max(longest, run);
        }
        pose.unseen = (double) longest / POINTS;
        for (int i = 0; i < POINTS; i++) {
            pose.stepsAt[i] = size[i] > 0;
        }
    }

    /** What is no step, by what is seen where there should be none, a little outside of the edge. */
    private double beside(Stage stage) {
        double[] steps = new double[(POINTS + stage.every - 1) / stage.every];
        double[] two = new double[6];
        for (int i = 0; i < POINTS; i += stage.every) {
            double nx = pose.turnedX(edge.nx[i], edge.ny[i]);
            double ny = pose.turnedY(edge.nx[i], edge.ny[i]);
            double x = pose.x(edge.x[i], edge.y[i]) + (BESIDE - HALF_MM) * nx;
            double y = pose.y(edge.x[i], edge.y[i]) + (BESIDE - HALF_MM) * ny;
            patch.along(x, y, 2 * HALF_MM * nx, 2 * HALF_MM * ny, 2, two);
            steps[i / stage.every] = Math.sqrt(step(two, 0, 3));
        }
        Arrays.sort(steps);
        // along most of the edge there may be a shadow, so the lower quarter tells
        return steps[steps.length / 4];
    }

    private static double step(double[] light, int a, int b) {
        double red = light[b] - light[a];
        double green = light[b + 1] - light[a + 1];
        double blue = light[b + 2] - light[a + 2];
        return red * red + green * green + blue * blue;
    }

    /** The clearest step across each point of the edge, nearer ones preferred: how far outwards, and how large; 0 where there is none. */
    private void steps(Stage stage, double reach) {
        int half = (int) Math.round(HALF_MM / stage.step);
        int middle = (int) Math.round(reach / stage.step) + half + 1;
        int count = 2 * middle + 1;
        double[] light = new double[3 * count];
        double[] strength = new double[count];
        for (int i = 0; i < POINTS; i += stage.every) {
            double nx = pose.turnedX(edge.nx[i], edge.ny[i]);
            double ny = pose.turnedY(edge.nx[i], edge.ny[i]);
            double x = pose.x(edge.x[i], edge.y[i]) - middle * stage.step * nx;
            double y = pose.y(edge.x[i], edge.y[i]) - middle * stage.step * ny;
            patch.along(x, y, stage.step * nx, stage.step * ny, count, light);
            for (int s = half; s < count - half; s++) {
                strength[s] = step(light, 3 * (s - half), 3 * (s + half));
            }
            clearest(i, stage, reach, strength, half, middle);
        }
    }

    private void clearest(int point, Stage stage, double reach, double[] squared, int half, int middle) {
        off[point] = 0;
        size[point] = 0;
        double least = pose.least * pose.least;
        for (int s = half + 1; s < squared.length - half - 1; s++) {
            if (squared[s] < least || squared[s] < squared[s - 1] || squared[s] <= squared[s + 1]) {
                continue;
            }
            double before = Math.sqrt(squared[s - 1]);
            double here = Math.sqrt(squared[s]);
            double after = Math.sqrt(squared[s + 1]);
            double bend = before - 2 * here + after;
            double o = (s - middle + (bend < 0 ? (before - after) / 2 / bend : 0)) * stage.step;
            double near = o / (0.5 * reach);
            double worth = Math.min(here, CLEAR_STEP) / (1 + near * near);
            if (worth > size[point]) {
                off[point] = o;
                size[point] = worth;
            }
        }
    }

    private void move(Stage stage, double reach) {
        double[][] a = new double[3][4];
        for (int i = 0; i < POINTS; i += stage.every) {
            if (size[i] <= 0) {
                continue;
            }
            double nx = pose.turnedX(edge.nx[i], edge.ny[i]);
            double ny = pose.turnedY(edge.nx[i], edge.ny[i]);
            double rx = pose.turnedX(edge.x[i], edge.y[i]);
            double ry = pose.turnedY(edge.x[i], edge.y[i]);
            double turn = rx * ny - ry * nx;
            double d = off[i] / (0.4 * reach);
            double weight = size[i] / (1 + d * d);
            add(a[0], weight * nx, nx, ny, turn, off[i]);
            add(a[1], weight * ny, nx, ny, turn, off[i]);
            add(a[2], weight * turn, nx, ny, turn, off[i]);
        }
        pose.settle(a);
    }

    private static void add(double[] row, double weight, double nx, double ny, double turn, double off) {
        row[0] += weight * nx;
        row[1] += weight * ny;
        row[2] += weight * turn;
        row[3] += weight * off;
    }
}
