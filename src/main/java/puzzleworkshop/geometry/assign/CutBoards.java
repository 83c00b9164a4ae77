package puzzleworkshop.geometry.assign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestPlace;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * What remains of a board after some blanks were cut from it, each at its best place in what the others left; worked
 * out once and remembered. Of few blanks the best order is found (the best way to cut a set is the best way to cut all
 * but one of them, then that one); many are cut in the order given.
 *
 * <p>May be asked by several threads: an answer depends on the question alone.
 */
final class CutBoards {

    /** Places with the kinds of blank that lie there, the parts left and what they are worth together. */
    record Cut(List<Integer> kinds, List<Placement> places, List<Profile> parts, double value) {}

    /** While no more than this is cut, in mm², each mm² left is worth at most so much. */
    record Step(double mostCut, double worth) {}

    /** Blanks alike are the same kind here, told by the first of them. */
    private record Question(int board, List<Integer> kinds) {}

    private static final Cut NOT_POSSIBLE = new Cut(List.of(), List.of(), List.of(), 0);
    private static final int FEW = 3;

    private final List<Profile> boards;
    private final List<Size> blanks;
    private final UsefulSizes sizes;
    private final BiFunction<Integer, Integer, double[]> angles;
    private final double kerf;
    private final int[] sameAs;
    private final Map<Question, Cut> known = new ConcurrentHashMap<>();

    CutBoards(
            List<Profile> boards,
            List<Size> blanks,
            UsefulSizes sizes,
            Length kerf,
            BiFunction<Integer, Integer, double[]> angles) {
        this.boards = boards;
        this.blanks = blanks;
        this.sizes = sizes;
        this.kerf = kerf.mm();
        this.angles = angles;
        this.sameAs = new int[blanks.size()];
        for (int i = 0; i < sameAs.length; i++) {
            sameAs[i] = firstLike(i);
        }
    }

    private int firstLike(int blank) {
        for (int other = 0; other < blank; other++) {
            if (blanks.get(other).equals(blanks.get(blank)) && sameRules(other, blank)) {
                return other;
            }
        }
        return blank;
    }

    private boolean sameRules(int one, int other) {
        for (int board = 0; board < boards.size(); board++) {
            if (!Arrays.equals(angles.apply(one, board), angles.apply(other, board))) {
                return false;
            }
        }
        return true;
    }

    /** The first blank that is answered like this one: same size, allowed at the same angles on every board. */
    int sameAs(int blank) {
        return sameAs[blank];
    }

    double area(int board) {
        return boards.get(board).area;
    }

    double value(int board) {
        return boards.get(board).value;
    }

    double area(List<Integer> wanted) {
        return wanted.stream()
                .mapToDouble(blank -> blanks.get(blank).area().mm2())
                .sum();
    }

    boolean mayHold(int blank, int board) {
        double[] allowed = angles.apply(blank, board);
        return !(allowed != null && allowed.length == 0)
                && new BestPlace(boards.get(board), blanks.get(blank), allowed, sizes).fits();
    }

    /**
     * No way of cutting so much area from a board loses less, whatever the shapes: what is left is worth at most its
     * area on the highest rung that the board, and that area, could hold.
     */
    double leastLoss(int board, double cutArea) {
        Profile profile = boards.get(board);
        double left = profile.area - cutArea;
        return left < 0
                ? profile.value
                : profile.value - sizes.value(left, Math.min(profile.rung, sizes.highestFor(left)));
    }

    /**
     * The same bound in pieces: for each rung that what is left could stand on, how much area may then be cut at most, and
     * what a mm² that is left is worth.
     */
    List<Step> steps(int board) {
        Profile profile = boards.get(board);
        return IntStream.rangeClosed(UsefulSizes.SCRAP, profile.rung)
                .mapToObj(rung -> new Step(
                        profile.area - (rung == UsefulSizes.SCRAP ? 0 : sizes.rungArea(rung)), sizes.value(1, rung)))
                .filter(step -> step.mostCut() >= 0)
                .toList();
    }

    /** See {@link BoardSets#of}. */
    Optional<BoardSets> sets(int board, Size[] kinds, int[] demand, int[] held, int most, BoardSets.WorkLeft work) {
        return BoardSets.of(boards.get(board), sizes, kinds, demand, held, most, work);
    }

    /** Null when they do not all fit this way. */
    Cut of(int board, List<Integer> wanted) {
        return ofKinds(board, wanted.stream().map(blank -> sameAs[blank]).toList());
    }

    private Cut ofKinds(int board, List<Integer> kinds) {
        Question question = new Question(board, kinds);
        Cut cut = known.get(question);
        if (cut == null) {
            cut = work(board, kinds);
            cut = cut == null ? NOT_POSSIBLE : cut;
            known.put(question, cut);
        }
        return cut == NOT_POSSIBLE ? null : cut;
    }

    private Cut work(int board, List<Integer> kinds) {
        if (kinds.isEmpty()) {
            Profile whole = boards.get(board);
            return new Cut(List.of(), List.of(), List.of(whole), whole.value);
        }
        Cut best = null;
        for (int last = kinds.size() - 1; last >= 0; last--) {
            boolean repeated = last < kinds.size() - 1 && kinds.get(last).equals(kinds.get(last + 1));
            if (repeated || kinds.size() > FEW && best != null) {
                continue;
            }
            List<Integer> others = new ArrayList<>(kinds);
            int kind = others.remove(last);
            Cut before = ofKinds(board, List.copyOf(others));
            Cut cut = before == null ? null : cutFrom(before, kind, angles.apply(kind, board));
            if (cut != null && (best == null || cut.value() > best.value())) {
                best = cut;
            }
        }
        return best;
    }

    private Cut cutFrom(Cut before, int kind, double[] allowed) {
        Size blank = blanks.get(kind);
        int from = -1;
        double leastLost = Double.POSITIVE_INFINITY;
        Placement place = null;
        for (int i = 0; i < before.parts().size(); i++) {
            Profile part = before.parts().get(i);
            Optional<BestPlace.Found> found = new BestPlace(part, blank, allowed, sizes).atEdges();
            if (found.isPresent() && part.value - found.get().remainderValue().mm2() < leastLost) {
                leastLost = part.value - found.get().remainderValue().mm2();
                from = i;
                place = found.get().placement();
            }
        }
        if (place == null) {
            return null;
        }
        List<Profile> parts = new ArrayList<>(before.parts());
        Profile old = parts.remove(from);
        double value = before.value() - old.value;
        Geometry rest = Outline.difference(old.outline.freeShape(), place.polygon(blank, -kerf));
        for (Geometry piece : parts(rest)) {
            Profile profile = Profile.passing(Outline.ofPart((Polygon) piece), sizes);
            parts.add(profile);
            value += profile.value;
        }
        List<Integer> kinds = new ArrayList<>(before.kinds());
        kinds.add(kind);
        List<Placement> places = new ArrayList<>(before.places());
        places.add(place);
        return new Cut(List.copyOf(kinds), List.copyOf(places), List.copyOf(parts), value);
    }

    private static List<Geometry> parts(Geometry rest) {
        List<Geometry> parts = new ArrayList<>();
        for (int i = 0; i < rest.getNumGeometries(); i++) {
            if (rest.getGeometryN(i).getArea() >= Outline.SMALLEST_AREA) {
                parts.add(rest.getGeometryN(i));
            }
        }
        return parts;
    }
}
