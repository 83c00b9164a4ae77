package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Likeness of edges measured without a line of the pattern's own code: the lines as they stand in a cut file are flattened,
 * split where they meet, and every pair of inner edges is laid upon each other in both ways round; what counts is the
 * Hausdorff distance after the best shift and turn, found by walking downhill from chord upon chord in ever
 * smaller steps.
 *
 * <p>Pairs are passed over only where a bound that needs no search says that they are farther apart than asked: under any
 * motion that leaves no more than d between two curves, their greatest extent and the distances of their farthest points
 * from either end change by at most 2d.
 *
 * <p>Open outlines of real puzzles to judge by were looked for in November 2026 and none were found: papers on solving puzzles
 * by shape (D. Hoff and P. Olver, Journal of Mathematical Imaging and Vision 49, 2014; P. Illig, R. Thompson and Q. Yu, the same
 * 65, 2021; R.-D. Chiș, Studia Universitatis Babeș-Bolyai Informatica, Matching Apictorial Puzzle Pieces) work on photographs of
 * their own, and what is shared are pictures of pieces, not edges to the tenth of a millimetre that counts here.
 */
public final class BruteForceLikeness {

    private static final GeometryFactory JTS = new GeometryFactory();
    private static final double FLATTENING_MM = 0.02;

    /** @param alike pairs within the limit @param closestMm the smallest distance found, at most the limit looked to */
    public record Found(int edges, int alike, double closestMm) {}

    private record Laid(double[] line, double chord, double fromStart, double fromEnd, double width) {}

    private BruteForceLikeness() {}

    /** @param withinMm what counts as alike @param lookToMm pairs farther apart are not measured */
    public static Found of(Collection<CurvePath> inner, CurvePath outline, double withinMm, double lookToMm) {
        List<LineString> edges = edges(inner, outline);
        List<Laid> first = new ArrayList<>();
        List<Laid> second = new ArrayList<>();
        for (LineString edge : edges) {
            first.add(laid(edge));
            second.add(laid(edge.reverse()));
        }
        int alike = 0;
        double closest = lookToMm;
        // where an edge lies is looked up in a chart of the distances around it, drawn once for all that are laid upon
        // it
        DistanceChart chart = new DistanceChart(4 * lookToMm + 0.3);
        for (int i = 0; i < edges.size(); i++) {
            chart.draw(first.get(i).line);
            for (int j = 0; j < i; j++) {
                double distance = Math.min(
                        distance(first.get(j), first.get(i), chart, lookToMm),
                        distance(second.get(j), first.get(i), chart, lookToMm));
                closest = Math.min(closest, distance);
                if (distance <= withinMm) {
                    alike++;
                }
            }
        }
        return new Found(edges.size(), alike, closest);
    }

    /** The inner lines, split where they meet each other or the outline. */
    static List<LineString> edges(Collection<CurvePath> inner, CurvePath outline) {
        Map<Coordinate, Integer> met = new HashMap<>();
        List<Coordinate[]> lines = new ArrayList<>();
        List<CurvePath> all = new ArrayList<>(inner);
        all.add(outline);
        for (CurvePath path : all) {
            Coordinate[] points = path.flattened(FLATTENING_MM).stream()
                    .map(p -> new Coordinate(Math.round(p.xMm() * 1e6) / 1e6, Math.round(p.yMm() * 1e6) / 1e6))
                    .toArray(Coordinate[]::new);
            lines.add(points);
            new java.util.HashSet<>(List.of(points)).forEach(p -> met.merge(p, 1, Integer::sum));
        }
        List<LineString> edges = new ArrayList<>();
        for (Coordinate[] points : lines.subList(0, lines.size() - 1)) {
            List<Coordinate> run = new ArrayList<>();
            for (Coordinate point : points) {
                run.add(point);
                if (run.size() > 1 && met.get(point) > 1) {
                    edges.add(JTS.createLineString(run.toArray(Coordinate[]::new)));
                    run = new ArrayList<>(List.of(point));
                }
            }
            if (run.size() > 1) {
                edges.add(JTS.createLineString(run.toArray(Coordinate[]::new)));
            }
        }
        return edges;
    }

    /** With its ends on the x axis, their middle at zero. */
    private static Laid laid(LineString edge) {
        Coordinate a = edge.getCoordinateN(0);
        Coordinate b = edge.getCoordinateN(edge.getNumPoints() - 1);
        AffineTransformation move = AffineTransformation.translationInstance(-(a.x + b.x) / 2, -(a.y + b.y) / 2);
        move.rotate(-Math.atan2(b.y - a.y, b.x - a.x));
        LineString line = (LineString) move.transform(edge);
        double fromStart = 0;
        double fromEnd = 0;
        for (Coordinate c : line.getCoordinates()) {
            fromStart = Math.max(fromStart, c.distance(line.getCoordinateN(0)));
            fromEnd = Math.max(fromEnd, c.distance(line.getCoordinateN(line.getNumPoints() - 1)));
        }
        double[] points = new double[2 * line.getNumPoints()];
        for (int i = 0; i < line.getNumPoints(); i++) {
            points[2 * i] = line.getCoordinateN(i).x;
            points[2 * i + 1] = line.getCoordinateN(i).y;
        }
        return new Laid(
                points,
                a.distance(b),
                fromStart,
                fromEnd,
                new org.locationtech.jts.algorithm.MinimumDiameter(line).getLength());
    }

