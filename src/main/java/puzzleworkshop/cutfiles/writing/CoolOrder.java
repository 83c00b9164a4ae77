package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Orders inner lines so that heat does not gather and the board stays stiff: all lines that run one way first, which leaves
 * every piece joined to its neighbours, then those across them, closed lines (personal pieces) last; within that, lines
 * change places and directions while this lowers the heat where lines meet or pass each other (the sixth powers summed, so
 * that the greatest counts), at the pace of the job. The way of the head between lines grows by at most {@value #TRAVEL_SHARE}
 * of the length cut, and by less where that would be more than {@value #TIME_SHARE} of the time. Deterministic.
 */
final class CoolOrder {

    static final double TRAVEL_SHARE = 0.1;
    static final double TIME_SHARE = 0.025;
    private static final int MOST_LINES = 400;
    private static final double PATIENCE = 1.5;
    private static final int WORK = 4_000_000;
    private static final int FEWEST_CHANGES = 1500;
    private static final int MOST_CHANGES = 16_000;
    private static final double STEP_MM = 1.5;
    private static final double MEET_WITHIN_MM = 4;
    /** Places along one line nearer to each other than this count as one meeting. */
    private static final double SAME_MEETING_MM = 6;

    /** Two lines that meet or pass closely: how far along each, how far apart. */
    private record Meeting(int line, int other, double at, double otherAt, double apart) {}

    private final List<CurvePath> lines;
    private final double[] length;
    private final List<Meeting> meetings;
    private final Point from;
    private final CutPace pace;
    private final double shortestTravel;
    private final int[] order;
    private final boolean[] backwards;
    private final double[] begins;

    private CoolOrder(List<CurvePath> lines, Point from, CutPace pace, double shortestTravel) {
        this.pace = pace;
        this.shortestTravel = shortestTravel;
        this.lines = lines;
        this.from = from;
        length = lines.stream().mapToDouble(CurvePath::lengthMm).toArray();
        order = new int[lines.size()];
        backwards = new boolean[lines.size()];
        begins = new double[lines.size()];
        meetings = meetings(lines);
    }

    /** @param shortest the lines in an order with little travel */
    static List<CurvePath> of(List<CurvePath> shortest, Point from, CutPace pace) {
        if (shortest.size() < 3 || shortest.size() > MOST_LINES) {
            return shortest;
        }
        return new CoolOrder(byFamilies(shortest, from), from, pace, ShortTravel.travel(shortest, List.of(), from))
                .cooled(shortest);
    }

    /** Each family by itself with little travel, one after the other: where the search begins. */
    private static List<CurvePath> byFamilies(List<CurvePath> shortest, Point from) {
        int first = family(shortest.getFirst());
        List<CurvePath> arranged = new ArrayList<>(shortest.size());
        Point at = from;
        for (int family : new int[] {first == 2 ? 0 : first, first == 2 ? 1 : 1 - first, 2}) {
            List<CurvePath> of =
                    shortest.stream().filter(line -> family(line) == family).toList();
            if (family != 2) {
                of = ShortTravel.order(of, at);
            }
            if (!of.isEmpty()) {
                arranged.addAll(of);
                at = of.getLast().end();
            }
        }
        return arranged;
    }

    private List<CurvePath> cooled(List<CurvePath> shortest) {
        for (int i = 0; i < order.length; i++) {
            order[i] = i;
        }
        double share = Math.min(TRAVEL_SHARE, TIME_SHARE * pace.travelMmPerS() / pace.cutMmPerS());
        double most = shortestTravel + share * Arrays.stream(length).sum();
        double best = travel() <= most ? heat() : Double.POSITIVE_INFINITY;
        double standing = best;
        int[] bestOrder = order.clone();
        boolean[] bestWays = backwards.clone();
        Random random = new Random(16);
        int changes = Math.clamp(WORK / Math.max(1, meetings.size()), FEWEST_CHANGES, MOST_CHANGES);
        for (int change = 0; change < changes; change++) {
            if (change == changes / 2) {
                System.arraycopy(bestOrder, 0, order, 0, bestOrder.length);
                System.arraycopy(bestWays, 0, backwards, 0, bestWays.length);
                standing = best;
            }
            int[] kept = order.clone();
            boolean[] keptWays = backwards.clone();
            change(random.nextInt(5), random.nextInt(order.length), random.nextInt(order.length));
            double heat = travel() <= most ? heat() : Double.POSITIVE_INFINITY;
            // simulated annealing: a worse order is gone on from, at first often, in the second half never
            double patience = PATIENCE * (1 - 2.0 * change / changes);
            if (heat <= standing
                    || patience > 0
                            && heat < Double.POSITIVE_INFINITY
                            && random.nextDouble() < StrictMath.exp(-StrictMath.log(heat / standing) / patience)) {
                standing = heat;
                if (heat < best) {
                    best = heat;
                    bestOrder = order.clone();
                    bestWays = backwards.clone();
                }
            } else {
                System.arraycopy(kept, 0, order, 0, kept.length);
                System.arraycopy(keptWays, 0, backwards, 0, keptWays.length);
            }
        }
        System.arraycopy(bestOrder, 0, order, 0, bestOrder.length);
        System.arraycopy(bestWays, 0, backwards, 0, bestWays.length);
        if (best == Double.POSITIVE_INFINITY) {
            return shortest;
        }
        List<CurvePath> cooled = new ArrayList<>(order.length);
        for (int line : order) {
            cooled.add(backwards[line] ? lines.get(line).reversed() : lines.get(line));
        }
        return cooled;
    }

    private void change(int kind, int i, int k) {
        int low = Math.min(i, k);
        int high = Math.max(i, k);
        if (kind == 0) {
            turn(order[i]);
        } else if (kind == 1) {
            // the whole family the other way round: where one family ends and the next begins, heat is greatest
            int family = family(order[i]);
            int first = 0;
            int last = order.length - 1;
            while (family(order[first]) != family) {
                first++;
            }
            while (family(order[last]) != family) {
                last--;
            }
            for (int each = first; each <= last && k % 2 == 0; each++) {
                turn(order[each]);
            }
            reverse(first, last);
        } else if (family(order[i]) == family(order[k]) && low != high) {
            if (kind == 2) {
                int swapped = order[i];
                order[i] = order[k];
                order[k] = swapped;
            } else if (kind == 3) {
                int moved = order[low];
                System.arraycopy(order, low + 1, order, low, high - low);
                order[high] = moved;
            } else {
                reverse(low, high);
            }
        }
    }

    private void turn(int line) {
        backwards[line] = !backwards[line] && !lines.get(line).closed();
    }

    private void reverse(int first, int last) {
        for (int low = first, high = last; low < high; low++, high--) {
            int swapped = order[low];
            order[low] = order[high];
            order[high] = swapped;
        }
    }

    /** 0 across, 1 down, 2 closed. */
    private int family(int line) {
        return family(lines.get(line));
    }

    private static int family(CurvePath path) {
        if (path.closed()) {
            return 2;
        }
        double across = Math.abs(path.end().xMm() - path.start().xMm());
        return across >= Math.abs(path.end().yMm() - path.start().yMm()) ? 0 : 1;
    }

    private double travel() {
        double sum = 0;
        Point at = from;
        for (int line : order) {
            CurvePath path = lines.get(line);
            sum += at.distanceTo(backwards[line] ? path.end() : path.start());
            at = backwards[line] ? path.start() : path.end();
        }
        return sum;
    }

    private double heat() {
        double now = 0;
        Point at = from;
        for (int line : order) {
            CurvePath path = lines.get(line);
            now += at.distanceTo(backwards[line] ? path.end() : path.start()) / pace.travelMmPerS();
            begins[line] = now;
            now += length[line] / pace.cutMmPerS();
            at = backwards[line] ? path.start() : path.end();
        }
        double sum = 0;
        for (Meeting meeting : meetings) {
            double gone = Math.abs(when(meeting.line(), meeting.at()) - when(meeting.other(), meeting.otherAt()));
            double rise = rise(meeting.apart(), gone);
            if (pace.passes() > 1) {
                // the line that was cut first is come to again in the next pass
                rise = Math.max(rise, rise(meeting.apart(), Math.max(0, now + pace.pauseS() - gone)));
            }
            double square = rise * rise;
            sum += square * square * square;
        }
        return sum;
    }

    /** A long line as the source: e/(ρ·c·h·√(4·π·α·t))·exp(−d²/(4·α·t) − t/τ), for each kelvin and millimetre of e/(ρ·c·h). */
    private static double rise(double apart, double seconds) {
        double gone = seconds + 1;
        double spread = 4 * CutHeat.DIFFUSIVITY_MM2_PER_S * gone;
        return Math.exp(-apart * apart / spread - gone / CutHeat.LOST_AFTER_S) / Math.sqrt(Math.PI * spread);
    }

    private double when(int line, double at) {
        return begins[line] + (backwards[line] ? length[line] - at : at) / pace.cutMmPerS();
    }

    private static List<Meeting> meetings(List<CurvePath> lines) {
        record Place(int line, double at, Point point) {}
        Map<Long, List<Place>> cells = new HashMap<>();
        List<Place> places = new ArrayList<>();
        for (int line = 0; line < lines.size(); line++) {
            double at = STEP_MM / 2;
            for (Point point : CutHeat.evenly(lines.get(line), STEP_MM)) {
                Place place = new Place(line, at, point);
                places.add(place);
                cells.computeIfAbsent(cell(point, 0, 0), c -> new ArrayList<>()).add(place);
                at += STEP_MM;
            }
        }
        Map<Long, Meeting> nearest = new HashMap<>();
        for (Place one : places) {
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    for (Place two : cells.getOrDefault(cell(one.point(), dx, dy), List.of())) {
                        double apart = one.point().distanceTo(two.point());
                        if (two.line() <= one.line() || apart > MEET_WITHIN_MM) {
                            continue;
                        }
                        long key = ((long) one.line() * lines.size() + two.line()) << 20
                                | (long) (one.at() / SAME_MEETING_MM);
                        nearest.merge(
                                key,
                                new Meeting(one.line(), two.line(), one.at(), two.at(), apart),
                                (a, b) -> a.apart() <= b.apart() ? a : b);
                    }
                }
            }
        }
        List<Meeting> meetings = new ArrayList<>(nearest.values());
        meetings.sort(Comparator.comparingInt(Meeting::line)
                .thenComparingInt(Meeting::other)
                .thenComparingDouble(Meeting::at));
        return meetings;
    }

    private static long cell(Point point, int dx, int dy) {
        long column = (long) Math.floor(point.xMm() / MEET_WITHIN_MM) + dx;
        long row = (long) Math.floor(point.yMm() / MEET_WITHIN_MM) + dy;
        return column << 32 | row & 0xFFFFFFFFL;
    }
}
