package puzzleworkshop.pattern.shapes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * How far two closed outlines are apart, laid upon each other in the best turn and place: the greatest distance from a point
 * of either to the other (Hausdorff's). A piece has a printed side, so none is turned over.
 *
 * <p>Both are sampled evenly by length. Of all ways to begin, those with the least sum of squares after the best turn and
 * shift in closed form (Umeyama 1991, without stretch) are taken, and from each the nearest points are sought and fitted
 * again until nothing changes (P. J. Besl and N. D. McKay, A method for registration of 3-D shapes, IEEE Transactions on
 * Pattern Analysis and Machine Intelligence 14(2), 1992). What is found can only be more than the least distance there is,
 * and is so by some hundredths of a millimetre at most in what is compared here.
 */
final class OutlineDistance {

    private static final int SAMPLES = 360;
    private static final int BEGINNINGS = 8;
    private static final int MOST_ROUNDS = 40;
    private static final double FLATTENING_MM = 0.02;

    /** Points at even distances, and the corners of the flattened line: a sample may miss a corner. */
    private final double[] x = new double[SAMPLES];

    private final double[] y = new double[SAMPLES];
    private final double[] lineX;
    private final double[] lineY;
    private final double lengthMm;
    private final double areaMm2;

    /** Sampled about its middle; taken anticlockwise whatever way it was drawn. */
    OutlineDistance(CurvePath outline) {
        CurvePath way = outline.signedAreaMm2() < 0 ? outline.reversed() : outline;
        List<Point> line = new ArrayList<>(way.flattened(FLATTENING_MM));
        if (line.getLast().distanceTo(line.getFirst()) > 1e-9) {
            line.add(line.getFirst());
        }
        double[] at = new double[line.size()];
        for (int i = 1; i < at.length; i++) {
            at[i] = at[i - 1] + line.get(i).distanceTo(line.get(i - 1));
        }
        lengthMm = at[at.length - 1];
        areaMm2 = Math.abs(outline.signedAreaMm2());
        int step = 1;
        for (int k = 0; k < SAMPLES; k++) {
            double wanted = lengthMm * k / SAMPLES;
            while (step < at.length - 1 && at[step] < wanted) {
                step++;
            }
            double share = (wanted - at[step - 1]) / Math.max(1e-12, at[step] - at[step - 1]);
            x[k] = line.get(step - 1).xMm()
                    + share * (line.get(step).xMm() - line.get(step - 1).xMm());
            y[k] = line.get(step - 1).yMm()
                    + share * (line.get(step).yMm() - line.get(step - 1).yMm());
        }
        double middleX = mean(x);
        double middleY = mean(y);
        for (int k = 0; k < SAMPLES; k++) {
            x[k] -= middleX;
            y[k] -= middleY;
        }
        lineX = line.stream().mapToDouble(p -> p.xMm() - middleX).toArray();
        lineY = line.stream().mapToDouble(p -> p.yMm() - middleY).toArray();
    }

    /**
     * Two outlines within a distance of each other differ in area by no more than a strip of that width on either side.
     */
    boolean couldBeWithin(OutlineDistance other, double distance) {
        return Math.abs(areaMm2 - other.areaMm2)
                <= 2 * distance * Math.max(lengthMm, other.lengthMm) + Math.PI * distance * distance;
    }

    double to(OutlineDistance other) {
        List<double[]> begun = new ArrayList<>();
        for (int begin = 0; begin < SAMPLES; begin++) {
            begun.add(begunAt(other, begin));
        }
        begun.sort(Comparator.comparingDouble(way -> way[0]));
        double least = Double.POSITIVE_INFINITY;
        for (double[] way : begun.subList(0, BEGINNINGS)) {
            least = Math.min(least, refined(other, new double[] {way[1], way[2], 0, 0}));
        }
        return least;
    }

    /** Sum of squares when this outline begins there on the other, with cosine and sine of the turn. */
    private double[] begunAt(OutlineDistance other, int begin) {
        double along = 0;
        double across = 0;
        double squares = 0;
        for (int k = 0; k < SAMPLES; k++) {
            int m = (k + begin) % SAMPLES;
            along += x[k] * other.x[m] + y[k] * other.y[m];
            across += x[k] * other.y[m] - y[k] * other.x[m];
            squares += x[k] * x[k] + y[k] * y[k] + other.x[m] * other.x[m] + other.y[m] * other.y[m];
        }
        double size = Math.hypot(along, across);
        return new double[] {squares - 2 * size, along / size, across / size};
    }

    /** @param place cosine, sine, shift; improved round by round */
    private double refined(OutlineDistance other, double[] place) {
        double least = Double.POSITIVE_INFINITY;
        double[] lies = place;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[][] moved = moved(lies, x, y);
            double[][] line = moved(lies, lineX, lineY);
            double[][] near = new double[SAMPLES][];
            double most = 0;
            for (int k = 0; k < SAMPLES; k++) {
                near[k] = nearest(moved[0][k], moved[1][k], other.lineX, other.lineY);
                most = Math.max(most, near[k][2]);
            }
            for (int m = 0; m < SAMPLES; m++) {
                most = Math.max(most, nearest(other.x[m], other.y[m], line[0], line[1])[2]);
            }
            if (most > least - 1e-4) {
                return Math.min(most, least);
            }
            least = most;
            lies = fitted(near);
        }
        return least;
    }

    private static double[][] moved(double[] place, double[] xs, double[] ys) {
        double[][] moved = new double[2][xs.length];
        for (int k = 0; k < xs.length; k++) {
            moved[0][k] = place[0] * xs[k] - place[1] * ys[k] + place[2];
            moved[1][k] = place[1] * xs[k] + place[0] * ys[k] + place[3];
        }
        return moved;
    }

    private double[] fitted(double[][] near) {
        double middleX = 0;
        double middleY = 0;
        for (double[] point : near) {
            middleX += point[0] / SAMPLES;
            middleY += point[1] / SAMPLES;
        }
        double along = 0;
        double across = 0;
        for (int k = 0; k < SAMPLES; k++) {
            double px = near[k][0] - middleX;
            double py = near[k][1] - middleY;
            along += x[k] * px + y[k] * py;
            across += x[k] * py - y[k] * px;
        }
        double size = Math.hypot(along, across);
        return new double[] {along / size, across / size, middleX, middleY};
    }

    /** Nearest point on a line and its distance. */
    private static double[] nearest(double px, double py, double[] xs, double[] ys) {
        double[] nearest = {0, 0, Double.POSITIVE_INFINITY};
        for (int k = 0; k + 1 < xs.length; k++) {
            double dx = xs[k + 1] - xs[k];
            double dy = ys[k + 1] - ys[k];
            double squared = dx * dx + dy * dy;
            double share = squared == 0 ? 0 : ((px - xs[k]) * dx + (py - ys[k]) * dy) / squared;
            double within = Math.clamp(share, 0, 1);
            double qx = xs[k] + within * dx;
            double qy = ys[k] + within * dy;
            double apart = (px - qx) * (px - qx) + (py - qy) * (py - qy);
            if (apart < nearest[2]) {
                nearest[0] = qx;
                nearest[1] = qy;
                nearest[2] = apart;
            }
        }
        nearest[2] = Math.sqrt(nearest[2]);
        return nearest;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
