package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPiece;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPieces;
import puzzleworkshop.camera.pieces.PieceCheck.Result;
import puzzleworkshop.camera.pieces.PieceCheck.SeenPiece;
import puzzleworkshop.measure.Sentence;

/**
 * What lies in several photos, counted together: each piece gets the place it fits, the places left over are missing. What fits
 * nowhere is looked at again before it is called a piece of another puzzle: pieces that touch are one outline, and a picture as pale
 * as the paper below it loses its edge. While there is such a thing nothing is called missing.
 */
final class PieceCount {

    /** A piece farther from all places than this, root mean square in mm, is not of this puzzle. */
    private static final double FOREIGN_MM = 0.65;

    /** Places whose distances differ by less than this, mm, cannot be told apart. */
    private static final double ALIKE_MM = 0.045;

    /** And by less than this share of a piece's distance from its own place: a badly seen edge tells less. */
    private static final double ALIKE_SHARE = 0.3;

    /** No piece is larger than this, in areas of the largest. */
    static final double ONE = 1.3;

    /** The area of pieces that touch, against the sum of theirs: blur fills what is between them. */
    private static final double LEAST_TOGETHER = 0.96;

    private static final double MOST_TOGETHER = 1.08;

    private static final int FEW = 60;

    /** A place as large as this share of the smallest piece that is not told from what lies below: a whole piece may not be either. */
    private static final double UNSEEN = 0.1;

    private final List<PieceShape> pieces;
    private final List<LaidPieces> photos;
    private final double[] area;
    private final List<LaidPiece> laid = new ArrayList<>();
    private final List<Integer> photo = new ArrayList<>();
    private final List<Sentence> troubles = new ArrayList<>();

    PieceCount(List<PieceShape> pieces, List<LaidPieces> photos) {
        this.pieces = pieces;
        this.photos = photos;
        area = pieces.stream()
                .mapToDouble(p -> new PieceProfile(p.ring(), false).area)
                .toArray();
        for (int i = 0; i < photos.size(); i++) {
            troubles.addAll(photos.get(i).troubles());
            for (LaidPiece piece : photos.get(i).pieces()) {
                laid.add(piece);
                photo.add(i);
            }
        }
    }

    Result result() {
        int[] ours = IntStream.range(0, laid.size())
                .filter(i -> laid.get(i).nearest() <= FOREIGN_MM)
                .toArray();
        int[] place = new int[laid.size()];
        Arrays.fill(place, -1);
        if (ours.length > pieces.size()) {
            troubles.add(Sentence.of("camera.pieces.toomany", ours.length, pieces.size()));
            return new Result(seen(place), List.of(), List.of(), laid.size() - pieces.size(), List.copyOf(troubles));
        }
        assign(ours, place);
        boolean[] taken = new boolean[pieces.size()];
        Arrays.stream(place).filter(p -> p >= 0).forEach(p -> taken[p] = true);
        double[] free = IntStream.range(0, taken.length)
                .filter(p -> !taken[p])
                .mapToDouble(p -> area[p])
                .toArray();
        int foreign = strangers(place, free);
        if (free.length > 0 && mayHide(taken)) {
            troubles.add(Sentence.of("camera.pieces.hidden"));
        }
        List<List<Integer>> empty = new ArrayList<>();
        for (int p = 0; p < taken.length; p++) {
            if (!taken[p]) {
                empty.add(candidates(p, place));
            }
        }
        boolean sure = troubles.isEmpty();
        return new Result(
                seen(place), sure ? empty : List.of(), sure ? List.of() : empty, foreign, List.copyOf(troubles));
    }

