package puzzleworkshop.pattern.shapes;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.judged.PictureAlikeness;

/**
 * The edge that a picture itself has around a marked place, as a closed line: the one of all lines around the middle of the
 * place along which colours inside and outside differ most, drawn through one point on each of {@value #WAYS} ways outwards.
 *
 * <p>Found by dynamic programming over the ways (Amini, Weymouth and Jain, Using Dynamic Programming for Solving Variational Problems in
 * Vision, IEEE PAMI 12, 1990): neighbouring points lie nearly as far out, and what is far from the mark costs a little. Exact
 * for that cost with both ends held in one point; that point is where the best open line twice around passes it. Colours are compared in
 * CIELAB; the line is then smoothed by as little as a step, so that a beam follows it.
 *
 * @param outline closed, in millimetres of the puzzle; each way outwards crosses it once, so it never crosses itself
 * @param seen share of it along which the picture does show an edge, 0 to 1
 */
public record PictureContour(CurvePath outline, double seen) {

    private static final int WAYS = 128;
    private static final int STEPS = 89;
    /** Looked for from this share of the marked oval's size to that one. */
    private static final double NEAREST = 0.55;

    private static final double FARTHEST = 1.65;

    /** A difference in colour (ΔE*ab) that nobody overlooks; more does not count for more. */
    private static final double CLEAR = 40;
    /** The least that an eye takes for an edge, common practice. */
    private static final double SEEN = 8;

    private static final double AWAY_FROM_MARK = 0.25;
    private static final double UNSTEADY = 0.02;
    private static final int MOST_STEPS_ON = 5;
    /** Below this nothing is followed but the mark. */
    private static final double HARDLY_SEEN = 0.3;

    /**
     * @param face the picture as it lies on the finished puzzle, of any resolution
     * @return the mark's own oval where the picture shows hardly an edge
     */
    public static PictureContour around(KeptWhole place, BufferedImage face, Size finished) {
        double[][] contrast = contrasts(place, face, finished);
        int[] way = steadiest(contrast);
        double seen = 0;
        for (int i = 0; i < WAYS; i++) {
            seen += contrast[i][way[i]] >= SEEN ? 1.0 / WAYS : 0;
        }
        return seen < HARDLY_SEEN
                ? new PictureContour(place.outline(), seen)
                : new PictureContour(through(place, smoothed(way)), seen);
    }

    /** Whether the line is the picture's own; otherwise it is the mark's oval, because the picture shows hardly an edge there. */
    public boolean isOfPicture() {
        return seen >= HARDLY_SEEN;
    }

    private static double scale(double step) {
        return NEAREST + (FARTHEST - NEAREST) * step / (STEPS - 1);
    }

    private static Point at(KeptWhole place, int way, double scale) {
        double angle = 2 * Math.PI * way / WAYS;
        return place.middle()
                .plus(
                        scale * place.halfWidthMm() * StrictMath.cos(angle),
                        scale * place.halfHeightMm() * StrictMath.sin(angle));
    }

    /** Difference between what lies just inside and just outside each point. */
    private static double[][] contrasts(KeptWhole place, BufferedImage face, Size finished) {
        double perMm = face.getWidth() / finished.width().mm();
        double[][] contrast = new double[WAYS][STEPS];
        int beyond = 2;
        for (int way = 0; way < WAYS; way++) {
            double[][] colours = new double[STEPS + 2 * beyond][];
            for (int step = -beyond; step < STEPS + beyond; step++) {
                colours[step + beyond] = colour(face, at(place, way, scale(step)), perMm);
            }
            for (int step = 0; step < STEPS; step++) {
                contrast[way][step] =
                        difference(mean(colours[step], colours[step + 1]), mean(colours[step + 3], colours[step + 4]));
            }
        }
        return contrast;
    }

    /** Of the four pixels around a place; beyond the picture its last ones. */
    private static double[] colour(BufferedImage face, Point place, double perMm) {
        double x = place.xMm() * perMm - 0.5;
        double y = place.yMm() * perMm - 0.5;
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        double[] sum = new double[3];
        for (int dx = 0; dx <= 1; dx++) {
            for (int dy = 0; dy <= 1; dy++) {
                double weight = (dx == 0 ? 1 - (x - left) : x - left) * (dy == 0 ? 1 - (y - top) : y - top);
                double[] lab = PictureAlikeness.lab(face.getRGB(
                        Math.clamp(left + dx, 0, face.getWidth() - 1), Math.clamp(top + dy, 0, face.getHeight() - 1)));
                for (int i = 0; i < 3; i++) {
                    sum[i] += weight * lab[i];
                }
            }
        }
        return sum;
    }

