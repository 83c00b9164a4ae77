package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.edges.SplitMix;
import puzzleworkshop.pattern.judged.LostPiece;

/**
 * Where the rows and columns of a grid run, and which of its cells are one piece. Uneven rows and columns differ by up to
 * {@value #UNEVEN} of their width. Where a place is kept whole, rows and columns that would run through it move to its
 * border as far as their neighbours allow; cells that it still reaches into grow together, always to a whole block, so that
 * no line ends in the open.
 */
public final class GridPlaces {

    private static final int STREAM = 3;
    private static final double UNEVEN = 0.36;
    /** A row or column moves by no more than this part of its width, and leaves its neighbours this much of theirs. */
    private static final double MOVES = 0.34;

    private static final double LEFT = 0.62;
    /** Room beside a place kept whole for points that lie off their rows, as a part of a piece. */
    private static final double BESIDE = 0.12;

    private static final double LARGEST_BLOCK = 0.5;

    /** Cells from (top, left) to (bottom, right), all included. */
    private record Block(int top, int left, int bottom, int right) {

        boolean touches(Block other) {
            return top <= other.bottom && other.top <= bottom && left <= other.right && other.left <= right;
        }

        Block and(Block other) {
            return new Block(
                    Math.min(top, other.top),
                    Math.min(left, other.left),
                    Math.max(bottom, other.bottom),
                    Math.max(right, other.right));
        }

        int cells() {
            return (bottom - top + 1) * (right - left + 1);
        }
    }

    private final PatternSpec spec;
    private final double[] x;
    private final double[] y;
    private final List<Block> blocks = new ArrayList<>();

    /** @throws Refused when a place to be kept whole lies outside, or leaves next to nothing to be cut */
    GridPlaces(PatternSpec spec) {
        this.spec = spec;
        double width = spec.size().width().mm() / spec.grid().columns();
        double height = spec.size().height().mm() / spec.grid().rows();
        x = even(width, spec.grid().columns());
        y = even(height, spec.grid().rows());
        if (spec.layout().uneven()) {
            makeUneven(x, width, 0);
            makeUneven(y, height, 1);
        }
        if (!spec.layout().keptWhole().isEmpty()) {
            List<Bounds> kept = kept();
            for (Bounds place : kept) {
                moveAside(x, width, place.minX(), place.maxX());
                moveAside(y, height, place.minY(), place.maxY());
            }
            kept.forEach(this::join);
        }
    }

    /** Where rows and columns run in a pattern that was made. */
    public static GridPlaces of(CutPattern pattern) {
        return new GridPlaces(pattern.spec());
    }

    /** The row in which the middle of a piece lies, from 1. */
    public int row(Piece piece) {
        return place(y, piece.centre().yMm());
    }

    /** The column in which the middle of a piece lies, from 1. */
    public int column(Piece piece) {
        return place(x, piece.centre().xMm());
    }

    /** The piece in a row and column, both from 1; empty outside the puzzle's outer edge. */
    public static Optional<Piece> piece(CutPattern pattern, int row, int column) {
        GridPlaces places = of(pattern);
        return LostPiece.at(
                pattern,
                Point.of((places.x[column - 1] + places.x[column]) / 2, (places.y[row - 1] + places.y[row]) / 2));
    }

    private static int place(double[] lines, double at) {
        int place = 1;
        while (place < lines.length - 1 && at >= lines[place]) {
            place++;
        }
        return place;
    }

    double x(int column) {
        return x[column];
    }

    double y(int row) {
        return y[row];
    }

    /** The narrowest row or column. */
    double leastSideMm() {
        double least = Double.POSITIVE_INFINITY;
        for (double[] lines : new double[][] {x, y}) {
            for (int i = 1; i < lines.length; i++) {
                least = Math.min(least, lines[i] - lines[i - 1]);
            }
        }
        return least;
    }

