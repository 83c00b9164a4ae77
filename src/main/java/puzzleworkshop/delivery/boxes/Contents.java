package puzzleworkshop.delivery.boxes;

import java.util.Arrays;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;
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

    public static Contents of(Puzzle puzzle, CutPattern pattern, Length thickness) {
        return puzzle.tray() ? inTray(puzzle, thickness) : loose(pattern, thickness);
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

    static Contents loose(CutPattern pattern, Length thickness) {
        double kerf = pattern.spec().kerf().mm();
        double high = thickness.mm() + FACING_MM;
        double area = 0;
        double[] largest = {0, 0, 0};
        for (Piece piece : pattern.pieces()) {
            area += Math.max(0, piece.areaMm2() - piece.outline().lengthMm() * kerf / 2);
            Bounds around = piece.outline().bounds();
            double[] sides = sorted(around.width(), around.height(), high);
            for (int i = 0; i < 3; i++) {
                largest[i] = Math.max(largest[i], sides[i]);
            }
        }
        return new Contents(area * high, largest, true);
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
