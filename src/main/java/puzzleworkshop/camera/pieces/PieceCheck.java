package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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

    /** So many things in a photo that fit nowhere at first are laid on every place: a photo with more of them is of another puzzle. */
    private static final int LOOKED_AT_AGAIN = 12;

    /** Middles nearer to each other, mm, are of one thing. */
    private static final double SAME_THING_MM = 6;

    /** What is smaller than this share of the smallest piece is a crumb. */
    private static final double CRUMB = 0.35;

    static final double FAR = 1e4;

    private final List<PieceShape> pieces;

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
     * Something that lies in a photo, not yet told apart.
     *
     * @param edge where it lies: u, v in turn, pixels
     * @param distances from each place of the pattern, mm
     * @param areaMm2 of its face
     * @param shown where along its edge its picture stands out from what lies below: x, y in turn, mm, on the pattern; empty of what
     *     lies picture down
     */
    public record LaidPiece(double[] edge, double[] distances, double areaMm2, double[] shown) {

        LaidPiece(double[] edge, double[] distances, double areaMm2) {
            this(edge, distances, areaMm2, new double[0]);
        }

        double nearest() {
            return Arrays.stream(distances).min().orElse(FAR);
        }
    }

    /**
     * What one photo shows.
     *
     * @param pictured whether pictures lie up, whose edges may be lost in what lies below
     * @param unseenMm2 the largest place in one of the pictures that cannot be told from what lies below
     * @param troubles what has to be put right first
     */
    public record LaidPieces(List<LaidPiece> pieces, boolean pictured, double unseenMm2, List<Sentence> troubles) {

        public LaidPieces {
            pieces = List.copyOf(pieces);
            troubles = List.copyOf(troubles);
        }
    }

    /**
     * @param seen every piece found
     * @param missing numbers of places that are empty; where several places are too alike to tell which is empty, all of them; none
     *     while something stands in the way of telling
     * @param unfound while it does, the places nothing was found for, in the same way: missing, or seen too badly to be known
     * @param foreign pieces that fit nowhere
     * @param troubles what has to be put right first, such as pieces that touch
     */
    public record Result(
            List<SeenPiece> seen,
            List<List<Integer>> missing,
            List<List<Integer>> unfound,
            int foreign,
            List<Sentence> troubles) {

        public boolean isComplete() {
            return missing.isEmpty() && foreign == 0 && troubles.isEmpty();
        }
    }

    private PieceCheck(List<PieceShape> pieces) {
        this.pieces = pieces;
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
        SeenEdges edges = BoardFinder.edges(
                photo, thicknessMm, printScale, check.smallest() * CRUMB, check.largest() * PieceCount.ONE);
        return edges.varied() ? check.pictured(edges) : new LaidPieces(check.placed(edges), false, 0, edges.leftOut());
    }

    /** What several photos say together. */
    public static Result result(List<PieceShape> pieces, List<LaidPieces> photos) {
        return new PieceCount(pieces, photos).result();
    }

    private double largest() {
        return pieces.stream()
                .mapToDouble(p -> new PieceProfile(p.ring(), false).area)
                .max()
                .orElse(0);
    }

    private double smallest() {
        return pieces.stream()
                .mapToDouble(p -> new PieceProfile(p.ring(), false).area)
                .min()
                .orElse(0);
    }

    /** Pieces whose pictures lie up, their own outlines laid into the photo. */
    private LaidPieces pictured(SeenEdges edges) {
        PictureFit fit = new PictureFit(edges.top(), places(false));
        List<PictureFit.Laid> all =
                new ArrayList<>(edges.rings().stream().parallel().map(fit::laid).toList());
        int[] unsure = IntStream.range(0, all.size())
                .filter(i -> !all.get(i).isSure())
                .limit(LOOKED_AT_AGAIN)
                .toArray();
        boolean[] may = open(all);
        List<PictureFit.Laid> again = Arrays.stream(unsure)
                .parallel()
                .mapToObj(i -> again(fit, edges, i, may))
                .toList();
        for (int i = 0; i < unsure.length; i++) {
            all.set(unsure[i], again.get(i));
        }
        List<PictureFit.Laid> clear =
                all.stream().filter(PictureFit.Laid::isClear).toList();
        edges.faint().stream()
                .parallel()
                .filter(ring -> isElsewhere(ring, clear))
                .map(fit::laid)
                .filter(PictureFit.Laid::isSure)
                .forEachOrdered(all::add);
        List<PictureFit.Laid> laid = new ArrayList<>();
        all.stream()
                .sorted(Comparator.comparingDouble(one -> one.piece().nearest()))
                .filter(one -> laid.stream().noneMatch(better -> better.covers(one)))
                .forEachOrdered(laid::add);
        boolean more = edges.traces()
                .isMoreThan(laid.stream()
                        .filter(PictureFit.Laid::isSure)
                        .map(PictureFit.Laid::ring)
                        .toList());
        double unseen =
                laid.stream().mapToDouble(PictureFit.Laid::unseenMm2).max().orElse(0);
        return new LaidPieces(
                laid.stream().map(PictureFit.Laid::piece).toList(),
                true,
                more ? Double.POSITIVE_INFINITY : unseen,
                edges.leftOut());
    }

    /** What lies on a piece that is clearly seen is that piece again. */
    private static boolean isElsewhere(double[] ring, List<PictureFit.Laid> clear) {
        PieceProfile one = new PieceProfile(ring, false);
        return clear.stream().noneMatch(piece -> piece.holds(one.middleX, one.middleY));
    }

    /** Places whose pieces are not clearly seen elsewhere in the photo. */
    private boolean[] open(List<PictureFit.Laid> laid) {
        boolean[] open = new boolean[pieces.size()];
        Arrays.fill(open, true);
        laid.stream().filter(PictureFit.Laid::isClear).forEach(one -> open[one.place()] = false);
        return open;
    }

    /** By edges alone, around its middle; also around where more of what hardly stands out is taken along. */
    private static PictureFit.Laid again(PictureFit fit, SeenEdges edges, int ring, boolean[] may) {
        double[] first = edges.rings().get(ring);
        PieceProfile one = new PieceProfile(first, false);
        return Stream.concat(Stream.of(first), edges.faint().stream().filter(other -> {
                    PieceProfile faint = new PieceProfile(other, false);
                    return Math.hypot(faint.middleX - one.middleX, faint.middleY - one.middleY) < SAME_THING_MM;
                }))
                .map(blob -> fit.laidAnywhere(blob, may))
                .min(Comparator.comparingDouble(laid -> laid.piece().nearest()))
                .orElseThrow();
    }

    /** Distances of each piece of one photo from each place, as it lies: picture up or down, whichever fits the photo better. */
    private List<LaidPiece> placed(SeenEdges edges) {
        List<PieceProfile> found = edges.rings().stream()
                .map(ring -> new PieceProfile(ring, false))
                .toList();
        List<PieceProfile> face = places(false);
        List<PieceProfile> back = places(true);
        // which side is up is seen by some of them
        List<PieceProfile> some = found.subList(0, Math.min(TELLING, found.size()));
        List<PieceProfile> places = nearness(some, face) <= nearness(some, back) ? face : back;
        LaidPiece[] laid = new LaidPiece[found.size()];
        IntStream.range(0, laid.length)
                .parallel()
                .forEach(i -> laid[i] = new LaidPiece(
                        edges.top().inPhoto(edges.rings().get(i)), distances(found.get(i), places), found.get(i).area));
        return List.of(laid);
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
}
