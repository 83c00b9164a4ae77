package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.SeenEdges;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * Which pieces of a pattern lie in some photos, and which are missing. Every piece found is laid on every piece of the pattern; all
 * together are given the places that fit best (each place once), and what is left over is missing. Where a piece fits another place
 * as well as its own, within what the camera can tell, both are named.
 */
public final class PieceCheck {

    /** So many places are looked at closely for each piece, the best by {@link Profile#onto}. */
    private static final int CLOSE_LOOKS = 8;

    /** A piece farther from all places than this, root mean square in mm, is not of this puzzle. */
    private static final double FOREIGN_MM = 0.65;

    /** Places whose distances differ by less than this, mm, cannot be told apart. */
    private static final double ALIKE_MM = 0.045;

    private static final double FAR = 1e4;

    private final List<PieceShape> pieces;
    private final List<SeenPiece> seen = new ArrayList<>();
    private final List<Sentence> troubles = new ArrayList<>();
    private final double largest;

    /**
     * A piece found.
     *
     * @param number of the place it fits, 0 for a piece of another puzzle
     * @param photo in which, from 0
     * @param edge where it lies in that photo: u, v in turn, pixels
     * @param distanceMm from its place's own edge
     */
    public record SeenPiece(int number, int photo, double[] edge, double distanceMm) {}

    /**
     * @param seen every piece found
     * @param missing numbers of places that are empty; where several places are too alike to tell which is empty, all of them
     * @param foreign pieces that fit nowhere
     * @param troubles what has to be put right first, such as pieces that touch
     */
    public record Result(List<SeenPiece> seen, List<List<Integer>> missing, int foreign, List<Sentence> troubles) {

        public boolean isComplete() {
            return missing.isEmpty() && foreign == 0 && troubles.isEmpty();
        }
    }

    private PieceCheck(List<PieceShape> pieces) {
        this.pieces = pieces;
        this.largest = pieces.stream()
                .mapToDouble(p -> new Profile(p.ring(), false).area)
                .max()
                .orElse(0);
    }

    /**
     * @param pieces of the whole pattern
     * @param photos together show each piece once, picture up or down (all of one photo the same way)
     * @param thicknessMm of the pieces
     * @param printScale see {@link BoardFinder#find}
     * @throws Refused when a photo cannot be measured in
     */
    public static Result of(List<PieceShape> pieces, List<Photo> photos, double thicknessMm, double printScale) {
        return new PieceCheck(pieces).check(photos, thicknessMm, printScale);
    }

    private Result check(List<Photo> photos, double thickness, double printScale) {
        List<double[]> costs = new ArrayList<>();
        for (int i = 0; i < photos.size(); i++) {
            SeenEdges edges = BoardFinder.edges(photos.get(i), thickness, printScale, smallest() * 0.35);
            troubles.addAll(edges.leftOut());
            costs.addAll(placed(i, edges));
        }
        if (seen.size() > pieces.size()) {
            troubles.add(Sentence.of("camera.pieces.toomany", seen.size(), pieces.size()));
            return new Result(List.copyOf(seen), List.of(), seen.size() - pieces.size(), List.copyOf(troubles));
        }
        return assigned(costs);
    }

    private double smallest() {
        return pieces.stream()
                .mapToDouble(p -> new Profile(p.ring(), false).area)
                .min()
                .orElse(0);
    }

    /** Distances of each piece of one photo from each place, as it lies: picture up or down, whichever fits the photo better. */
    private List<double[]> placed(int photo, SeenEdges edges) {
        double[][][] both = new double[2][edges.rings().size()][];
        double[] sum = new double[2];
        for (int side = 0; side < 2; side++) {
            boolean mirrored = side == 1;
            List<Profile> places =
                    pieces.stream().map(p -> new Profile(p.ring(), mirrored)).toList();
            double[][] mine = both[side];
            IntStream.range(0, mine.length)
                    .parallel()
                    .forEach(i -> mine[i] = distances(new Profile(edges.rings().get(i), false), places));
            for (double[] row : mine) {
                sum[side] += Math.min(1.5, Arrays.stream(row).min().orElse(FAR));
            }
        }
        double[][] better = both[sum[0] <= sum[1] ? 0 : 1];
        for (int i = 0; i < better.length; i++) {
            double area = new Profile(edges.rings().get(i), false).area;
            double nearest = Arrays.stream(better[i]).min().orElse(FAR);
            if (area > 1.3 * largest && nearest > FOREIGN_MM) {
                troubles.add(Sentence.of("camera.pieces.touch"));
            }
            seen.add(new SeenPiece(0, photo, edges.inPhoto().get(i), nearest));
        }
        return Arrays.asList(better);
    }

    private static double[] distances(Profile found, List<Profile> places) {
        double[] rough = new double[places.size()];
        double[][] turns = new double[places.size()][];
        for (int p = 0; p < rough.length; p++) {
            double share = found.area / places.get(p).area;
            rough[p] = FAR;
            if (share > 0.8 && share < 1.25) {
                turns[p] = found.onto(places.get(p));
                rough[p] = turns[p][0];
            }
        }
        double[] sorted = rough.clone();
        Arrays.sort(sorted);
        double limit = sorted[Math.min(CLOSE_LOOKS, sorted.length) - 1];
        double[] distances = new double[places.size()];
        for (int p = 0; p < rough.length; p++) {
            distances[p] = rough[p] >= FAR
                    ? FAR
                    : rough[p] <= limit
                            ? PieceMatch.distance(found, places.get(p), turns[p][1], turns[p][2])
                            : Math.sqrt(rough[p]);
        }
        return distances;
    }

    private Result assigned(List<double[]> distances) {
        double[][] cost = new double[distances.size()][pieces.size()];
        for (int i = 0; i < cost.length; i++) {
            for (int p = 0; p < pieces.size(); p++) {
                double d = distances.get(i)[p];
                // beyond a millimetre all are equally wrong: one bad piece must not push others off their places
                cost[i][p] = Math.min(d * d, 1);
            }
        }
        int[] place = Assignment.of(cost);
        boolean[] taken = new boolean[pieces.size()];
        int foreign = 0;
        List<SeenPiece> named = new ArrayList<>();
        for (int i = 0; i < place.length; i++) {
            double d = distances.get(i)[place[i]];
            SeenPiece piece = seen.get(i);
            boolean ours = d <= FOREIGN_MM;
            if (ours) {
                taken[place[i]] = true;
            } else {
                foreign++;
            }
            named.add(new SeenPiece(ours ? pieces.get(place[i]).number() : 0, piece.photo(), piece.edge(), d));
        }
        List<List<Integer>> missing = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            if (!taken[p]) {
                missing.add(candidates(p, place, taken, distances));
            }
        }
        return new Result(named, missing, foreign, List.copyOf(troubles));
    }

    /** The empty place, and every place whose piece would fit there as well, and so on. */
    private List<Integer> candidates(int empty, int[] place, boolean[] taken, List<double[]> distances) {
        TreeSet<Integer> all = new TreeSet<>(List.of(empty));
        List<Integer> open = new ArrayList<>(List.of(empty));
        while (!open.isEmpty()) {
            int at = open.removeLast();
            for (int i = 0; i < place.length; i++) {
                double own = distances.get(i)[place[i]];
                if (taken[place[i]] && distances.get(i)[at] < own + ALIKE_MM && all.add(place[i])) {
                    open.add(place[i]);
                }
            }
        }
        return all.stream().map(p -> pieces.get(p).number()).toList();
    }
}