    private static double distance(Laid a, Laid b, DistanceChart chart, double lookTo) {
        if (Math.abs(a.chord - b.chord) > 2 * lookTo
                || Math.abs(a.fromStart - b.fromStart) > 2 * lookTo
                || Math.abs(a.fromEnd - b.fromEnd) > 2 * lookTo
                || Math.abs(a.width - b.width) > 2 * lookTo) {
            return Double.POSITIVE_INFINITY;
        }
        double[] at = {0, 0, 0};
        // a motion that leaves no more than d moves ends, and so the line between them, by no more than d: from chord
        // upon chord it is a shift by at most d and a turn that moves no point by more than 2.5 d
        if (chart.isFartherThan(a.line, 3.5 * lookTo)) {
            return Double.POSITIVE_INFINITY;
        }
        // every fourth point alone, one way, is never farther away than all points both ways: a quick first look
        double[] few = everyFourth(a.line);
        double coarse = chart.atLeast(few, Double.POSITIVE_INFINITY);
        for (double step = 0.24; step > 0.02; step /= 2) {
            coarse =
                    downhill((by, most) -> chart.atLeast(moved(few, by), most), at, coarse, step, a.chord, step < 0.05);
            if (coarse > lookTo + 3 * step) {
                return coarse; // a pair that lies so near somewhere has come nearer by now
            }
        }
        if (coarse > 1.3 * lookTo) {
            return coarse;
        }
        // then all points, still by the chart, which never says more than the truth
        double closer = chart.atLeast(a.line, Double.POSITIVE_INFINITY);
        double[] near = at.clone();
        closer = Math.min(closer, chart.atLeast(moved(a.line, near), Double.POSITIVE_INFINITY));
        for (double step = 0.12; step > 0.01; step /= 2) {
            closer = downhill((by, most) -> chart.atLeast(moved(a.line, by), most), near, closer, step, a.chord, true);
        }
        if (closer > lookTo + 0.02) {
            return closer;
        }
        double best = hausdorff(a.line, b.line, Double.POSITIVE_INFINITY);
        at = new double[3];
        Felt all = (by, most) -> hausdorff(moved(a.line, by), b.line, most);
        for (double step = 0.24; step > 0.02; step /= 2) {
            best = downhill(all, at, best, step, a.chord, false);
        }
        for (double step = 0.12; step > 0.004; step /= 2) {
            best = downhill(all, at, best, step, a.chord, true);
        }
        return best;
    }

    private static double[] everyFourth(double[] line) {
        int count = line.length / 2;
        double[] few = new double[2 * ((count + 3) / 4 + 1)];
        for (int i = 0; i < few.length / 2; i++) {
            int from = Math.min(count - 1, 4 * i);
            few[2 * i] = line[2 * from];
            few[2 * i + 1] = line[2 * from + 1];
        }
        return few;
    }

    /** Distance of a line moved, or infinite where it is above what is asked. */
    private interface Felt {
        double at(double[] motion, double atMost);
    }

    /** Walks on while a step of this size, along one axis or aslant, makes it less; {@code at} moves along. */
    private static double downhill(Felt felt, double[] at, double from, double step, double chord, boolean aslant) {
        double best = from;
        boolean better = true;
        while (better) {
            better = false;
            for (int way = 0; way < 27; way++) {
                int[] signs = {way % 3 - 1, way / 3 % 3 - 1, way / 9 - 1};
                int axes = Math.abs(signs[0]) + Math.abs(signs[1]) + Math.abs(signs[2]);
                if (axes == 0 || axes > 1 && !aslant) {
                    continue;
                }
                double[] tried = {at[0] + signs[0] * step, at[1] + signs[1] * step, at[2] + signs[2] * step * 2 / chord
                };
                double distance = felt.at(tried, best);
                if (distance < best - 1e-9) {
                    best = distance;
                    System.arraycopy(tried, 0, at, 0, 3);
                    better = true;
                }
            }
        }
        return best;
    }

    /** Points and line moved: x, y in turn. */
    private static double[] moved(double[] line, double[] by) {
        double cos = Math.cos(by[2]);
        double sin = Math.sin(by[2]);
        double[] to = new double[line.length];
        for (int i = 0; i < line.length; i += 2) {
            to[i] = cos * line[i] - sin * line[i + 1] + by[0];
            to[i + 1] = sin * line[i] + cos * line[i + 1] + by[1];
        }
        return to;
    }

    /** Either way; as soon as it is above what is asked, that is answered. */
    private static double hausdorff(double[] a, double[] b, double atMost) {
        double one = oneWay(a, b, atMost);
        return one > atMost ? one : Math.max(one, oneWay(b, a, atMost));
    }

    private static double oneWay(double[] a, double[] b, double atMost) {
        double greatest = 0;
        for (int i = 0; i < a.length; i += 2) {
            double least = Double.POSITIVE_INFINITY;
            for (int j = 0; j + 3 < b.length; j += 2) {
                least = Math.min(least, toStretch(b[j], b[j + 1], b[j + 2], b[j + 3], a[i], a[i + 1]));
            }
            greatest = Math.max(greatest, Math.sqrt(least));
            if (greatest > atMost) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return greatest;
    }

    static double toStretch(double ax, double ay, double bx, double by, double px, double py) {
        double dx = bx - ax;
        double dy = by - ay;
        double t = ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy);
        t = t < 0 ? 0 : t > 1 ? 1 : t;
        double ex = ax + t * dx - px;
        double ey = ay + t * dy - py;
        return ex * ex + ey * ey;
    }
}
