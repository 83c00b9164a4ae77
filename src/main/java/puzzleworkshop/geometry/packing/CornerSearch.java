package puzzleworkshop.geometry.packing;

/**
 * Whether a few pieces fit on one sheet: the complete answer. Every layout can be built so that each piece stands in a
 * corner of the staircase around the earlier ones, no earlier piece reaching past its lower left corner to the right and
 * above; so trying every piece, both ways up, in every corner misses nothing. A branch ends when the area outside the
 * staircase is too small for what is left.
 *
 * <p>Method: Martello, Pisinger and Vigo, The three-dimensional bin packing problem, Operations Research 48 (2000),
 * corner points, in two dimensions and with 90° turns.
 */
final class CornerSearch {

    /** What the search can say. */
    enum Answer {
        YES,
        NO,
        GAVE_UP
    }

    private final ItemShapes shapes;
    private final int width;
    private final int height;
    private final WorkBudget effort;
    private final int[] placed;
    private final int[] right;
    private final int[] top;
    private int count;
    private long waitingArea;
    final Layout layout;

    CornerSearch(ItemShapes shapes, int width, int height, WorkBudget effort) {
        this.shapes = shapes;
        this.width = width;
        this.height = height;
        this.effort = effort;
        placed = new int[shapes.count];
        right = new int[shapes.count];
        top = new int[shapes.count];
        layout = new Layout(shapes.count);
        waitingArea = shapes.totalArea();
    }

    Answer search() {
        if (waitingArea > (long) width * height) {
            return Answer.NO;
        }
        return step() ? Answer.YES : effort.spent() ? Answer.GAVE_UP : Answer.NO;
    }

    private boolean step() {
        if (count == shapes.count) {
            return true;
        }
        effort.spend((long) shapes.count * (count + 1));
        if (effort.spent()) {
            return false;
        }
        int[] cornerX = new int[count + 1];
        int[] cornerY = new int[count + 1];
        int corners = corners(cornerX, cornerY);
        if (roomOutside(cornerX, cornerY, corners) < waitingArea) {
            return false;
        }
        for (int piece = 0; piece < shapes.count; piece++) {
            if (layout.sheet[piece] >= 0 || alikeWaitsBefore(piece)) {
                continue;
            }
            for (int turn = 0; turn <= (shapes.turns(piece) ? 1 : 0); turn++) {
                int w = turn == 0 ? shapes.width[piece] : shapes.height[piece];
                int h = turn == 0 ? shapes.height[piece] : shapes.width[piece];
                for (int c = 0; c < corners; c++) {
                    if (w <= width - cornerX[c]
                            && h <= height - cornerY[c]
                            && put(piece, cornerX[c], cornerY[c], w, h, turn == 1)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private boolean put(int piece, int x, int y, int w, int h, boolean turned) {
        layout.put(piece, 0, x, y, turned);
        placed[count] = piece;
        right[count] = x + w;
        top[count] = y + h;
        count++;
        waitingArea -= shapes.area[piece];
        if (step()) {
            return true;
        }
        waitingArea += shapes.area[piece];
        count--;
        layout.sheet[piece] = -1;
        return false;
    }

    private boolean alikeWaitsBefore(int piece) {
        for (int i = 0; i < piece; i++) {
            if (layout.sheet[i] < 0 && shapes.alike(i, piece)) {
                return true;
            }
        }
        return false;
    }

    /** Corners of the staircase from the lowest up: x falls as y rises. */
    private int corners(int[] cornerX, int[] cornerY) {
        int corners = 0;
        int y = 0;
        while (true) {
            int x = 0;
            int next = Integer.MAX_VALUE;
            for (int k = 0; k < count; k++) {
                if (top[k] > y) {
                    x = Math.max(x, right[k]);
                    next = Math.min(next, top[k]);
                }
            }
            if (corners == 0 || x < cornerX[corners - 1]) {
                cornerX[corners] = x;
                cornerY[corners] = y;
                corners++;
            }
            if (next == Integer.MAX_VALUE) {
                return corners;
            }
            y = next;
        }
    }

    private long roomOutside(int[] cornerX, int[] cornerY, int corners) {
        long room = 0;
        for (int c = 0; c < corners; c++) {
            int across = width - cornerX[c];
            int up = (c + 1 < corners ? cornerY[c + 1] : height) - cornerY[c];
            if (across >= shapes.smallestSide) {
                room += (long) across * up;
            }
        }
        return room;
    }
}
