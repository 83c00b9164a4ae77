package puzzleworkshop.geometry.packing;

/**
 * Fills a sheet from the bottom up. The upper edge of what lies already is a skyline; the lowest niche in it (leftmost
 * first) takes the piece that suits it best, pieces earlier in the given order before later ones; a niche that takes no
 * piece is levelled with its lower neighbour. Fast, never exact; a search over orders makes it good.
 *
 * <p>Method: lowest-niche best fit after Burke, Kendall and Whitwell, Operations Research 52 (2004), with the scores of
 * Leung, Zhang and Sim, European Journal of Operational Research 215 (2011).
 */
final class SkylineBestFit {

    /** How a niche chooses among the pieces that fit. */
    enum Taste {
        /** The better it closes the niche (width, then height of the walls) the better. */
        CLOSES,
        /** The first in order. */
        FIRST,
        /** The widest. */
        WIDEST
    }

    private static final int BEST_CLOSING = 5;

    private final ItemShapes shapes;
    private final WorkBudget effort;
    private final int[] waiting;
    private int[] left;
    private int[] level;
    private int edges;

    /** Pieces not placed by the last fill, in order; the first {@link #restSize} of them count. */
    final int[] rest;

    int restSize;
    /** How far the last fill reached. */
    int reach;

    SkylineBestFit(ItemShapes shapes, WorkBudget effort) {
        this.shapes = shapes;
        this.effort = effort;
        waiting = new int[shapes.count];
        rest = new int[shapes.count];
        left = new int[2 * shapes.count + 4];
        level = new int[2 * shapes.count + 4];
    }

    /**
     * Fills one sheet with as many of the pieces as it takes.
     *
     * @return the area placed
     */
    long fill(int width, int height, int[] order, int size, Taste taste, Layout out, int sheet) {
        System.arraycopy(order, 0, waiting, 0, size);
        int open = size;
        restSize = 0;
        reach = 0;
        edges = 1;
        left[0] = 0;
        left[1] = width;
        level[0] = 0;
        long placed = 0;
        while (open > 0) {
            int niche = lowest();
            int x = left[niche];
            int y = level[niche];
            if (height - y < shapes.smallestSide) {
                break;
            }
            int gap = left[niche + 1] - x;
            int wallLeft = niche == 0 ? height - y : level[niche - 1] - y;
            int wallRight = niche == edges - 1 ? height - y : level[niche + 1] - y;
            int chosen = choose(open, gap, height - y, wallLeft, wallRight, taste);
            if (chosen < 0) {
                if (edges == 1) {
                    break;
                }
                raise(niche);
                continue;
            }
            int at = chosen >> 1;
            boolean turned = (chosen & 1) == 1;
            int piece = waiting[at];
            int w = turned ? shapes.height[piece] : shapes.width[piece];
            int h = turned ? shapes.width[piece] : shapes.height[piece];
            boolean toRight = h == wallRight && h != wallLeft || h != wallLeft && wallRight > wallLeft;
            int px = toRight ? x + gap - w : x;
            out.put(piece, sheet, px, y, turned);
            placed += shapes.area[piece];
            reach = Math.max(reach, y + h);
            System.arraycopy(waiting, at + 1, waiting, at, open - at - 1);
            open--;
            lay(niche, px, w, y + h);
        }
        System.arraycopy(waiting, 0, rest, 0, open);
        restSize = open;
        return placed;
    }

    private int lowest() {
        int niche = 0;
        for (int k = 1; k < edges; k++) {
            if (level[k] < level[niche]) {
                niche = k;
            }
        }
        return niche;
    }

    /** Place in {@code waiting} times two, plus one when turned; -1 when nothing fits. */
    private int choose(int open, int gap, int room, int wallLeft, int wallRight, Taste taste) {
        int best = -1;
        long bestScore = Long.MIN_VALUE;
        long enough = switch (taste) {
            case CLOSES -> BEST_CLOSING;
            case FIRST -> 0;
            case WIDEST -> gap;
        };
        for (int k = 0; k < open; k++) {
            int piece = waiting[k];
            int w = shapes.width[piece];
            int h = shapes.height[piece];
            for (int turn = 0; turn < 2; turn++) {
                if (turn == 1) {
                    if (!shapes.turns(piece)) {
                        break;
                    }
                    int swap = w;
                    w = h;
                    h = swap;
                }
                if (w > gap || h > room) {
                    continue;
                }
                long score = switch (taste) {
                    case CLOSES -> closes(w, h, gap, wallLeft, wallRight);
                    case FIRST -> first(k, w, h, gap, wallLeft, wallRight);
                    case WIDEST -> w;
                };
                if (score > bestScore) {
                    bestScore = score;
                    best = 2 * k + turn;
                }
            }
            if (best >= 0 && bestScore >= enough) {
                effort.spend(k + 4);
                return best;
            }
        }
        effort.spend(open + 3);
        return best;
    }

    private int closes(int w, int h, int gap, int wallLeft, int wallRight) {
        boolean level = h == wallLeft || h == wallRight;
        if (w == gap) {
            return level ? BEST_CLOSING : h < Math.max(wallLeft, wallRight) ? 4 : 3;
        }
        if (level) {
            return 2;
        }
        return gap - w < shapes.smallestSide ? 0 : 1;
    }

    private int first(int k, int w, int h, int gap, int wallLeft, int wallRight) {
        return closes(w, h, gap, wallLeft, wallRight) * 2 + (w >= h == (k % 2 == 0) ? 1 : 0);
    }

    private void raise(int niche) {
        int up = Math.min(
                niche == 0 ? Integer.MAX_VALUE : level[niche - 1],
                niche == edges - 1 ? Integer.MAX_VALUE : level[niche + 1]);
        level[niche] = up;
        mergeAround(niche);
    }

    private void lay(int niche, int px, int w, int top) {
        int from = left[niche];
        int to = left[niche + 1];
        if (px == from && px + w == to) {
            level[niche] = top;
            mergeAround(niche);
        } else if (px == from) {
            open(niche);
            level[niche] = top;
            left[niche + 1] = px + w;
            mergeAround(niche);
        } else {
            open(niche);
            level[niche + 1] = top;
            left[niche + 1] = px;
            mergeAround(niche + 1);
        }
    }

    /** Doubles an edge of the skyline. */
    private void open(int niche) {
        System.arraycopy(left, niche, left, niche + 1, edges - niche + 1);
        System.arraycopy(level, niche, level, niche + 1, edges - niche);
        edges++;
    }

    private void mergeAround(int niche) {
        if (niche + 1 < edges && level[niche + 1] == level[niche]) {
            drop(niche + 1);
        }
        if (niche > 0 && level[niche - 1] == level[niche]) {
            drop(niche);
        }
    }

    private void drop(int edge) {
        System.arraycopy(left, edge + 1, left, edge, edges - edge);
        System.arraycopy(level, edge + 1, level, edge, edges - edge - 1);
        edges--;
    }
}
