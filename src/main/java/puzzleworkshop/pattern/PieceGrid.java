package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * How many pieces lie across and down. From 2 to 2,000 pieces; one only where a single piece is made again.
 *
 * @param columns pieces across, at least 1
 * @param rows pieces down, at least 1
 */
public record PieceGrid(int columns, int rows) {

    public static final int FEWEST_PIECES = 2;
    public static final int MOST_PIECES = 2000;

    /** Pieces with a side below this are lost between fingers and burn through at the neck; common practice. */
    public static final Length SMALLEST_SIDE = Length.mm(10);

    /** Longest side over shortest that still looks like a puzzle piece; common practice. */
    private static final double LONGEST_PIECE = 1.5;

    /** What a piece twice as long as wide costs when looking for the nearest count, in shares of the count. */
    private static final double SQUARENESS_WEIGHT = 0.25;

    public PieceGrid {
        if (columns < 1 || rows < 1 || (long) columns * rows > MOST_PIECES) {
            throw new Refused("pattern.grid.count", columns, rows, FEWEST_PIECES, MOST_PIECES);
        }
    }

    /** @throws Refused for a grid of one: no lines to cut */
    public void requireSeveral() {
        if (pieces() < FEWEST_PIECES) {
            throw new Refused("pattern.grid.count", columns, rows, FEWEST_PIECES, MOST_PIECES);
        }
    }

    public int pieces() {
        return columns * rows;
    }

    public Size pieceSize(Size size) {
        return Size.mm(size.width().mm() / columns, size.height().mm() / rows);
    }

    /** Longer over shorter side of a piece; 1 is square. */
    public double squareness(Size size) {
        Size piece = pieceSize(size);
        return piece.longerSide().mm() / piece.shorterSide().mm();
    }

    /**
     * Refuses a grid whose pieces would be too small on a puzzle of this size.
     *
     * @throws Refused with the largest count that can be had
     */
    public void requireFits(Size size) {
        Size piece = pieceSize(size);
        if (piece.shorterSide().compareTo(SMALLEST_SIDE) < 0) {
            throw new Refused(
                    "pattern.grid.too_small",
                    piece.width(),
                    piece.height(),
                    SMALLEST_SIDE,
                    most(size.width(), SMALLEST_SIDE) * most(size.height(), SMALLEST_SIDE));
        }
    }

    /**
     * The grids to choose from for a size, by rising count, for each count the one with the squarest pieces; pieces
     * are at least 10 mm on each side and at most one and a half times as long as wide.
     *
     * @throws Refused when not even two pieces can be had
     */
    public static List<PieceGrid> offered(Size size) {
        return offered(size, SMALLEST_SIDE);
    }

    /**
     * The same where the workshop makes no pieces with a shorter side than this.
     *
     * @param smallest below {@link #SMALLEST_SIDE} that counts in its place
     */
    public static List<PieceGrid> offered(Size size, Length smallest) {
        Length side = smallest.compareTo(SMALLEST_SIDE) < 0 ? SMALLEST_SIDE : smallest;
        Map<Integer, PieceGrid> byCount = new TreeMap<>();
        for (int columns = 1; columns <= most(size.width(), side); columns++) {
            double squareRows = columns / size.aspect();
            int from = (int) Math.max(1, Math.floor(squareRows / LONGEST_PIECE));
            int to = (int) Math.min(most(size.height(), side), Math.ceil(squareRows * LONGEST_PIECE));
            for (int rows = from; rows <= to; rows++) {
                int count = columns * rows;
                if (count < FEWEST_PIECES || count > MOST_PIECES) {
                    continue;
                }
                PieceGrid grid = new PieceGrid(columns, rows);
                if (grid.squareness(size) <= LONGEST_PIECE) {
                    byCount.merge(count, grid, (a, b) -> a.squareness(size) <= b.squareness(size) ? a : b);
                }
            }
        }
        if (byCount.isEmpty()) {
            throw new Refused("pattern.grid.none", size.width(), size.height(), side);
        }
        return List.copyOf(byCount.values());
    }

    /**
     * The offered grid nearest to a wanted count; a slightly different count with squarer pieces may win.
     *
     * @throws Refused when the wanted count is below 2 or above 2,000, or nothing can be had at this size
     */
    public static PieceGrid nearest(Size size, int wantedPieces) {
        return nearest(size, wantedPieces, SMALLEST_SIDE);
    }

    /** The same where the workshop makes no pieces with a shorter side than this; see {@link #offered(Size, Length)}. */
    public static PieceGrid nearest(Size size, int wantedPieces, Length smallest) {
        if (wantedPieces < FEWEST_PIECES || wantedPieces > MOST_PIECES) {
            throw new Refused("pattern.grid.wanted", wantedPieces, FEWEST_PIECES, MOST_PIECES);
        }
        return offered(size, smallest).stream()
                .min(Comparator.comparingDouble(grid -> Math.abs(Math.log((double) grid.pieces() / wantedPieces))
                        + SQUARENESS_WEIGHT * Math.log(grid.squareness(size))))
                .orElseThrow();
    }

    /**
     * The same for a puzzle with this outer edge: inside a curve fewer pieces lie than on the whole finished size, so the
     * grid has as many more.
     */
    public static PieceGrid within(PuzzleEdge edge, Size size, int wantedPieces, Length smallest) {
        int inAll = (int) Math.min(MOST_PIECES, Math.round(wantedPieces / edge.share()));
        return nearest(size, inAll, smallest);
    }

    /** The grid whose pieces come nearest to a wanted side, as square as the size allows. */
    public static PieceGrid byPieceSide(Size size, Length side) {
        int columns = Math.clamp(
                Math.round(size.width().mm() / side.mm()), 1, Math.max(1, most(size.width(), SMALLEST_SIDE)));
        int rows = Math.clamp(
                Math.round(size.height().mm() / side.mm()), 1, Math.max(1, most(size.height(), SMALLEST_SIDE)));
        if (columns * rows < FEWEST_PIECES || (long) columns * rows > MOST_PIECES) {
            return nearest(size, Math.clamp((long) columns * rows, FEWEST_PIECES, MOST_PIECES));
        }
        PieceGrid grid = new PieceGrid(columns, rows);
        grid.requireFits(size);
        return grid;
    }

    /** The offered counts alone, for a drop-down list. */
    public static List<Integer> offeredCounts(Size size, Length smallest) {
        List<Integer> counts = new ArrayList<>();
        offered(size, smallest).forEach(grid -> counts.add(grid.pieces()));
        return counts;
    }

    private static int most(Length along, Length side) {
        return (int) Math.min(MOST_PIECES, Math.floor(along.mm() / side.mm() + 1e-9));
    }
}
