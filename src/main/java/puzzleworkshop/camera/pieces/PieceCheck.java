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

    /** So many places are looked at closely for each piece, the best by {@link PieceProfile#onto}. */
    private static final int CLOSE_LOOKS = 8;

    /** So many places are laid on at all, the best by {@link PieceProfile#atLeast}; of a large pattern a twentieth. */
    private static final int LIKELY = 40;

    /** So many pieces tell whether a photo shows their faces or their backs. */
    private static final int TELLING = 12;

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
     * What one photo shows, measured but not yet told apart.
     *
     * @param edges where each piece lies in the photo: u, v in turn, pixels
     * @param distances of each from each place of the pattern, mm
     * @param troubles what has to be put right first
     */
    public record LaidPieces(List<double[]> edges, List<double[]> distances, List<Sentence> troubles) {

        public LaidPieces {
            edges = List.copyOf(edges);
            distances = List.copyOf(distances);
            troubles = List.copyOf(troubles);
        }
    }

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
                .mapToDouble(p -> new PieceProfile(p.ring(), false).area)
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
        return result(
                pieces,
                photos.stream()
                        .map(photo -> look(pieces, photo, thicknessMm, printScale))
                        .toList());
    }

    /** One photo, so that a further one need not measure in the earlier ones again; parameters as for {@link #of}. */
    public static LaidPieces look(List<PieceShape> pieces, Photo photo, double thicknessMm, double printScale) {
        PieceCheck check = new PieceCheck(pieces);
        SeenEdges edges = BoardFinder.edges(photo, thicknessMm, printScale, check.smallest() * 0.35);
        check.troubles.addAll(edges.leftOut());
        List<double[]> distances = check.placed(edges);
        return new LaidPieces(edges.inPhoto(), distances, check.troubles);
    }

    /** What several photos say together. */
    public static Result result(List<PieceShape> pieces, List<LaidPieces> photos) {
        return new PieceCheck(pieces).together(photos);
    }

    private Result together(List<LaidPieces> photos) {
        List<double[]> costs = new ArrayList<>();
        for (int photo = 0; photo < photos.size(); photo++) {
            LaidPieces laid = photos.get(photo);
            troubles.addAll(laid.troubles());
            costs.addAll(laid.distances());
            for (int i = 0; i < laid.edges().size(); i++) {
                double nearest = Arrays.stream(laid.distances().get(i)).min().orElse(FAR);
                seen.add(new SeenPiece(0, photo, laid.edges().get(i), nearest));
            }
        }
        long ours =
                seen.stream().filter(piece -> piece.distanceMm() <= FOREIGN_MM).count();
        if (ours > pieces.size()) {
            troubles.add(Sentence.of("camera.pieces.toomany", ours, pieces.size()));
            return new Result(List.copyOf(seen), List.of(), seen.size() - pieces.size(), List.copyOf(troubles));
        }
        return assigned(costs);
    }

    private double smallest() {
        return pieces.stream()
                .mapToDouble(p -> new PieceProfile(p.ring(), false).area)
                .min()
                .orElse(0);
    }

    /** Distances of each piece of one photo from each place, as it lies: picture up or down, whichever fits the photo better. */
    private List<double[]> placed(SeenEdges edges) {
        List<PieceProfile> found = edges.rings().stream()
                .map(ring -> new PieceProfile(ring, false))
                .toList();
        List<PieceProfile> face = places(false);
        List<PieceProfile> back = places(true);
        // which side is up is seen by some of them
        List<PieceProfile> some = found.subList(0, Math.min(TELLING, found.size()));
        List<PieceProfile> places = nearness(some, face) <= nearness(some, back) ? face : back;
        double[][] better = new double[found.size()][];
        IntStream.range(0, better.length).parallel().forEach(i -> better[i] = distances(found.get(i), places));
        for (int i = 0; i < better.length; i++) {
            double nearest = Arrays.stream(better[i]).min().orElse(FAR);
            if (found.get(i).area > 1.3 * largest && nearest > FOREIGN_MM) {
                troubles.add(Sentence.of("camera.pieces.touch"));
            }
        }
        return Arrays.asList(better);
    }

    private List<PieceProfile> places(boolean mirrored) {
        return pieces.stream().map(p -> new PieceProfile(p.ring(), mirrored)).toList();
    }

    private static double nearness(List<PieceProfile> found, List<PieceProfile> places) {
        return found.stream()
                .parallel()
                .mapToDouble(piece -> Math.min(
                        1.5, Arrays.stream(distances(piece, places)).min().orElse(FAR)))
                .sum();
    }

    private static double[] distances(PieceProfile found, List<PieceProfile> places) {
        int n = places.size();
        double[] bound = new double[n];
        for (int p = 0; p < n; p++) {
            double share = found.area / places.get(p).area;
            bound[p] = share > 0.8 && share < 1.25 ? found.atLeast(places.get(p)) : FAR;
        }
        double likely = ranked(bound, Math.max(LIKELY, n / 20));
        double[] rough = new double[n];
        double[][] turns = new double[n][];
        for (int p = 0; p < n; p++) {
            rough[p] = FAR;
            if (bound[p] < FAR && bound[p] <= likely) {
                turns[p] = found.onto(places.get(p));
                rough[p] = turns[p][0];
            }
        }
        double close = ranked(rough, CLOSE_LOOKS);
        double[] distances = new double[n];
        for (int p = 0; p < n; p++) {
            distances[p] = rough[p] >= FAR
                    ? Math.max(1, Math.sqrt(bound[p]))
                    : rough[p] <= close
                            ? PieceMatch.distance(found, places.get(p), turns[p][1], turns[p][2])
                            : Math.sqrt(rough[p]);
        }
        return distances;
    }

    /** The value that stands at a rank from the smallest, the largest where there are fewer. */
    private static double ranked(double[] values, int rank) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[Math.min(rank, sorted.length) - 1];
    }

    private Result assigned(List<double[]> distances) {
        // what fits nowhere takes nobody's place
        int[] ours = IntStream.range(0, seen.size())
                .filter(i -> seen.get(i).distanceMm() <= FOREIGN_MM)
                .toArray();
        double[][] cost = new double[ours.length][pieces.size()];
        for (int i = 0; i < cost.length; i++) {
            for (int p = 0; p < pieces.size(); p++) {
                double d = distances.get(ours[i])[p];
                // beyond a millimetre all are equally wrong: one bad piece must not push others off their places
                cost[i][p] = Math.min(d * d, 1);
            }
        }
        int[] place = new int[seen.size()];
        Arrays.fill(place, -1);
        int[] assigned = Assignment.of(cost);
        boolean[] taken = new boolean[pieces.size()];
        for (int i = 0; i < ours.length; i++) {
            if (distances.get(ours[i])[assigned[i]] <= FOREIGN_MM) {
                place[ours[i]] = assigned[i];
                taken[assigned[i]] = true;
            }
        }
        int foreign = 0;
        List<SeenPiece> named = new ArrayList<>();
        for (int i = 0; i < place.length; i++) {
            SeenPiece piece = seen.get(i);
            int at = place[i];
            foreign += at < 0 ? 1 : 0;
            named.add(
                    at < 0
                            ? piece
                            : new SeenPiece(
                                    pieces.get(at).number(),
                                    piece.photo(),
                                    piece.edge(),
                                    distances.get(i)[at]));
        }
        List<List<Integer>> missing = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            if (!taken[p]) {
                missing.add(candidates(p, place, distances));
            }
        }
        return new Result(named, missing, foreign, List.copyOf(troubles));
    }

    /** The empty place, and every place whose piece would fit there as well, and so on. */
    private List<Integer> candidates(int empty, int[] place, List<double[]> distances) {
        TreeSet<Integer> all = new TreeSet<>(List.of(empty));
        List<Integer> open = new ArrayList<>(List.of(empty));
        while (!open.isEmpty()) {
            int at = open.removeLast();
            for (int i = 0; i < place.length; i++) {
                if (place[i] >= 0
                        && distances.get(i)[at] < distances.get(i)[place[i]] + ALIKE_MM
                        && all.add(place[i])) {
                    open.add(place[i]);
                }
            }
        }
        return all.stream().map(p -> pieces.get(p).number()).toList();
    }
}
