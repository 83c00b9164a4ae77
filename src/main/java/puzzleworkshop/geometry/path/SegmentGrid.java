package puzzleworkshop.geometry.path;

import java.util.Arrays;
import java.util.function.IntConsumer;
import puzzleworkshop.measure.Refused;

/**
 * A square grid of buckets over many short straight stretches, to find what lies near one of them. Flat arrays, no
 * object for any stretch: built for hundreds of thousands.
 */
public final class SegmentGrid {

    private static final int MOST_BUCKETS = 2_000_000;
    private static final int ENTRIES_EACH = 12;
    private static final long LEAST_ENTRIES = 4_000_000;

    private final double[] ax;
    private final double[] ay;
    private final double[] bx;
    private final double[] by;
    private final double left;
    private final double top;
    private final double side;
    private final int across;
    private final int down;
    /** Where each bucket's entries begin in the one long list; one more than buckets. */
    private final int[] starts;

    private final int[] entries;
    private long mostVisits = Long.MAX_VALUE;
    private long visits;

    /**
     * @param count stretches in the arrays, whose ends are (ax, ay) and (bx, by); the arrays are kept, not copied
     * @param leastSideMm of a bucket; about as long as a stretch, or as far as is looked
     */
    public SegmentGrid(double[] ax, double[] ay, double[] bx, double[] by, int count, double leastSideMm) {
        this.ax = ax;
        this.ay = ay;
        this.bx = bx;
        this.by = by;
        double minX = Double.POSITIVE_INFINITY;
        double minY = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double maxY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            minX = Math.min(minX, Math.min(ax[i], bx[i]));
            maxX = Math.max(maxX, Math.max(ax[i], bx[i]));
            minY = Math.min(minY, Math.min(ay[i], by[i]));
            maxY = Math.max(maxY, Math.max(ay[i], by[i]));
        }
        left = minX;
        top = minY;
        double tried = Math.max(
                leastSideMm,
                Math.max(
                        Math.sqrt((maxX - minX) * (maxY - minY) / MOST_BUCKETS),
                        (maxX - minX + maxY - minY) / MOST_BUCKETS));
        // few long stretches among very many tiny ones would fill the memory with entries
        while (entriesAtSide(tried, count) > Math.max(LEAST_ENTRIES, (long) ENTRIES_EACH * count)) {
            tried *= 2;
        }
        side = tried;
        across = (int) ((maxX - minX) / side) + 1;
        down = (int) ((maxY - minY) / side) + 1;
        starts = new int[across * down + 1];
        for (int i = 0; i < count; i++) {
            eachBucket(i, 0, cell -> starts[cell + 1]++);
        }
        for (int cell = 0; cell < across * down; cell++) {
            starts[cell + 1] += starts[cell];
        }
        entries = new int[starts[across * down]];
        int[] filled = Arrays.copyOf(starts, starts.length);
        for (int i = 0; i < count; i++) {
            int stretch = i;
            eachBucket(i, 0, cell -> entries[filled[cell]++] = stretch);
        }
    }

    private long entriesAtSide(double tried, int count) {
        long all = 0;
        for (int i = 0; i < count; i++) {
            long wide = (long) (Math.abs(bx[i] - ax[i]) / tried) + 2;
            long high = (long) (Math.abs(by[i] - ay[i]) / tried) + 2;
            all += wide * high;
        }
        return all;
    }

    /** From now on no more than so many stretches are handed out; then {@link Refused} is thrown. */
    public void limitTo(long stretches) {
        mostVisits = stretches;
    }

    /** Calls with every stretch whose bucket lies within the border around stretch i; some more than once. */
    public void near(int i, double border, IntConsumer use) {
        eachBucket(i, border, cell -> {
            visits += starts[cell + 1] - starts[cell];
            if (visits > mostVisits) {
                throw new Refused("geometry.too_tangled");
            }
            for (int k = starts[cell]; k < starts[cell + 1]; k++) {
                use.accept(entries[k]);
            }
        });
    }

    private void eachBucket(int i, double border, IntConsumer use) {
        int toX = column(Math.max(ax[i], bx[i]) + border);
        int toY = row(Math.max(ay[i], by[i]) + border);
        for (int y = row(Math.min(ay[i], by[i]) - border); y <= toY; y++) {
            for (int x = column(Math.min(ax[i], bx[i]) - border); x <= toX; x++) {
                use.accept(y * across + x);
            }
        }
    }

    private int column(double x) {
        return Math.clamp((long) Math.floor((x - left) / side), 0, across - 1);
    }

    private int row(double y) {
        return Math.clamp((long) Math.floor((y - top) / side), 0, down - 1);
    }
}
