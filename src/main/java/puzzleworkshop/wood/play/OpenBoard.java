package puzzleworkshop.wood.play;

import java.util.Arrays;

/**
 * A board and what is left of it: all rectangles that lie in what is left and cannot grow (maximal rectangles: Jylänki,
 * A thousand ways to pack the bin, 2010). Nothing that is left is given up: whatever rectangle fits in it lies in one of
 * these.
 */
public final class OpenBoard {

    private static final int SIDES = 4;

    private final int number;
    private final int width;
    private final int height;
    private int[] rooms;
    private int count;
    private long freeArea;

    /** A whole board. */
    public OpenBoard(int number, int width, int height) {
        this.number = number;
        this.width = width;
        this.height = height;
        this.rooms = new int[] {0, 0, width, height};
        this.count = 1;
        this.freeArea = (long) width * height;
    }

    private OpenBoard(OpenBoard other) {
        number = other.number;
        width = other.width;
        height = other.height;
        rooms = Arrays.copyOf(other.rooms, other.count * SIDES);
        count = other.count;
        freeArea = other.freeArea;
    }

    public OpenBoard copy() {
        return new OpenBoard(this);
    }

    /** Takes over what is left of another state of this board. */
    public void become(OpenBoard other) {
        if (other.number != number || other.width != width || other.height != height) {
            throw new IllegalArgumentException("Another board: " + other.number);
        }
        rooms = Arrays.copyOf(other.rooms, other.count * SIDES);
        count = other.count;
        freeArea = other.freeArea;
    }

    /** Whether the same is left of a board of the same size; rooms in the same order. */
    public boolean hasSameLeft(OpenBoard other) {
        return width == other.width
                && height == other.height
                && Arrays.equals(rooms, 0, count * SIDES, other.rooms, 0, other.count * SIDES);
    }

    public int number() {
        return number;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public long freeArea() {
        return freeArea;
    }

    /** How many maximal rectangles there are. */
    public int rooms() {
        return count;
    }

    public int x(int room) {
        return rooms[room * SIDES];
    }

    public int y(int room) {
        return rooms[room * SIDES + 1];
    }

    public int roomWidth(int room) {
        return rooms[room * SIDES + 2];
    }

    public int roomHeight(int room) {
        return rooms[room * SIDES + 3];
    }

    public long roomArea(int room) {
        return (long) roomWidth(room) * roomHeight(room);
    }

    public boolean holds(int w, int h) {
        for (int room = 0; room < count; room++) {
            if (w <= roomWidth(room) && h <= roomHeight(room)) {
                return true;
            }
        }
        return false;
    }

    /** Takes a rectangle out; it must lie in one of the rooms. */
    public void cut(int x, int y, int w, int h) {
        int touched = 0;
        for (int room = 0; room < count; room++) {
            touched += isBeside(room, x, y, w, h) ? 0 : 1;
        }
        int kept = 0;
        int[] fresh = new int[touched * SIDES * SIDES];
        int made = 0;
        for (int room = 0; room < count; room++) {
            if (isBeside(room, x, y, w, h)) {
                if (kept < room) {
                    System.arraycopy(rooms, room * SIDES, rooms, kept * SIDES, SIDES);
                }
                kept++;
                continue;
            }
            int rx = x(room);
            int ry = y(room);
            int rw = roomWidth(room);
            int rh = roomHeight(room);
            made = add(fresh, made, rx, ry, x - rx, rh);
            made = add(fresh, made, x + w, ry, rx + rw - x - w, rh);
            made = add(fresh, made, rx, ry, rw, y - ry);
            made = add(fresh, made, rx, y + h, rw, ry + rh - y - h);
        }
        if (made == 0 && kept == count) {
            throw new IllegalArgumentException("Nothing is left there to cut from");
        }
        merge(kept, fresh, made);
        freeArea -= (long) w * h;
    }

    private boolean isBeside(int room, int x, int y, int w, int h) {
        int at = room * SIDES;
        return x >= rooms[at] + rooms[at + 2]
                || x + w <= rooms[at]
                || y >= rooms[at + 1] + rooms[at + 3]
                || y + h <= rooms[at + 1];
    }

    private static int add(int[] to, int made, int x, int y, int w, int h) {
        if (w <= 0 || h <= 0) {
            return made;
        }
        to[made * SIDES] = x;
        to[made * SIDES + 1] = y;
        to[made * SIDES + 2] = w;
        to[made * SIDES + 3] = h;
        return made + 1;
    }

    /** Rooms that were not touched stay maximal; of the fresh ones those that lie in another are dropped. */
    private void merge(int kept, int[] fresh, int made) {
        int[] all = Arrays.copyOf(rooms, (kept + made) * SIDES);
        int n = kept;
        for (int i = 0; i < made; i++) {
            boolean inside = false;
            for (int j = 0; j < kept && !inside; j++) {
                inside = lies(fresh, i, all, j);
            }
            for (int j = 0; j < made && !inside; j++) {
                inside = j != i && lies(fresh, i, fresh, j) && (j < i || !lies(fresh, j, fresh, i));
            }
            if (!inside) {
                System.arraycopy(fresh, i * SIDES, all, n++ * SIDES, SIDES);
            }
        }
        rooms = all;
        count = n;
    }

    private static boolean lies(int[] a, int i, int[] b, int j) {
        int p = i * SIDES;
        int q = j * SIDES;
        return a[p] >= b[q]
                && a[p + 1] >= b[q + 1]
                && a[p] + a[p + 2] <= b[q] + b[q + 2]
                && a[p + 1] + a[p + 3] <= b[q + 1] + b[q + 3];
    }
}