    private void assign(int[] ours, int[] place) {
        // what fits nowhere takes nobody's place
        double[][] cost = new double[ours.length][pieces.size()];
        for (int i = 0; i < cost.length; i++) {
            for (int p = 0; p < pieces.size(); p++) {
                double d = laid.get(ours[i]).distances()[p];
                // beyond a millimetre all are equally wrong: one bad piece must not push others off their places
                cost[i][p] = Math.min(d * d, 1);
            }
        }
        int[] assigned = Assignment.of(cost);
        for (int i = 0; i < ours.length; i++) {
            if (laid.get(ours[i]).distances()[assigned[i]] <= FOREIGN_MM) {
                place[ours[i]] = assigned[i];
            }
        }
    }

    /** How many fit nowhere; those that are something else than pieces of another puzzle become troubles. */
    private int strangers(int[] place, double[] free) {
        int strangers = 0;
        int lost = 0;
        boolean touching = false;
        double largest = Arrays.stream(area).max().orElse(0);
        for (int i = 0; i < place.length; i++) {
            if (place[i] >= 0) {
                continue;
            }
            strangers++;
            if (laid.get(i).areaMm2() > ONE * largest || isTogether(laid.get(i).areaMm2(), free)) {
                touching = true;
            } else if (photos.get(photo.get(i)).pictured()) {
                lost++;
            }
        }
        if (touching) {
            troubles.add(Sentence.of("camera.pieces.touch"));
        }
        if (lost > 0) {
            troubles.add(Sentence.of("camera.pieces.lost", lost));
        }
        return strangers;
    }

    /** Whether two or three pieces not yet found are together as large; while many are not, some always are. */
    private static boolean isTogether(double found, double[] free) {
        if (free.length > FEW) {
            return found > LEAST_TOGETHER * 2 * Arrays.stream(free).min().orElse(0);
        }
        for (int a = 0; a < free.length; a++) {
            for (int b = a + 1; b < free.length; b++) {
                if (isNear(found, free[a] + free[b])) {
                    return true;
                }
                for (int c = b + 1; c < free.length; c++) {
                    if (isNear(found, free[a] + free[b] + free[c])) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean isNear(double found, double sum) {
        return found > LEAST_TOGETHER * sum && found < MOST_TOGETHER * sum;
    }

    /** Whether a piece may lie there unseen: some picture is lost in what lies below, and nothing says that a missing one's is not. */
    private boolean mayHide(boolean[] taken) {
        double unseen = photos.stream().mapToDouble(LaidPieces::unseenMm2).max().orElse(0);
        if (unseen <= UNSEEN * Arrays.stream(area).min().orElse(0)) {
            return false;
        }
        PictureBorders borders = new PictureBorders(pieces, laid);
        return Double.isInfinite(unseen)
                || IntStream.range(0, taken.length).anyMatch(p -> !taken[p] && !borders.standsOut(p));
    }

    private List<SeenPiece> seen(int[] place) {
        List<SeenPiece> seen = new ArrayList<>();
        for (int i = 0; i < place.length; i++) {
            LaidPiece piece = laid.get(i);
            int at = place[i];
            seen.add(new SeenPiece(
                    at < 0 ? 0 : pieces.get(at).number(),
                    photo.get(i),
                    piece.edge(),
                    at < 0 ? piece.nearest() : piece.distances()[at]));
        }
        return List.copyOf(seen);
    }

    /** The empty place, and every place whose piece would fit there as well, and so on. */
    private List<Integer> candidates(int empty, int[] place) {
        TreeSet<Integer> all = new TreeSet<>(List.of(empty));
        List<Integer> open = new ArrayList<>(List.of(empty));
        while (!open.isEmpty()) {
            int at = open.removeLast();
            for (int i = 0; i < place.length; i++) {
                if (place[i] >= 0 && isAlike(laid.get(i).distances(), at, place[i]) && all.add(place[i])) {
                    open.add(place[i]);
                }
            }
        }
        return all.stream().map(p -> pieces.get(p).number()).toList();
    }

    private static boolean isAlike(double[] distances, int other, int own) {
        return distances[other] < distances[own] + Math.max(ALIKE_MM, ALIKE_SHARE * distances[own]);
    }
}
