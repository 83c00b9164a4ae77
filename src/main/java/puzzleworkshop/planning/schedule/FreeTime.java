package puzzleworkshop.planning.schedule;

import java.util.Arrays;

/** The free spans of one person or machine, in minutes from the plan's origin, ascending and apart. */
public final class FreeTime {

    /** Later than any plan reaches, small enough to add to without overflow. */
    static final int NEVER = Integer.MAX_VALUE / 4;

    private int[] from;
    private int[] to;
    private int count;

    FreeTime(int[] from, int[] to, int count) {
        this.from = from;
        this.to = to;
        this.count = count;
    }

    /** Makes this a copy of the other, without new memory where it fits. */
    void become(FreeTime other) {
        if (from.length < other.count + 64) {
            from = new int[other.count + 256];
            to = new int[other.count + 256];
        }
        System.arraycopy(other.from, 0, from, 0, other.count);
        System.arraycopy(other.to, 0, to, 0, other.count);
        count = other.count;
    }

    FreeTime copy() {
        return new FreeTime(Arrays.copyOf(from, count + 256), Arrays.copyOf(to, count + 256), count);
    }

    int longestSpan() {
        int longest = 0;
        for (int i = 0; i < count; i++) {
            longest = Math.max(longest, to[i] - from[i]);
        }
        return longest;
    }

    /** The first moment from {@code ready} on at which {@code length} minutes are free in one piece, or NEVER. */
    int earliest(int ready, int length) {
        for (int i = firstEndingAfter(ready); i < count; i++) {
            int start = Math.max(from[i], ready);
            if (to[i] - start >= length) {
                return start;
            }
        }
        return NEVER;
    }

    /** The end of work that starts at {@code start} and goes on in the free spans that follow; NEVER when none are left. */
    int endOfSpread(int start, int length) {
        int left = length;
        for (int i = firstEndingAfter(start); i < count; i++) {
            int free = to[i] - Math.max(from[i], start);
            if (free >= left) {
                return Math.max(from[i], start) + left;
            }
            left -= free;
        }
        return NEVER;
    }

    boolean isFree(int start, int end) {
        int i = firstEndingAfter(start);
        return i < count && from[i] <= start && to[i] >= end;
    }

    /** Free minutes between two moments. */
    int between(int start, int end) {
        int sum = 0;
        for (int i = firstEndingAfter(start); i < count && from[i] < end; i++) {
            sum += Math.min(to[i], end) - Math.max(from[i], start);
        }
        return sum;
    }

    /** Takes all that is free between the two moments. */
    void take(int start, int end) {
        int i = firstEndingAfter(start);
        while (i < count && from[i] < end) {
            if (from[i] >= start && to[i] <= end) {
                remove(i);
            } else if (from[i] < start && to[i] > end) {
                insert(i + 1, end, to[i]);
                to[i] = start;
                return;
            } else if (from[i] < start) {
                to[i] = start;
                i++;
            } else {
                from[i] = end;
                return;
            }
        }
    }

    /** The first free moment not before {@code ready}, or NEVER. */
    int firstOpen(int ready) {
        int i = firstEndingAfter(ready);
        return i < count ? Math.max(from[i], ready) : NEVER;
    }

    private int firstEndingAfter(int moment) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (to[middle] > moment) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    private void remove(int i) {
        System.arraycopy(from, i + 1, from, i, count - i - 1);
        System.arraycopy(to, i + 1, to, i, count - i - 1);
        count--;
    }

    private void insert(int i, int newFrom, int newTo) {
        if (count == from.length) {
            from = Arrays.copyOf(from, count * 2);
            to = Arrays.copyOf(to, count * 2);
        }
        System.arraycopy(from, i, from, i + 1, count - i);
        System.arraycopy(to, i, to, i + 1, count - i);
        from[i] = newFrom;
        to[i] = newTo;
        count++;
    }
}
