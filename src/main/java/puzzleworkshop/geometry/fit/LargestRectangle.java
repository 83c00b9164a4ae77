package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;
import puzzleworkshop.measure.Size;

/**
 * The largest rectangle, by area, in a free area, with sides along one of the given angles.
 *
 * <p>At one angle: a grid whose lines run through the corners of the border (and evenly between them) gives the
 * largest rectangles made of whole free cells (by the stack method for the largest rectangle under a histogram); the
 * best few are then grown by {@link RectangleGrowth} until nothing but the border stops them. The grid finds the right
 * neighbourhood, the growth makes it exact to about a millionth.
 *
 * @param placement where it lies
 * @param size with its width along the placement's angle
 */
public record LargestRectangle(Placement placement, Size size) {

    private static final int GRID = 40;
    private static final int SEEDS = 6;

    /** Empty when the shape is too thin for any. The outline's own main edge directions are tried. */
    public static Optional<LargestRectangle> in(Outline outline) {
        return in(outline.segments(), Directions.of(outline.segments(), 6));
    }

    /** At exactly these angles, in degrees. */
    public static Optional<LargestRectangle> in(Outline outline, double... degrees) {
        return in(outline.segments(), degrees);
    }

    static double area(Segments border, double[] angles) {
        return in(border, angles).map(found -> found.size.area().mm2()).orElse(0.0);
    }

