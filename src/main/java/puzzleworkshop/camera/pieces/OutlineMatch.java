package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Which of many known outlines some measured ones are, in any turn and either side up. All together are given the outlines that
 * fit best, each once; one that fits none is new. Where exchanging a measured outline's name for another that is still free would
 * fit as well, within what ruler and camera leave, it is not named alone: all that it may be are said.
 */
public final class OutlineMatch {

    /** A measured outline farther from a known one than this, root mean square in mm, is another: what a tape measure leaves. */
    private static final double SAME_MM = 1.0;

    /** Known outlines whose distances differ by less than this, mm, cannot be told apart. */
    private static final double ALIKE_MM = 0.22;

    private static final double FAR = 1e3;

    /** So many known outlines are looked at closely for each measured one, the best by their waves. */
    private static final int CLOSE_LOOKS = 60;

    private OutlineMatch() {}

    /**
     * An outline that is known.
     *
     * @param number by which it is called
     * @param ring x, y in turn, mm, either way round
     */
    public record Known(long number, double[] ring) {}

    /**
     * What a measured outline is.
     *
     * @param numbers of the known outlines that it may be: none when it is new, several when they are too alike
     */
    public record Match(List<Long> numbers) {

        public Match {
            numbers = List.copyOf(numbers);
        }

        public boolean isNew() {
            return numbers.isEmpty();
        }

        public boolean isSure() {
            return numbers.size() == 1;
        }
    }

    /** @param measured each x, y in turn, mm, either way round; the matches come in their order */
    public static List<Match> of(List<double[]> measured, List<Known> known) {
        List<PieceProfile> face = known.stream()
                .map(k -> new PieceProfile(clockwise(k.ring()), false))
                .toList();
        List<PieceProfile> back = known.stream()
                .map(k -> new PieceProfile(clockwise(k.ring()), true))
                .toList();
        double[][] distance = new double[measured.size()][];
        IntStream.range(0, distance.length)
                .parallel()
                .forEach(i -> distance[i] = distances(new PieceProfile(clockwise(measured.get(i)), false), face, back));
        int[] name = named(distance, known.size());
        List<Match> matches = new ArrayList<>();
        for (int i = 0; i < name.length; i++) {
            matches.add(new Match(name[i] < 0 ? List.of() : candidates(i, name, distance, known)));
        }
        return matches;
    }

    private static double[] clockwise(double[] ring) {
        double doubled = 0;
        for (int i = 0; i < ring.length; i += 2) {
            int j = (i + 2) % ring.length;
            doubled += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
        }
        if (doubled >= 0) {
            return ring.clone();
        }
        double[] turned = new double[ring.length];
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
            turned[2 * i] = ring[2 * (n - 1 - i)];
            turned[2 * i + 1] = ring[2 * (n - 1 - i) + 1];
        }
        return turned;
    }

    private static double[] distances(PieceProfile found, List<PieceProfile> face, List<PieceProfile> back) {
        int n = face.size();
        double[] bound = new double[n];
        for (int k = 0; k < n; k++) {
            double share = found.area / face.get(k).area;
            bound[k] = share > 0.9 && share < 1.12 ? found.atLeast(face.get(k)) : FAR;
        }
        double[] sorted = bound.clone();
        Arrays.sort(sorted);
        double likely = n == 0 ? 0 : sorted[Math.min(CLOSE_LOOKS, n) - 1];
        double[] distances = new double[n];
        for (int k = 0; k < n; k++) {
            distances[k] = bound[k] < 4 * SAME_MM * SAME_MM && bound[k] <= likely
                    ? Math.min(both(found, face.get(k)), both(found, back.get(k)))
                    : FAR;
        }
        return distances;
    }

    /** Either edge from the other: a narrow slot in one of them is passed over from the other's side. */
    private static double both(PieceProfile found, PieceProfile known) {
        double[] turn = found.onto(known);
        double there = PieceMatch.distance(found, known, turn[1], turn[2]);
        return there > 2 * SAME_MM ? there : Math.max(there, PieceMatch.distance(known, found, turn[1], -turn[2]));
    }

    /** For each measured outline the place of its known one, −1 for none. */
    private static int[] named(double[][] distance, int known) {
        int rows = distance.length;
        double[][] cost = new double[rows][known + rows];
        for (int i = 0; i < rows; i++) {
            for (int k = 0; k < known; k++) {
                double d = distance[i][k];
                cost[i][k] = d > SAME_MM ? FAR : d * d;
            }
            // to be new costs as much as the farthest that is still the same
            Arrays.fill(cost[i], known, known + rows, SAME_MM * SAME_MM);
        }
        int[] name = Assignment.of(cost);
        for (int i = 0; i < rows; i++) {
            name[i] = name[i] < known ? name[i] : -1;
        }
        return name;
    }

    /**
     * The name given, and others that would do: those still free, and those of others that could themselves move on. A set of
     * twins that are all there is sure as a set.
     */
    private static List<Long> candidates(int of, int[] name, double[][] distance, List<Known> known) {
        Set<Integer> all = new TreeSet<>(Set.of(name[of]));
        boolean free = false;
        List<Integer> open = new ArrayList<>(List.of(of));
        boolean[] asked = new boolean[name.length];
        asked[of] = true;
        while (!open.isEmpty()) {
            int at = open.removeLast();
            for (int k = 0; k < known.size(); k++) {
                if (k == name[at] || distance[at][k] > Math.min(SAME_MM, distance[at][name[at]] + ALIKE_MM)) {
                    continue;
                }
                int holder = holder(k, name);
                free |= holder < 0;
                if (holder < 0 || !asked[holder]) {
                    all.add(k);
                }
                if (holder >= 0 && !asked[holder]) {
                    asked[holder] = true;
                    open.add(holder);
                }
            }
        }
        List<Long> numbers = new ArrayList<>();
        if (free) {
            all.forEach(k -> numbers.add(known.get(k).number()));
        } else {
            numbers.add(known.get(name[of]).number());
        }
        return numbers;
    }

    private static int holder(int known, int[] name) {
        for (int i = 0; i < name.length; i++) {
            if (name[i] == known) {
                return i;
            }
        }
        return -1;
    }
}
