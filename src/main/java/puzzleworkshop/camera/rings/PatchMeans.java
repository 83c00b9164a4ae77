package puzzleworkshop.camera.rings;

/** Means of a raster over squares, of those of its cells that count: by sums from the corner on (Crow 1984). */
public final class PatchMeans {

    private final double[] sums;
    private final int[] counts;
    private final int columns;
    private final int rows;

    public PatchMeans(float[] values, boolean[] counted, int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        int wide = columns + 1;
        sums = new double[wide * (rows + 1)];
        counts = new int[sums.length];
        for (int r = 0; r < rows; r++) {
            double sum = 0;
            int count = 0;
            for (int c = 0; c < columns; c++) {
                int cell = r * columns + c;
                sum += counted[cell] ? values[cell] : 0;
                count += counted[cell] ? 1 : 0;
                sums[(r + 1) * wide + c + 1] = sums[r * wide + c + 1] + sum;
                counts[(r + 1) * wide + c + 1] = counts[r * wide + c + 1] + count;
            }
        }
    }

    /** Over so many cells to each side; 0 where none counts. */
    public double around(int cell, int reach) {
        int wide = columns + 1;
        int left = Math.max(0, cell % columns - reach);
        int right = Math.min(columns, cell % columns + reach + 1);
        int top = Math.max(0, cell / columns - reach) * wide;
        int bottom = Math.min(rows, cell / columns + reach + 1) * wide;
        int count = counts[bottom + right] - counts[bottom + left] - counts[top + right] + counts[top + left];
        double sum = sums[bottom + right] - sums[bottom + left] - sums[top + right] + sums[top + left];
        return count == 0 ? 0 : sum / count;
    }
}
