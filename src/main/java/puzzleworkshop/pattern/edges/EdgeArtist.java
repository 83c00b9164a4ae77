package puzzleworkshop.pattern.edges;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.WoodLimits;

/**
 * Draws one inner edge in the chosen style. Every edge has its own stream of random numbers, so that drawing one again
 * more calmly (see {@code calm}) leaves its neighbours as they are.
 */
public final class EdgeArtist {

    /** After so many calmer drawings nothing of the variation is left and the knob is at its smallest. */
    public static final int CALMEST = 8;

    private static final double TILT = Math.toRadians(13);
    private static final double SHIFT = 0.085;
    private static final double NECK = 0.168;
    private static final double HEAD = 0.295;
    private static final double HEIGHT = 0.272;
    private static final double SIZE_SPREAD = 0.09;
    /** A knob larger than this looks clumsy on large pieces with few of them. */
    private static final double LARGEST_UNIT_MM = 90;

    private static final double STUB_WITH_KNOB = 0.85;
    private static final double WAVE_REACH = 0.38;

    private final PatternSpec spec;
    private final WoodLimits limits;
    private final double unitMm;

    public EdgeArtist(PatternSpec spec) {
        this.spec = spec;
        this.limits = spec.limits();
        this.unitMm = Math.min(
                LARGEST_UNIT_MM,
                spec.grid().pieceSize(spec.size()).shorterSide().mm());
    }

    /**
     * @param kind 0 across, 1 down; with row and column the name of the edge
     * @param leaving direction in which the line leaves a, unit vector
     * @param arriving direction in which it arrives at b
     * @param calm 0 as the seed wants it, up to {@link #CALMEST}: less shift, tilt and size
     */
    public CurvePath draw(
            int kind, int row, int column, Point a, Point b, double[] leaving, double[] arriving, int calm) {
        return switch (spec.style()) {
            case STRAIGHT -> CurvePath.through(List.of(a, b), false);
            case WAVY -> wave(a, b, leaving, arriving, 1 - (double) calm / CALMEST);
            case KNOBS -> knob(kind, row, column, a.distanceTo(b), calm).draw(a, b, leaving, arriving);
        };
    }

    /**
     * An edge near a personal shape, where the knob may not find room: after the calmest on its own side it is tried on
     * the other side, then left out.
     *
     * @param calm up to {@link #CALMEST} + 2
     */
    public CurvePath beside(
            int kind, int row, int column, Point a, Point b, double[] leaving, double[] arriving, int calm) {
        if (spec.style() != CutStyle.KNOBS || calm <= CALMEST) {
            return draw(kind, row, column, a, b, leaving, arriving, Math.min(calm, CALMEST));
        }
        if (calm == CALMEST + 1) {
            Knob knob = knob(kind, row, column, a.distanceTo(b), CALMEST);
            return new Knob(-knob.side(), knob.centre(), knob.tilt(), knob.neckMm(), knob.headMm(), knob.heightMm())
                    .draw(a, b, leaving, arriving);
        }
        return wave(a, b, leaving, arriving, 1);
    }

    /** An edge that ends at a personal shape: with a knob where it is long enough, else a plain curve. */
    public CurvePath stub(
            int kind, int row, int column, Point a, Point b, double[] leaving, double[] arriving, int calm) {
        if (spec.style() == CutStyle.STRAIGHT) {
            return CurvePath.through(List.of(a, b), false);
        }
        boolean longEnough = a.distanceTo(b) > STUB_WITH_KNOB * unitMm;
        if (spec.style() == CutStyle.KNOBS && longEnough && calm <= CALMEST) {
            return knob(kind, row, column, a.distanceTo(b) * 0.9, calm).draw(a, b, leaving, arriving);
        }
        return wave(a, b, leaving, arriving, calm <= CALMEST + 1 ? 1 : 0.4);
    }

    private Knob knob(int kind, int row, int column, double lengthMm, int calm) {
        double life = 1 - (double) calm / CALMEST;
        SplitMix random = SplitMix.of(spec.seed(), kind, row, column);
        int side = random.sign();
        double centre = 0.5 + life * random.around(0, SHIFT);
        double tilt = life * random.around(0, TILT);
        double size = Math.min(unitMm, lengthMm) * (0.84 + 0.16 * life);
        double neck = size * NECK * (1 + life * random.around(0, SIZE_SPREAD));
        double head = size * HEAD * (1 + life * random.around(0, SIZE_SPREAD));
        double height = size * HEIGHT * (1 + life * random.around(0, SIZE_SPREAD));
        // the neck may not be drawn thinner than the wood allows, nor the head without grip
        neck = Math.max(neck, limits.closestLinesMm() * 1.04);
        head = Math.max(head, neck + Math.max(limits.smallestGripMm(), 0.3 * neck));
        height = Math.max(height, 0.84 * head);
        return new Knob(side, centre, tilt, neck, head, height);
    }

    private static CurvePath wave(Point a, Point b, double[] leaving, double[] arriving, double life) {
        double reach = WAVE_REACH * a.distanceTo(b);
        double ux = (b.xMm() - a.xMm()) / a.distanceTo(b);
        double uy = (b.yMm() - a.yMm()) / a.distanceTo(b);
        return new CurvePath(
                a,
                List.of(new Segment.Cubic(
                        a.plus(reach * (ux + life * (leaving[0] - ux)), reach * (uy + life * (leaving[1] - uy))),
                        b.plus(-reach * (ux + life * (arriving[0] - ux)), -reach * (uy + life * (arriving[1] - uy))),
                        b)),
                false);
    }
}
