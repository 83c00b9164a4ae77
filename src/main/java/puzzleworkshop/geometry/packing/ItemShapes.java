package puzzleworkshop.geometry.packing;

/**
 * The pieces as whole numbers. A length is a multiple of {@link #unit} thousandths of a millimetre (the greatest common
 * divisor of all that is given), so that sums and comparisons are exact and bounds can be rounded up.
 */
final class ItemShapes {

    final int count;
    final int[] width;
    final int[] height;
    final boolean[] turnable;
    final long[] area;
    final int smallestSide;
    final long unit;

    ItemShapes(int[] width, int[] height, boolean[] turnable, long unit) {
        this.count = width.length;
        this.width = width;
        this.height = height;
        this.turnable = turnable;
        this.unit = unit;
        this.area = new long[count];
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < count; i++) {
            area[i] = (long) width[i] * height[i];
            least = Math.min(least, Math.min(width[i], height[i]));
        }
        this.smallestSide = least;
    }

    /** The same pieces seen with the sheet's width and height exchanged. */
    ItemShapes transposed() {
        return new ItemShapes(height, width, turnable, unit);
    }

    /** Only the pieces named, in that order. */
    ItemShapes subset(int[] which, int size) {
        int[] w = new int[size];
        int[] h = new int[size];
        boolean[] t = new boolean[size];
        for (int k = 0; k < size; k++) {
            w[k] = width[which[k]];
            h[k] = height[which[k]];
            t[k] = turnable[which[k]];
        }
        return new ItemShapes(w, h, t, unit);
    }

    /** Whether turning the piece makes a difference and is allowed. */
    boolean turns(int i) {
        return turnable[i] && width[i] != height[i];
    }

    boolean alike(int i, int j) {
        return turnable[i] == turnable[j]
                && (width[i] == width[j] && height[i] == height[j]
                        || turnable[i] && width[i] == height[j] && height[i] == width[j]);
    }

    boolean fits(int i, int sheetWidth, int sheetHeight) {
        return width[i] <= sheetWidth && height[i] <= sheetHeight
                || turnable[i] && height[i] <= sheetWidth && width[i] <= sheetHeight;
    }

    long totalArea() {
        long sum = 0;
        for (long a : area) {
            sum += a;
        }
        return sum;
    }
}
