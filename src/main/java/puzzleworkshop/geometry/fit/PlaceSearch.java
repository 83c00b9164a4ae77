package puzzleworkshop.geometry.fit;

import java.util.Arrays;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Segments;

/**
 * Where may the lower corner of an upright w × h box lie so that the box stays inside a free area with holes?
 *
 * <p>The answer is the free area eroded by the box: the plane less, for every piece of the border, the open hexagon
 * swept by boxes that the piece cuts (the Minkowski sum of the piece and the mirrored box), as far as the box's middle
 * is inside. Nothing is sampled. Cells of positions are halved: a cell goes when the part common to all its boxes meets
 * the border, and once only a few border pieces are left undecided in a cell, the crossings of their hexagons, which
 * are the corners of the answer, are computed and each is proved against those pieces.
 *
 * <p>Closed-set cases (a box exactly as wide as its corridor) come out right because corners are computed for the exact
 * box while the proof uses a box smaller by {@link Outline#TOLERANCE} on each side.
 *
 * <p>Not thread-safe: keeps its buffers between searches.
 */
final class PlaceSearch {

    private static final double TOL = Outline.TOLERANCE;
    private static final int FEW_PIECES = 5;
    private static final double SMALL_CELL = 0.02;

    private Segments border;
    private Segments.Blocks blocks;
    private double w;
    private double h;
    private boolean first;
    private boolean found;
    private int[] undecided = new int[256];
    private final double[] sideX1 = new double[6 * 64];
    private final double[] sideY1 = new double[6 * 64];
    private final double[] sideX2 = new double[6 * 64];
    private final double[] sideY2 = new double[6 * 64];
    private final int[] sideOf = new int[6 * 64];
    private int sides;
    private double[] xs = new double[64];
    private double[] ys = new double[64];
    private int corners;
    private long work;

    /** Whether there is a place at all; then {@link #x(int)} and {@link #y(int)} of 0 are one. */
    boolean any(Segments upright, double width, double height) {
        search(upright, width, height, true);
        return found;
    }

    /** All corners of the set of places (more than its convex hull needs, some reflex ones left out). */
    int corners(Segments upright, double width, double height) {
        search(upright, width, height, false);
        return corners;
    }

    double x(int i) {
        return xs[i];
    }

    double y(int i) {
        return ys[i];
    }

    /** Border pieces looked at in all searches so far: what a search costs, on any machine. */
    long work() {
        return work;
    }

    private void search(Segments upright, double width, double height, boolean firstOnly) {
        border = upright;
        w = width;
        h = height;
        first = firstOnly;
        found = false;
        corners = 0;
        blocks = upright.blocks();
        double minX = least(blocks.x0);
        double minY = least(blocks.y0);
        double maxX = most(blocks.x1);
        double maxY = most(blocks.y1);
        double right = maxX - w;
        double top = maxY - h;
        if (right < minX - 2 * TOL || top < minY - 2 * TOL) {
            return;
        }
        if (undecided.length < blocks.count) {
            undecided = new int[blocks.count * 4];
        }
        for (int b = 0; b < blocks.count; b++) {
            undecided[b] = ~b;
        }
        cell(Math.min(minX, right), Math.min(minY, top), Math.max(minX, right), Math.max(minY, top), 0, blocks.count);
    }

    private static double least(double[] values) {
        return Arrays.stream(values).min().orElse(0);
    }