    private static double[] mean(double[] one, double[] two) {
        return new double[] {(one[0] + two[0]) / 2, (one[1] + two[1]) / 2, (one[2] + two[2]) / 2};
    }

    private static double difference(double[] one, double[] two) {
        double l = one[0] - two[0];
        double a = one[1] - two[1];
        double b = one[2] - two[2];
        return Math.sqrt(l * l + a * a + b * b);
    }

    private static int[] steadiest(double[][] contrast) {
        double[][] cost = new double[WAYS][STEPS];
        for (int way = 0; way < WAYS; way++) {
            for (int step = 0; step < STEPS; step++) {
                cost[way][step] =
                        1 - Math.min(1, contrast[way][step] / CLEAR) + AWAY_FROM_MARK * Math.abs(scale(step) - 1);
            }
        }
        int middle = cheapest(cost, 2 * WAYS, -1)[WAYS];
        return Arrays.copyOf(cheapest(cost, WAYS + 1, middle), WAYS);
    }

    /** The cheapest line over so many ways, from the first on; both ends held in one step, or free where that is negative. */
    private static int[] cheapest(double[][] cost, int ways, int held) {
        double[] sum = new double[STEPS];
        int[][] from = new int[ways][STEPS];
        for (int step = 0; step < STEPS; step++) {
            sum[step] = held < 0 || step == held ? cost[0][step] : Double.POSITIVE_INFINITY;
        }
        for (int way = 1; way < ways; way++) {
            double[] next = new double[STEPS];
            for (int step = 0; step < STEPS; step++) {
                double best = Double.POSITIVE_INFINITY;
                for (int on = -MOST_STEPS_ON; on <= MOST_STEPS_ON; on++) {
                    int before = step + on;
                    if (before >= 0 && before < STEPS && sum[before] + UNSTEADY * on * on < best) {
                        best = sum[before] + UNSTEADY * on * on;
                        from[way][step] = before;
                    }
                }
                next[step] = best + cost[way % WAYS][step];
            }
            sum = next;
        }
        int step = held;
        if (held < 0) {
            step = 0;
            for (int i = 1; i < STEPS; i++) {
                step = sum[i] < sum[step] ? i : step;
            }
        }
        int[] line = new int[ways];
        for (int way = ways - 1; way >= 0; way--) {
            line[way] = step;
            step = from[way][step];
        }
        return line;
    }

    private static double[] smoothed(int[] way) {
        double[] scales = new double[WAYS];
        for (int i = 0; i < WAYS; i++) {
            scales[i] = scale((way[(i + WAYS - 1) % WAYS] + 2.0 * way[i] + way[(i + 1) % WAYS]) / 4);
        }
        return scales;
    }

    /** Through every second point, by the tangents of their neighbours (Catmull and Rom 1974); to a thousandth of a millimetre. */
    private static CurvePath through(KeptWhole place, double[] scales) {
        int count = WAYS / 2;
        List<Point> knots = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            knots.add(rounded(at(place, 2 * i, scales[2 * i])));
        }
        List<Segment> segments = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            Point before = knots.get((i + count - 1) % count);
            Point a = knots.get(i);
            Point b = knots.get((i + 1) % count);
            Point after = knots.get((i + 2) % count);
            segments.add(new Segment.Cubic(
                    rounded(a.plus((b.xMm() - before.xMm()) / 6, (b.yMm() - before.yMm()) / 6)),
                    rounded(b.plus((a.xMm() - after.xMm()) / 6, (a.yMm() - after.yMm()) / 6)),
                    b));
        }
        return new CurvePath(knots.getFirst(), segments, true);
    }

    private static Point rounded(Point point) {
        return Point.of(Math.round(1000 * point.xMm()) / 1000.0, Math.round(1000 * point.yMm()) / 1000.0);
    }
}
