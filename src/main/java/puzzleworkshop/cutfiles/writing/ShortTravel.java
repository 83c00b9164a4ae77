package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Orders lines so that the head travels little between them: always on to the nearest end (a line may be run either
 * way), then 2-opt, turning round runs of the order while that shortens the way. Not the shortest way of all, but
 * never longer than going to the nearest end; deterministic.
 */
final class ShortTravel {

    private static final int MOST_FOR_TURNING = 1500;
    private static final int MOST_ROUNDS = 30;
    private static final double WORTH_MM = 1e-6;

    private ShortTravel() {}

    static List<CurvePath> order(List<CurvePath> lines, Point from) {
        List<CurvePath> ordered = nearest(lines, from);
        if (ordered.size() <= MOST_FOR_TURNING) {
            turn(ordered, from);
        }
        return ordered;
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
