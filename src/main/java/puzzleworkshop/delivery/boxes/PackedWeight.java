package puzzleworkshop.delivery.boxes;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.Tray;

/**
 * What one packed puzzle should weigh: its pieces by their own areas ({@link puzzleworkshop.bench.CountByWeight}), its tray
 * and its box.
 *
 * @param scatterGrams by how much the pieces may differ, to either side
 */
public record PackedWeight(double piecesGrams, double scatterGrams, double trayGrams, double boxGrams) {

    public double grams() {
        return piecesGrams + trayGrams + boxGrams;
    }

    /** The wood of frame and backing; nothing where the puzzle has no tray. */
    static double tray(Puzzle puzzle, Length thickness, double densityKgM3) {
        if (!puzzle.tray()) {
            return 0;
        }
        Tray tray = Tray.of(puzzle.pattern());
        Size outer = tray.outerSize();
        double opening = tray.puzzle().grownBy(tray.play()).area().mm2();
        double mm3 = (2 * outer.area().mm2() - opening) * thickness.mm();
        return mm3 * densityKgM3 * 1e-6;
    }
}