    /** Whether the edge from this point on, across (0) or down (1), lies inside a block and is not cut. */
    boolean isJoined(int kind, int row, int column) {
        return blocks.stream()
                .anyMatch(block -> kind == 0
                        ? row > block.top && row <= block.bottom && column >= block.left && column <= block.right
                        : column > block.left && column <= block.right && row >= block.top && row <= block.bottom);
    }

    private static double[] even(double side, int count) {
        double[] lines = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            lines[i] = i * side;
        }
        return lines;
    }

    private double smallest() {
        return Math.max(
                PieceGrid.SMALLEST_SIDE.mm(),
                spec.limits().smallestKnobbedSide().mm());
    }

    private void makeUneven(double[] lines, double side, int kind) {
        double most = Math.min(UNEVEN, 1 - smallest() / side);
        int count = lines.length - 1;
        if (most <= 0 || count < 2) {
            return;
        }
        double[] widths = new double[count];
        for (int i = 0; i < count; i++) {
            widths[i] = 1 + SplitMix.of(spec.seed(), STREAM, kind, i).between(-1, 1);
        }
        // the mean stays; the narrowest and the widest lie as far from it as they may
        double mean = Arrays.stream(widths).sum() / count;
        double farthest = 0;
        for (int i = 0; i < count; i++) {
            widths[i] -= mean;
            farthest = Math.max(farthest, Math.abs(widths[i]));
        }
        double end = lines[count];
        for (int i = 1; i < count; i++) {
            lines[i] = lines[i - 1] + side * (1 + (farthest == 0 ? 0 : most * widths[i - 1] / farthest));
        }
        lines[count] = end;
    }

    private List<Bounds> kept() {
        double unit = spec.grid().pieceSize(spec.size()).shorterSide().mm();
        double room = spec.limits().closestLinesMm() + BESIDE * unit;
        Bounds all =
                new Bounds(0, 0, spec.size().width().mm(), spec.size().height().mm());
        List<Bounds> kept = new ArrayList<>();
        for (KeptWhole place : spec.layout().keptWhole()) {
            Bounds bounds = place.outline().bounds();
            if (!all.holds(bounds)) {
                throw new Refused(
                        "pattern.kept.outside",
                        Length.mm(place.middle().xMm()),
                        Length.mm(place.middle().yMm()));
            }
            kept.add(bounds.grownBy(room));
        }
        return kept;
    }

    /** Lines that run through the place go to its nearer border where that is not far and their neighbours keep room. */
    private void moveAside(double[] lines, double side, double from, double to) {
        for (int i = 1; i < lines.length - 1; i++) {
            if (lines[i] <= from || lines[i] >= to) {
                continue;
            }
            double wanted = lines[i] - from < to - lines[i] ? from : to;
            boolean near = Math.abs(wanted - lines[i]) <= MOVES * side;
            double least = Math.max(LEFT * side, smallest());
            if (near && wanted - lines[i - 1] >= least && lines[i + 1] - wanted >= least) {
                lines[i] = wanted;
            }
        }
    }

    private void join(Bounds place) {
        Block block = new Block(
                cell(y, place.minY()), cell(x, place.minX()), lastCell(y, place.maxY()), lastCell(x, place.maxX()));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Block other : List.copyOf(blocks)) {
                if (block.touches(other)) {
                    block = block.and(other);
                    blocks.remove(other);
                    grown = true;
                }
            }
        }
        if (block.cells() > LARGEST_BLOCK * spec.grid().pieces()) {
            throw new Refused("pattern.kept.too_large", spec.grid().pieces());
        }
        blocks.add(block);
    }

    /** The cell that holds a place; one that lies on a line belongs to the cell behind it. */
    private static int cell(double[] lines, double at) {
        int i = 0;
        while (i < lines.length - 2 && lines[i + 1] <= at + 1e-9) {
            i++;
        }
        return i;
    }

    /** The same for the far end: one that lies on a line belongs to the cell before it. */
    private static int lastCell(double[] lines, double at) {
        int i = 0;
        while (i < lines.length - 2 && lines[i + 1] < at - 1e-9) {
            i++;
        }
        return i;
    }
}
