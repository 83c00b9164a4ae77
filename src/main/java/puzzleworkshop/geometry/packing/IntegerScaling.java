package puzzleworkshop.geometry.packing;

import java.util.ArrayList;
import java.util.List;

/**
 * Millimetres to whole units and back. The gap is added to every piece and once to the sheet, so that pieces that touch
 * in whole units lie a gap apart. Pieces are rounded up, the sheet down.
 */
final class IntegerScaling {

    private static final double PER_MM = 1000;
    private static final double DUST = 1e-6;
    private static final double LONGEST_MM = 1_000_000;

    final ItemShapes shapes;
    final int width;
    final int height;
    private final double gap;

    /** @param height of a sheet, or {@link Double#POSITIVE_INFINITY} for a roll */
    IntegerScaling(List<PackItem> pieces, double width, double height, double gap, boolean fine) {
        this.gap = gap;
        int n = pieces.size();
        int[] w = new int[n];
        int[] h = new int[n];
        boolean[] turnable = new boolean[n];
        long unit = 0;
        for (int i = 0; i < n; i++) {
            PackItem piece = pieces.get(i);
            w[i] = up(piece.width() + gap);
            h[i] = up(piece.height() + gap);
            turnable[i] = piece.turnable();
            unit = divisor(divisor(unit, w[i]), h[i]);
        }
        if (fine) {
            unit = 1;
        }
        for (int i = 0; i < n; i++) {
            w[i] = (int) (w[i] / unit);
            h[i] = (int) (h[i] / unit);
        }
        this.shapes = new ItemShapes(w, h, turnable, unit);
        this.width = (int) (down(width + gap) / unit);
        this.height = Double.isInfinite(height) ? Integer.MAX_VALUE / 2 : (int) (down(height + gap) / unit);
        for (int i = 0; i < n; i++) {
            if (!shapes.fits(i, this.width, this.height)) {
                throw new IllegalArgumentException("Piece " + i + ", "
                        + pieces.get(i).width() + " × " + pieces.get(i).height() + " mm, is larger than the sheet");
            }
        }
    }

    Packed packed(Layout layout, int sheets, int fewestSheets, long leastLength) {
        List<PackedAt> spots = new ArrayList<>();
        for (int i = 0; i < shapes.count; i++) {
            spots.add(new PackedAt(i, layout.sheet[i], mm(layout.x[i]), mm(layout.y[i]), layout.turned[i]));
        }
        double length = Math.max(0, mm(layout.length(shapes, sheets - 1)) - gap);
        return new Packed(spots, sheets, length, fewestSheets, leastLength == 0 ? 0 : mm(leastLength) - gap);
    }

    double mm(long units) {
        return units * shapes.unit / PER_MM;
    }

    /** A position, to the nearest thousandth; only with a fine unit. */
    static int at(double mm) {
        return Math.toIntExact(Math.round(mm * PER_MM));
    }

    private static int up(double mm) {
        return (int) Math.ceil(checked(mm) * PER_MM - DUST);
    }

    private static int down(double mm) {
        return (int) Math.floor(checked(mm) * PER_MM + DUST);
    }

    private static double checked(double mm) {
        if (!(mm > 0 && mm <= LONGEST_MM)) {
            throw new IllegalArgumentException("Lengths are above 0 and up to a kilometre, not " + mm + " mm");
        }
        return mm;
    }

    private static long divisor(long a, long b) {
        return b == 0 ? a : divisor(b, a % b);
    }
}
