package puzzleworkshop.pattern.judged;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;

/**
 * How hard a puzzle is, as the minutes that a grown-up needs, one of five words.
 *
 * <p>The measure: {@value #MINUTES} min × (pieces inside + ½ pieces at the edge)^{@value #POWER} × how alike the pieces look
 * × how alike the edges are × how they hold. Pieces at the edge count half, because the frame is looked for first and each
 * belongs to one line. Where its numbers come from:
 *
 * <ul>
 *   <li>Time grows faster than the count: 500 pieces take 2 to 7 hours, 4 as a rule, 1,000 pieces 5 to 12, 9 as a rule
 *       (range of published puzzlers' tables, common practice); comparing each piece with all others would be the square.
 *   <li>Grown-ups from 50 years on connected 3,589 pieces on average in 49 hours, 73 an hour: Fissler and others, Jigsaw Puzzling Taps
 *       Multiple Cognitive Abilities, Frontiers in Aging Neuroscience 10 (2018) 299. The measure's rate for 500 to 1,000
 *       pieces, 100 to 125 an hour, lies above it as younger hands do.
 *   <li>A picture of one colour is the hardest, one of many clearly differing colours the easiest (common practice): a factor
 *       from {@value #CLEAR_LOOK} to {@value #ONE_LOOK}.
 * </ul>
 *
 * @param minutes of a grown-up, for comparing puzzles, not a promise
 */
public record Difficulty(double minutes) {

    /** The five words, each up to so many minutes (common practice). */
    public enum Word {
        VERY_EASY(10),
        EASY(60),
        MIDDLING(180),
        HARD(600),
        VERY_HARD(Double.POSITIVE_INFINITY);

        private final double upTo;

        Word(double upTo) {
            this.upTo = upTo;
        }
    }

    /** A pattern for an age: how many pieces, and how they meet. */
    public record ForAge(PieceGrid grid, CutStyle style) {}

    private static final double MINUTES = 0.114;
    private static final double POWER = 1.25;
    private static final double EDGE_SHARE = 0.5;
    private static final double CLEAR_LOOK = 0.6;
    private static final double ONE_LOOK = 3;
    /** Pieces that slip while others are joined are laid again (common practice). */
    private static final double SLIPPING = 1.15;

    private static final double ALIKE_EDGES = 1.3;

    /** Below this age lines without knobs: small hands press knobs in askew (common practice). */
    private static final int KNOBS_FROM = 4;

    /** Ages in years that can be asked for. */
    public static final int YOUNGEST = 2;

    public static final int OLDEST = 14;

    /**
     * Most pieces that a child of 2, 3, … 14 years puts together alone, of a clear picture (common practice; makers' tables
     * range about a third to either side).
     */
    private static final int[] PIECES_BY_AGE = {6, 12, 24, 48, 70, 100, 130, 180, 220, 260, 300, 400, 500};

    /**
     * @param alikeness of neighbouring pieces in the picture, from {@link PictureAlikeness}: 0 all differ, 1 all the same
     */
    public static Difficulty of(CutPattern pattern, double alikeness) {
        long edge = pattern.pieces().stream().filter(Piece::atEdge).count();
        boolean alike = !pattern.verified().edgesTold();
        return of(
                pattern.pieces().size() - edge,
                edge,
                alikeness,
                alike,
                pattern.spec().style());
    }

    /** As long as nothing is known of the picture. */
    public static Difficulty of(CutPattern pattern) {
        return of(pattern, PictureAlikeness.USUAL);
    }

    private static Difficulty of(double inside, double edge, double alikeness, boolean alikeEdges, CutStyle style) {
        double look = CLEAR_LOOK + (ONE_LOOK - CLEAR_LOOK) * alikeness * alikeness;
        return new Difficulty(MINUTES
                * Math.pow(inside + EDGE_SHARE * edge, POWER)
                * look
                * (alikeEdges ? ALIKE_EDGES : 1)
                * (style == CutStyle.KNOBS ? 1 : SLIPPING));
    }

    public Word word() {
        for (Word word : Word.values()) {
            if (minutes <= word.upTo) {
                return word;
            }
        }
        return Word.VERY_HARD;
    }

    /** Key of its word's text. */
    public String textKey() {
        return "pattern.hard." + word().name();
    }

    /** The hardest that a child of this age manages alone, of a clear picture. */
    static Difficulty most(int years) {
        int pieces = PIECES_BY_AGE[Math.clamp(years - YOUNGEST, 0, PIECES_BY_AGE.length - 1)];
        double edge = Math.min(pieces, 4 * Math.sqrt(pieces) - 4);
        return of(pieces - edge, edge, PictureAlikeness.CLEAR, false, styleFor(years));
    }

    private static CutStyle styleFor(int years) {
        return years < KNOBS_FROM ? CutStyle.STRAIGHT : CutStyle.KNOBS;
    }

    /** Whether it is not too hard for a child of this age; for grown-ups nothing is. */
    public boolean suits(int years) {
        return years > OLDEST || minutes <= most(years).minutes() + 1e-9;
    }

    /**
     * The most pieces, and how they meet, that are not too hard for a child of this age.
     *
     * @param years from 2
     * @param alikeness of neighbouring places in the picture
     * @param smallest side of pieces that the workshop makes
     * @throws Refused when even the fewest pieces of this size and picture are too hard
     */
    public static ForAge forAge(int years, Size size, double alikeness, Length smallest) {
        CutStyle style = styleFor(years);
        double most = most(years).minutes();
        PieceGrid found = null;
        for (PieceGrid grid : PieceGrid.offered(size, smallest)) {
            double edge = grid.pieces() - Math.max(0, grid.columns() - 2) * Math.max(0, grid.rows() - 2);
            if (of(grid.pieces() - edge, edge, alikeness, false, style).minutes() <= most) {
                found = grid;
            }
        }
        if (found == null) {
            throw new Refused("pattern.hard.none", years);
        }
        return new ForAge(found, style);
    }
}
