package puzzleworkshop.camera.rings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Connected parts of a raster, how deep cells lie in them, and the rings around them. */
public final class Regions {

    private Regions() {}

    /** Cells of state 2 (not known) take the state of the nearest cell that is known. */
    public static void settle(byte[] state, int columns, int rows) {
        int[] queue = new int[state.length];
        int head = 0;
        int tail = 0;
        for (int cell = 0; cell < state.length; cell++) {
            if (state[cell] != 2) {
                queue[tail++] = cell;
            }
        }
        if (tail == 0) {
            Arrays.fill(state, (byte) 0);
        }
        while (head < tail && tail < state.length) {
            int cell = queue[head++];
            int c = cell % columns;
            int[] beside = {c > 0 ? cell - 1 : -1, c < columns - 1 ? cell + 1 : -1, cell - columns, cell + columns};
            for (int other : beside) {
                if (other >= 0 && other < state.length && state[other] == 2) {
                    state[other] = state[cell];
                    queue[tail++] = other;
                }
            }
        }
    }

    /** Takes off what is thinner than about three cells: each cell goes by the majority around it, twice. */
    public static void open(byte[] state, int columns, int rows) {
        for (int round = 0; round < 2; round++) {
            byte[] before = state.clone();
            for (int r = 1; r < rows - 1; r++) {
                for (int c = 1; c < columns - 1; c++) {
                    int sum = 0;
                    for (int dr = -1; dr <= 1; dr++) {
                        int at = (r + dr) * columns + c;
                        sum += before[at - 1] + before[at] + before[at + 1];
                    }
                    state[r * columns + c] = (byte) (sum >= 5 ? 1 : 0);
                }
            }
        }
    }

    /** Parts of state 1, joined over edges, of at least so many cells. */
    public static List<int[]> parts(byte[] state, int columns, int rows, int smallest) {
        boolean[] done = new boolean[state.length];
        int[] stack = new int[state.length];
        List<int[]> parts = new ArrayList<>();
        for (int first = 0; first < state.length; first++) {
            if (state[first] != 1 || done[first]) {
                continue;
            }
            int head = 0;
            int tail = 0;
            stack[tail++] = first;
            done[first] = true;
            while (head < tail) {
                int cell = stack[head++];
                int c = cell % columns;
                for (int i = 0; i < 4; i++) {
                    int other = i == 0
                            ? (c > 0 ? cell - 1 : -1)
                            : i == 1 ? (c < columns - 1 ? cell + 1 : -1) : i == 2 ? cell - columns : cell + columns;
                    if (other >= 0 && other < state.length && state[other] == 1 && !done[other]) {
                        done[other] = true;
                        stack[tail++] = other;
                    }
                }
            }
            if (tail >= smallest) {
                parts.add(Arrays.copyOf(stack, tail));
            }
        }
        return parts;
    }

    /** Steps from each cell to the nearest one outside (0 outside), over edges and corners in turn. */
    public static int[] depth(boolean[] in, int columns, int rows) {
        int[] depth = new int[in.length];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                int cell = r * columns + c;
                if (in[cell]) {
                    depth[cell] = r == 0 || c == 0
                            ? 1
                            : 1 + Math.min(Math.min(depth[cell - 1], depth[cell - columns]), depth[cell - columns - 1]);
                }
            }
        }
        for (int r = rows - 1; r >= 0; r--) {
            for (int c = columns - 1; c >= 0; c--) {
                int cell = r * columns + c;
                if (in[cell]) {
                    int from = r == rows - 1 || c == columns - 1
                            ? 0
                            : Math.min(Math.min(depth[cell + 1], depth[cell + columns]), depth[cell + columns + 1]);
                    depth[cell] = Math.min(depth[cell], 1 + from);
                }
            }
        }
        return depth;
    }

    /**
     * The rings around one part, along the edges of its cells, with the part to the right of the way (the outer ring runs clockwise
     * as seen, holes the other way); corners in cell units, the longest ring (the outer one) first.
     */
    public static List<int[]> rings(int[] part, int columns, int rows) {
        boolean[] in = new boolean[columns * rows];
        for (int cell : part) {
            in[cell] = true;
        }
        // at each corner of cells the edge that begins there, by direction: right, down, left, up
        int wide = columns + 1;
        byte[] begins = new byte[wide * (rows + 1)];
        for (int cell : part) {
            int r = cell / columns;
            int c = cell % columns;
            if (r == 0 || !in[cell - columns]) {
                begins[r * wide + c] |= 1;
            }
            if (c == columns - 1 || !in[cell + 1]) {
                begins[r * wide + c + 1] |= 2;
            }
            if (r == rows - 1 || !in[cell + columns]) {
                begins[(r + 1) * wide + c + 1] |= 4;
            }
            if (c == 0 || !in[cell - 1]) {
                begins[(r + 1) * wide + c] |= 8;
            }
        }
        int[] step = {1, wide, -1, -wide};
        List<int[]> rings = new ArrayList<>();
        for (int start = 0; start < begins.length; start++) {
            while (begins[start] != 0) {
                int at = start;
                int direction = Integer.numberOfTrailingZeros(begins[start]);
                int[] ring = new int[256];
                int n = 0;
                do {
                    begins[at] &= (byte) ~(1 << direction);
                    if (2 * n + 2 > ring.length) {
                        ring = Arrays.copyOf(ring, 2 * ring.length);
                    }
                    ring[2 * n] = at % wide;
                    ring[2 * n + 1] = at / wide;
                    n++;
                    at += step[direction];
                    // where two edges leave, keep to the right: parts that touch at a corner stay apart
                    int next = -1;
                    for (int turn : new int[] {1, 0, 3}) {
                        int d = (direction + turn) % 4;
                        if ((begins[at] & 1 << d) != 0) {
                            next = d;
                            break;
                        }
                    }
                    direction = next;
                } while (at != start && direction >= 0);
                rings.add(Arrays.copyOf(ring, 2 * n));
            }
        }
        rings.sort((a, b) -> Integer.compare(b.length, a.length));
        return rings;
    }
}