    public static Optional<LargestRectangle> in(Segments border, double[] angles) {
        LargestRectangle best = null;
        double most = 0;
        for (double degrees : angles) {
            double[] box = upright(border.seenFrom(degrees));
            double area = box == null ? 0 : (box[2] - box[0]) * (box[3] - box[1]);
            if (area > most * (1 + 1e-9)) {
                most = area;
                best = placed(box, degrees);
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * A rectangle no smaller than the last of the given sizes that fits: that size where it fits at one of the angles, grown
     * until the border stops it. For shapes whose largest rectangle of all is too thin to be of use.
     */
    public static Optional<LargestRectangle> around(Segments border, double[] angles, List<Size> sizes) {
        PlaceSearch search = new PlaceSearch();
        for (Size size : sizes.reversed()) {
            LargestRectangle best = null;
            for (double degrees : angles) {
                Segments seen = border.seenFrom(degrees);
                for (Size way : List.of(size, new Size(size.height(), size.width()))) {
                    if (search.any(seen, way.width().mm(), way.height().mm())) {
                        LargestRectangle grown = grown(seen, search.x(0), search.y(0), way, sizes.getFirst(), degrees);
                        best = best == null || grown.size.area().compareTo(best.size.area()) > 0 ? grown : best;
                    }
                }
            }
            if (best != null) {
                return Optional.of(best);
            }
        }
        return Optional.empty();
    }

    /** A seed in a gap of no width grows without end; what reaches beyond the border is no rectangle inside it. */
    private static boolean isBeside(Segments border, double x0, double y0, double x1, double y1) {
        double tol = 2 * Outline.TOLERANCE;
        return x0 >= Arrays.stream(border.ax, 0, border.count).min().orElse(0) - tol
                && y0 >= Arrays.stream(border.ay, 0, border.count).min().orElse(0) - tol
                && x1 <= Arrays.stream(border.ax, 0, border.count).max().orElse(0) + tol
                && y1 <= Arrays.stream(border.ay, 0, border.count).max().orElse(0) + tol;
    }

    /** As large as it gets, unless that is thinner than the least. */
    private static LargestRectangle grown(Segments seen, double x, double y, Size size, Size least, double degrees) {
        double tol = Outline.TOLERANCE;
        double right = x + size.width().mm();
        double below = y + size.height().mm();
        double[] box = RectangleGrowth.grow(seen, new double[] {x + tol, y + tol, right - tol, below - tol});
        if (!least.fitsUpright(Size.mm(box[2] - box[0], box[3] - box[1]))) {
            box = new double[] {x, y, right, below};
        }
        return placed(box, degrees);
    }

    private static LargestRectangle placed(double[] box, double degrees) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        return new LargestRectangle(
                new Placement(box[0] * cos - box[1] * sin, box[0] * sin + box[1] * cos, degrees),
                Size.mm(box[2] - box[0], box[3] - box[1]));
    }

    /** What is left of a border when this is cut from it. */
    Segments out(Segments border) {
        return border.without(placement, size.width().mm(), size.height().mm());
    }

    /** As large as it gets inside a border within which it lies; empty when that is no larger. */
    Optional<LargestRectangle> grownIn(Segments border) {
        double degrees = placement.degrees();
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        double x = placement.x() * cos + placement.y() * sin;
        double y = placement.y() * cos - placement.x() * sin;
        double tol = Outline.TOLERANCE;
        double[] box = RectangleGrowth.grow(border.seenFrom(degrees), new double[] {
            x + tol, y + tol, x + size.width().mm() - tol, y + size.height().mm() - tol
        });
        LargestRectangle grown = placed(box, degrees);
        return grown.size.area().mm2() > size.area().mm2() + 1 ? Optional.of(grown) : Optional.empty();
    }

    private static double[] upright(Segments border) {
        double[] xs = lines(border.ax, border.count);
        double[] ys = lines(border.ay, border.count);
        boolean[][] free = freeCells(border, xs, ys);
        double[] best = null;
        double most = 0;
        for (double[] seed : seeds(free, xs, ys)) {
            double[] grown = RectangleGrowth.grow(border, seed);
            if (!isBeside(border, grown[0], grown[1], grown[2], grown[3])) {
                continue;
            }
            double area = (grown[2] - grown[0]) * (grown[3] - grown[1]);
            if (area > most) {
                most = area;
                best = grown;
            }
        }
        return best;
    }

    private static double[] lines(double[] corners, int count) {
        double[] sorted = Arrays.copyOf(corners, count);
        Arrays.sort(sorted);
        double low = sorted[0];
        double high = sorted[count - 1];
        List<Double> lines = new ArrayList<>();
        for (int i = 0; i <= GRID; i++) {
            lines.add(low + (high - low) * i / GRID);
        }
        if (count <= 2 * GRID) {
            for (double corner : sorted) {
                lines.add(corner);
            }
        }
        double[] all = lines.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double apart = (high - low) * 1e-7;
        int kept = 1;
        for (int i = 1; i < all.length; i++) {
            if (all[i] - all[kept - 1] > apart) {
                all[kept++] = all[i];
            }
        }
        return Arrays.copyOf(all, kept);
    }

    private static boolean[][] freeCells(Segments border, double[] xs, double[] ys) {
        boolean[][] free = new boolean[ys.length - 1][xs.length - 1];
        for (int r = 0; r < free.length; r++) {
            insideOfRow(border, (ys[r] + ys[r + 1]) / 2, xs, free[r]);
        }
        double slack = 1e-6;
        for (int i = 0; i < border.count; i++) {
            int c0 = Math.max(0, place(xs, Math.min(border.ax[i], border.bx[i])) - 1);
            int c1 = Math.min(xs.length - 2, place(xs, Math.max(border.ax[i], border.bx[i])));
            int r0 = Math.max(0, place(ys, Math.min(border.ay[i], border.by[i])) - 1);
            int r1 = Math.min(ys.length - 2, place(ys, Math.max(border.ay[i], border.by[i])));
            for (int r = r0; r <= r1; r++) {
                for (int c = c0; c <= c1; c++) {
                    if (free[r][c]
                            && border.meets(i, xs[c] + slack, ys[r] + slack, xs[c + 1] - slack, ys[r + 1] - slack)) {
                        free[r][c] = false;
                    }
                }
            }
        }
        return free;
    }

    private static void insideOfRow(Segments border, double y, double[] xs, boolean[] row) {
        double[] cuts = new double[border.count];
        int count = 0;
        for (int i = 0; i < border.count; i++) {
            if ((border.ay[i] > y) != (border.by[i] > y)) {
                cuts[count++] = border.ax[i]
                        + (y - border.ay[i]) / (border.by[i] - border.ay[i]) * (border.bx[i] - border.ax[i]);
            }
        }
        Arrays.sort(cuts, 0, count);
        int passed = 0;
        for (int c = 0; c < row.length; c++) {
            double x = (xs[c] + xs[c + 1]) / 2;
            while (passed < count && cuts[passed] <= x) {
                passed++;
            }
            row[c] = passed % 2 == 1;
        }
    }

    private static int place(double[] lines, double value) {
        int found = Arrays.binarySearch(lines, value);
        return found >= 0 ? found : -found - 2 < 0 ? 0 : -found - 2;
    }

    /** The largest rectangle that ends in each row of cells, the best few of them. */
    private static List<double[]> seeds(boolean[][] free, double[] xs, double[] ys) {
        int columns = xs.length - 1;
        double[] reach = new double[columns];
        Arrays.fill(reach, Double.NaN);
        List<double[]> all = new ArrayList<>();
        int[] stack = new int[columns + 1];
        for (int r = 0; r < free.length; r++) {
            double[] top = null;
            double most = 0;
            int depth = 0;
            double[] startAt = new double[columns + 1];
            for (int c = 0; c <= columns; c++) {
                if (c < columns) {
                    reach[c] = !free[r][c] ? Double.NaN : Double.isNaN(reach[c]) ? ys[r] : reach[c];
                }
                double height = c < columns && !Double.isNaN(reach[c]) ? ys[r + 1] - reach[c] : 0;
                double left = xs[Math.min(c, columns)];
                while (depth > 0 && ys[r + 1] - reach[stack[depth - 1]] >= height) {
                    int column = stack[--depth];
                    left = startAt[depth];
                    double area = (xs[c] - left) * (ys[r + 1] - reach[column]);
                    if (area > most) {
                        most = area;
                        top = new double[] {left, reach[column], xs[c], ys[r + 1]};
                    }
                }
                if (height > 0) {
                    startAt[depth] = left;
                    stack[depth++] = c;
                }
            }
            if (top != null) {
                all.add(top);
            }
        }
        all.sort(Comparator.comparingDouble((double[] b) -> (b[2] - b[0]) * (b[3] - b[1]))
                .reversed());
        return all.subList(0, Math.min(SEEDS, all.size()));
    }
}
