package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * Orders lines so that the head travels little between them: always on to the nearest end (a line may be run either
 * way), then 2-opt, turning round runs of the order while that shortens the way. A closed line may begin anywhere on
 * itself: it is begun where the way to it and on from it is least. Not the shortest way of all, but never longer than
 * going to the nearest end; deterministic.
 */
final class ShortTravel {

    private static final int MOST_FOR_TURNING = 1500;
    private static final int MOST_ROUNDS = 30;
    private static final double WORTH_MM = 1e-6;
    private static final double NEAR_AN_END = 0.01;

    private ShortTravel() {}

    static List<CurvePath> order(List<CurvePath> lines, Point from) {
        List<CurvePath> ordered = nearest(lines, from);
        if (ordered.size() <= MOST_FOR_TURNING) {
            turn(ordered, from);
        }
        beginClosedLines(ordered, from);
        return ordered;
    }

    private static void beginClosedLines(List<CurvePath> order, Point from) {
        for (int i = 0; i < order.size(); i++) {
            if (order.get(i).closed()) {
                Point before = i == 0 ? from : order.get(i - 1).end();
                // the next line, if closed itself, is begun only after this one
                Point after = i + 1 < order.size() ? order.get(i + 1).start() : null;
                order.set(i, begunNear(order.get(i), before, after));
            }
        }
    }

    private static CurvePath begunNear(CurvePath line, Point before, Point after) {
        int segment = 0;
        double t = 0;
        double least = way(before, line.start(), after);
        Point start = line.start();
        for (int i = 0; i < line.segments().size(); i++) {
            Segment each = line.segments().get(i);
            for (double at : places(start, each, before, after)) {
                double way = way(before, each.at(start, at), after);
                if (way < least - WORTH_MM) {
                    least = way;
                    segment = i;
                    t = at;
                }
            }
            start = each.to();
        }
        return segment == 0 && t == 0 ? line : line.startingAt(segment, t);
    }

    private static double way(Point before, Point at, Point after) {
        return before.distanceTo(at) + (after == null ? 0 : at.distanceTo(after));
    }

    /** Where a stretch may come nearest: its start, of a straight one the feet of what is before and after, of a curve quarters. */
    private static double[] places(Point start, Segment stretch, Point before, Point after) {
        return stretch instanceof Segment.Line
                ? new double[] {
                    0, foot(start, stretch.to(), before), after == null ? 0 : foot(start, stretch.to(), after)
                }
                : new double[] {0, 0.25, 0.5, 0.75};
    }

    private static double foot(Point a, Point b, Point of) {
        double dx = b.xMm() - a.xMm();
        double dy = b.yMm() - a.yMm();
        double t = ((of.xMm() - a.xMm()) * dx + (of.yMm() - a.yMm()) * dy) / (dx * dx + dy * dy);
        // no scraps of a line at its ends
        return t > NEAR_AN_END && t < 1 - NEAR_AN_END ? t : 0;
    }

    static double travel(List<CurvePath> first, List<CurvePath> last, Point from) {
        double sum = 0;
        Point at = from;
        for (List<CurvePath> group : List.of(first, last)) {
            for (CurvePath line : group) {
                sum += at.distanceTo(line.start());
                at = line.end();
            }
        }
        return sum;
    }

    private static List<CurvePath> nearest(List<CurvePath> lines, Point from) {
        List<CurvePath> left = new ArrayList<>(lines);
        List<CurvePath> ordered = new ArrayList<>(lines.size());
        Point at = from;
        while (!left.isEmpty()) {
            int best = 0;
            boolean backwards = false;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < left.size(); i++) {
                CurvePath line = left.get(i);
                double toStart = at.distanceTo(line.start());
                double toEnd = at.distanceTo(line.end());
                if (Math.min(toStart, toEnd) < least) {
                    least = Math.min(toStart, toEnd);
                    best = i;
                    backwards = toEnd < toStart;
                }
            }
            CurvePath line = left.get(best);
            // the order of those left does not matter, so the last one fills the gap
            left.set(best, left.getLast());
            left.removeLast();
            ordered.add(backwards ? line.reversed() : line);
            at = ordered.getLast().end();
        }
        return ordered;
    }

    private static void turn(List<CurvePath> order, Point from) {
        boolean better = true;
        for (int round = 0; better && round < MOST_ROUNDS; round++) {
            better = false;
            for (int i = 0; i < order.size() - 1; i++) {
                Point before = i == 0 ? from : order.get(i - 1).end();
                for (int k = i + 1; k < order.size(); k++) {
                    double now = before.distanceTo(order.get(i).start());
                    double then = before.distanceTo(order.get(k).end());
                    if (k + 1 < order.size()) {
                        now += order.get(k).end().distanceTo(order.get(k + 1).start());
                        then += order.get(i).start().distanceTo(order.get(k + 1).start());
                    }
                    if (then < now - WORTH_MM) {
                        turnRound(order, i, k);
                        better = true;
                    }
                }
            }
        }
    }

    private static void turnRound(List<CurvePath> order, int from, int to) {
        int low = from;
        int high = to;
        while (low < high) {
            CurvePath lower = order.get(low).reversed();
            order.set(low, order.get(high).reversed());
            order.set(high, lower);
            low++;
            high--;
        }
        if (low == high) {
            order.set(low, order.get(low).reversed());
        }
    }
}
