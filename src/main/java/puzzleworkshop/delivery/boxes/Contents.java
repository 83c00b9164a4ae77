package puzzleworkshop.delivery.boxes;

import java.util.Arrays;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.PieceSizes;
import puzzleworkshop.pattern.Tray;

/**
 * What goes into one box: one puzzle, its pieces loose, or assembled in its tray.
 *
 * @param solidMm3 of the pieces themselves, or of the tray with the puzzle in it
 * @param stiffest sides of what cannot be bent, longest first: the largest piece, or the tray
 * @param loose pieces that lie as they fall
 */
public record Contents(double solidMm3, double[] stiffest, boolean loose) {

    /** Print, adhesive and film on the wood, common practice. */
    private static final double FACING_MM = 0.2;

    public static Contents of(Puzzle puzzle, PieceSizes pieces, Length thickness) {
        return puzzle.tray() ? inTray(puzzle, thickness) : loose(pieces, thickness);
    }

    /** Frame on backing, the puzzle in the frame. */
    static Contents inTray(Puzzle puzzle, Length thickness) {
        Size outer = Tray.of(puzzle.pattern()).outerSize();
        double high = 2 * thickness.mm() + FACING_MM;
        return new Contents(
                outer.area().mm2() * high,
                sorted(outer.width().mm(), outer.height().mm(), high),
                false);
    }

    static Contents loose(PieceSizes pieces, Length thickness) {
        double high = thickness.mm() + FACING_MM;
        return new Contents(pieces.areaMm2() * high, sorted(pieces.longestMm(), pieces.widestMm(), high), true);
    }

    private static double[] sorted(double... sides) {
        double[] up = sides.clone();
        Arrays.sort(up);
        return new double[] {up[2], up[1], up[0]};
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Contents that
                && solidMm3 == that.solidMm3
                && loose == that.loose
                && Arrays.equals(stiffest, that.stiffest);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(stiffest) * 31 + Double.hashCode(solidMm3);
    }

    @Override
    public String toString() {
        return solidMm3 + " mm3, " + Arrays.toString(stiffest) + (loose ? " loose" : " in its tray");
    }
}
