package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * What makes a piece of board worth keeping: the smallest rectangle that is still of use, and the blanks of the
 * puzzles the workshop commonly makes. They form a ladder: rung 0 is the smallest useful size, then the standard
 * blanks by area; a piece stands on the highest rung whose rectangle fits in it, on {@link #SCRAP} when none does.
 *
 * <p>Value in mm² of the best board: area × (½ + ½ · area of its rung ÷ area of the highest rung), zero for scrap. So
 * it grows with the area and with the largest standard puzzle it still gives, and the same blank costs more when
 * taken from a larger board. The weights are our own choice, not a trade rule.
 */
public final class UsefulSizes {

    public static final int SCRAP = -1;

    private final List<Size> rungs;
    private final double[] worth;

    /**
     * @param smallest smallest useful rectangle
     * @param standard blanks (not finished sizes), in any order; those no larger than the smallest are left out
     */
    public UsefulSizes(Size smallest, List<Size> standard) {
        rungs = new ArrayList<>();
        rungs.add(smallest);
        standard.stream()
                .filter(size -> size.area().compareTo(smallest.area()) > 0)
                .sorted(Comparator.comparing(Size::area))
                .forEach(rungs::add);
        double top = rungArea(top());
        worth = rungs.stream()
                .mapToDouble(rung -> 0.5 + 0.5 * rung.area().mm2() / top)
                .toArray();
    }

    private UsefulSizes(List<Size> rungs, double[] worth) {
        this.rungs = rungs;
        this.worth = worth;
    }

    /**
     * The same ladder with learned worths in place of the fixed weights.
     *
     * @param worth of a mm² on each rung, in mm² of best board; never falling from rung to rung, so that the bounds of the
     *     searches hold
     */
    public UsefulSizes worth(double... worth) {
        if (worth.length != rungs.size()) {
            throw new IllegalArgumentException(rungs.size() + " rungs, " + worth.length + " worths");
        }
        for (int rung = 0; rung < worth.length; rung++) {
            if (worth[rung] < 0 || rung > 0 && worth[rung] < worth[rung - 1]) {
                throw new IllegalArgumentException("Worths rise from zero: " + worth[rung] + " on rung " + rung);
            }
        }
        return new UsefulSizes(rungs, worth.clone());
    }

    /** Smallest useful 100 × 80 mm; blanks of A6 to A1 and some sizes between, 22 mm larger for overhang and margin. */
    public static UsefulSizes common() {
        return new UsefulSizes(
                Size.mm(100, 80),
                List.of(
                        Size.mm(170, 127),
                        Size.mm(232, 170),
                        Size.mm(222, 222),
                        Size.mm(319, 232),
                        Size.mm(375, 272),
                        Size.mm(442, 319),
                        Size.mm(522, 372),
                        Size.mm(616, 442),
                        Size.mm(722, 522),
                        Size.mm(863, 616)));
    }

    public int top() {
        return rungs.size() - 1;
    }

    public Size rung(int rung) {
        return rungs.get(rung);
    }

    public List<Size> rungs() {
        return List.copyOf(rungs);
    }

    public double rungArea(int rung) {
        return rungs.get(rung).area().mm2();
    }

    /** The highest rung that an area could hold if its shape were right. */
    public int highestFor(double areaMm2) {
        int rung = top();
        while (rung > SCRAP && rungArea(rung) > areaMm2 + 1e-6) {
            rung--;
        }
        return rung;
    }

    /** Value of a piece, see the class. */
    public Area value(Area area, int rung) {
        return Area.mm2(value(area.mm2(), rung));
    }

    public double value(double areaMm2, int rung) {
        return rung == SCRAP ? 0 : areaMm2 * worth[rung];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UsefulSizes that && rungs.equals(that.rungs);
    }

    @Override
    public int hashCode() {
        return rungs.hashCode();
    }
}
