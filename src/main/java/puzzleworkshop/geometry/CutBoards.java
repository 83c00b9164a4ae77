package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.measure.Size;

/** What remains of a board after some blanks were cut from it, each at its best place; worked out once and remembered. */
final class CutBoards {

    /** Places in the order of the blanks, the parts left and what they are worth together. */
    record Cut(List<Placement> places, List<Profile> parts, double value) {}

    /** Blanks alike are the same blank here, told by the first of them. */
    private record Question(int board, List<Integer> sizes) {}

    private static final Cut NOT_POSSIBLE = new Cut(List.of(), List.of(), 0);

    private final List<Profile> boards;
    private final List<Size> blanks;
    private final UsefulSizes sizes;
    private final BiFunction<Integer, Integer, double[]> angles;
    private final double smallest;
    private final int[] sameAs;
    private final Map<Question, Cut> known = new HashMap<>();

    CutBoards(
            List<Profile> boards, List<Size> blanks, UsefulSizes sizes, BiFunction<Integer, Integer, double[]> angles) {
        this.boards = boards;
        this.blanks = blanks;
        this.sizes = sizes;
        this.angles = angles;
        this.sameAs = new int[blanks.size()];
        for (int i = 0; i < sameAs.length; i++) {
            sameAs[i] = firstLike(i);
        }
        this.smallest = Math.min(
                sizes.rungArea(0), blanks.stream().mapToDouble(b -> b.area().mm2()).min().orElse(0));
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

    /** The blank cannot cost less on this board, whatever else is cut from it; infinite: it does not fit or may not. */
    double leastLoss(int blank, int board) {
        double[] allowed = angles.apply(blank, board);
        Profile profile = boards.get(board);
        if (allowed != null && allowed.length == 0
                || !new BestPlace(profile, blanks.get(blank), allowed, sizes).fits()) {
            return Double.POSITIVE_INFINITY;
        }
        double area = blanks.get(blank).area().mm2();
        boolean nothingBeside = profile.area - area < smallest;
        return nothingBeside ? profile.value : area * profile.value / profile.area;
    }

    /** Null when they do not all fit this way. */
    Cut of(int board, List<Integer> wanted) {
        Question question = new Question(board, wanted.stream().map(blank -> sameAs[blank]).toList());
        Cut cut = known.get(question);
        if (cut == null) {
            cut = work(board, wanted);
            cut = cut == null ? NOT_POSSIBLE : cut;
            known.put(question, cut);
        }
        return cut == NOT_POSSIBLE ? null : cut;
    }

    private Cut work(int board, List<Integer> wanted) {
        if (wanted.isEmpty()) {
            Profile whole = boards.get(board);
            return new Cut(List.of(), List.of(whole), whole.value);
        }
        Cut before = of(board, wanted.subList(0, wanted.size() - 1));
        int blank = wanted.getLast();
        return before == null ? null : cutFrom(before, blanks.get(blank), angles.apply(blank, board));
    }

    private Cut cutFrom(Cut before, Size blank, double[] allowed) {
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
        Geometry rest = Outline.difference(old.outline.freeShape(), place.polygon(blank, 0));
        for (Geometry piece : BoardAssignment.parts(rest)) {
            Profile profile = Profile.passing(Outline.ofPart((Polygon) piece), sizes);
            parts.add(profile);
            value += profile.value;
        }
        List<Placement> places = new ArrayList<>(before.places());
        places.add(place);
        return new Cut(places, parts, value);
    }
}