    private static double most(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    /**
     * Positions x0…x1, y0…y1 with what may matter of the border at undecided[from…to): pieces by their number, whole blocks of
     * them by the complement of theirs as long as the cell is larger than the block.
     */
    private void cell(double x0, double y0, double x1, double y1, int from, int to) {
        work += to - from;
        boolean hasCore = x1 + TOL < x0 + w - TOL && y1 + TOL < y0 + h - TOL;
        double extent = Math.max(x1 - x0, y1 - y0);
        double middleX = (x0 + x1) / 2;
        double middleY = (y0 + y1) / 2;
        boolean middleFree = first;
        int end = to;
        boolean whole = false;
        for (int k = from; k < to; k++) {
            int b = ~undecided[k];
            room(end + Segments.BLOCK);
            if (b < 0) {
                if (hasCore && border.meets(~b, x1 + TOL, y1 + TOL, x0 + w - TOL, y0 + h - TOL)) {
                    return;
                }
                if (border.meets(~b, x0 - TOL, y0 - TOL, x1 + w + TOL, y1 + h + TOL)) {
                    undecided[end++] = ~b;
                    middleFree = middleFree && !meetsAt(~b, middleX, middleY);
                }
            } else if (blocks.mayMeet(b, x0 - TOL, y0 - TOL, x1 + w + TOL, y1 + h + TOL)) {
                if (hasCore && blocks.isInside(b, x1 + TOL, y1 + TOL, x0 + w - TOL, y0 + h - TOL)) {
                    return;
                }
                if (blocks.extent(b) < extent
                        && extent > SMALL_CELL
                        && !(hasCore && blocks.mayMeet(b, x1 + TOL, y1 + TOL, x0 + w - TOL, y0 + h - TOL))) {
                    undecided[end++] = ~b;
                    whole = true;
                    middleFree = middleFree
                            && !blocks.mayMeet(b, middleX + TOL, middleY + TOL, middleX + w - TOL, middleY + h - TOL);
                } else {
                    work += Segments.BLOCK;
                    for (int i = blocks.from(b); i < blocks.to(b); i++) {
                        if (hasCore && border.meets(i, x1 + TOL, y1 + TOL, x0 + w - TOL, y0 + h - TOL)) {
                            return;
                        }
                        if (border.meets(i, x0 - TOL, y0 - TOL, x1 + w + TOL, y1 + h + TOL)) {
                            undecided[end++] = i;
                            middleFree = middleFree && !meetsAt(i, middleX, middleY);
                        }
                    }
                }
            }
        }
        work += middleFree ? blocks.count : 0;
        if (middleFree && border.contains(middleX + w / 2, middleY + h / 2)) {
            foundFirst(middleX, middleY);
            return;
        }
        int left = end - to;
        if (left == 0) {
            return;
        }
        boolean few = left <= FEW_PIECES || (left <= 64 && extent < SMALL_CELL);
        if (few && !whole) {
            crossings(x0, y0, x1, y1, to, end);
        } else if (extent >= TOL / 4) {
            halves(x0, y0, x1, y1, to, end);
        }
    }

    private boolean meetsAt(int i, double x, double y) {
        return border.meets(i, x + TOL, y + TOL, x + w - TOL, y + h - TOL);
    }

    private void room(int wanted) {
        if (undecided.length < wanted) {
            undecided = Arrays.copyOf(undecided, 2 * wanted);
        }
    }

    private void halves(double x0, double y0, double x1, double y1, int from, int to) {
        if (x1 - x0 >= y1 - y0) {
            double middle = (x0 + x1) / 2;
            cell(x0, y0, middle, y1, from, to);
            if (!found || !first) {
                cell(middle, y0, x1, y1, from, to);
            }
        } else {
            double middle = (y0 + y1) / 2;
            cell(x0, y0, x1, middle, from, to);
            if (!found || !first) {
                cell(x0, middle, x1, y1, from, to);
            }
        }
    }

    private void crossings(double x0, double y0, double x1, double y1, int from, int to) {
        sides = 0;
        for (int k = from; k < to; k++) {
            sidesOf(undecided[k], x0 - TOL, y0 - TOL, x1 + TOL, y1 + TOL);
        }
        for (int s = 0; s < sides; s++) {
            for (int t = s + 1; t < sides; t++) {
                if (sideOf[s] != sideOf[t]) {
                    cross(s, t, x0 - TOL, y0 - TOL, x1 + TOL, y1 + TOL, from, to);
                    if (first && found) {
                        return;
                    }
                }
            }
        }
    }

    private void cross(int s, int t, double x0, double y0, double x1, double y1, int from, int to) {
        double dx = sideX2[s] - sideX1[s];
        double dy = sideY2[s] - sideY1[s];
        double ex = sideX2[t] - sideX1[t];
        double ey = sideY2[t] - sideY1[t];
        double turn = dx * ey - dy * ex;
        double d = Math.sqrt(dx * dx + dy * dy);
        double e = Math.sqrt(ex * ex + ey * ey);
        if (Math.abs(turn) <= 1e-10 * d * e) {
            return;
        }
        double fx = sideX1[t] - sideX1[s];
        double fy = sideY1[t] - sideY1[s];
        double along = (fx * ey - fy * ex) / turn;
        double alongOther = (fx * dy - fy * dx) / turn;
        if (along * d < -TOL || (along - 1) * d > TOL || alongOther * e < -TOL || (alongOther - 1) * e > TOL) {
            return;
        }
        double x = sideX1[s] + along * dx;
        double y = sideY1[s] + along * dy;
        if (x < x0 || x > x1 || y < y0 || y > y1) {
            return;
        }
        work += to - from;
        for (int k = from; k < to; k++) {
            if (border.meets(undecided[k], x + TOL, y + TOL, x + w - TOL, y + h - TOL)) {
                return;
            }
        }
        work += blocks.count;
        if (known(x, y) || !border.contains(x + w / 2, y + h / 2)) {
            return;
        }
        if (first) {
            foundFirst(x, y);
            return;
        }
        found = true;
        if (corners == xs.length) {
            xs = Arrays.copyOf(xs, 2 * corners);
            ys = Arrays.copyOf(ys, 2 * corners);
        }
        xs[corners] = x;
        ys[corners++] = y;
    }

    private void foundFirst(double x, double y) {
        found = true;
        xs[0] = x;
        ys[0] = y;
        corners = 1;
    }

    private boolean known(double x, double y) {
        for (int i = Math.max(0, corners - 40); i < corners; i++) {
            if (Math.abs(xs[i] - x) < 1e-7 && Math.abs(ys[i] - y) < 1e-7) {
                return true;
            }
        }
        return false;
    }

    /** The sides of the forbidden hexagon of border piece i that reach into the cell. */
    private void sidesOf(int i, double x0, double y0, double x1, double y1) {
        boolean forward = border.ax[i] <= border.bx[i];
        double ax = forward ? border.ax[i] : border.bx[i];
        double ay = forward ? border.ay[i] : border.by[i];
        double bx = forward ? border.bx[i] : border.ax[i];
        double by = forward ? border.by[i] : border.ay[i];
        double low = Math.min(ay, by);
        double high = Math.max(ay, by);
        double atLow = ay <= by ? ax : bx;
        double atHigh = ay <= by ? bx : ax;
        boolean steep = ax == bx;
        boolean flat = ay == by;
        side(i, ax - w, (steep ? low : ay) - h, ax - w, steep ? high : ay, x0, y0, x1, y1);
        side(i, bx, (steep ? low : by) - h, bx, steep ? high : by, x0, y0, x1, y1);
        side(i, (flat ? ax : atLow) - w, low - h, flat ? bx : atLow, low - h, x0, y0, x1, y1);
        side(i, (flat ? ax : atHigh) - w, high, flat ? bx : atHigh, high, x0, y0, x1, y1);
        if (!steep && !flat) {
            if (ay < by) {
                side(i, ax, ay - h, bx, by - h, x0, y0, x1, y1);
                side(i, ax - w, ay, bx - w, by, x0, y0, x1, y1);
            } else {
                side(i, ax, ay, bx, by, x0, y0, x1, y1);
                side(i, ax - w, ay - h, bx - w, by - h, x0, y0, x1, y1);
            }
        }
    }

    private void side(int i, double px, double py, double qx, double qy, double x0, double y0, double x1, double y1) {
        if (px < x0 && qx < x0 || px > x1 && qx > x1 || py < y0 && qy < y0 || py > y1 && qy > y1) {
            return;
        }
        sideX1[sides] = px;
        sideY1[sides] = py;
        sideX2[sides] = qx;
        sideY2[sides] = qy;
        sideOf[sides++] = i;
    }
}
