package puzzleworkshop.pattern.edges;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.WoodLimits;

/**
 * Draws the inner edges of patterns from design 2 on, with more that may vary than {@link EdgeArtist} has, and as many
 * drawings of one edge as are wanted, so that one can be chosen that no other edge resembles. Every edge and attempt has
 * its own stream of random numbers.
 */
public final class FreeArtist {

    /** Kinds 0 and 1 are lines across and down, 2 the points: 16 and up are ours. */
    private static final int STREAM = 16;

    private static final double TILT = Math.toRadians(15);
    private static final double SHIFT = 0.11;
    private static final double LARGEST_UNIT_MM = 90;
    private static final int FEW_PIECES = 120;
    private static final int FEW_WAVES = 120;
    private static final double WAVE = 0.12;
    private static final double WAVE_SHIFT = 0.28;
    private static final double WAVE_TURN = 0.6;
    private static final double BEND = 0.13;
    private static final double BEND_SHIFT = 0.35;
    private static final double STUB_WITH_KNOB = 0.85;

    private final PatternSpec spec;
    private final WoodLimits limits;
    private final double unitMm;

    public FreeArtist(PatternSpec spec) {
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
     * @param attempt which of its drawings, from 0
     * @param life 1 as free as can be, down to 0: no variation left, the knob at its smallest
     */
    public CurvePath draw(
            int kind,
            int row,
            int column,
            Point a,
            Point b,
            double[] leaving,
            double[] arriving,
            int attempt,
            double life) {
        SplitMix random = SplitMix.of(spec.seed(), STREAM + 2 * attempt + kind, row, column);
        return switch (spec.style()) {
            case STRAIGHT -> bends(random, a, b, life);
            case WAVY -> wave(random, a, b, leaving, arriving, life);
            case KNOBS -> knob(random, a.distanceTo(b), life).draw(a, b, leaving, arriving);
        };
    }

    /** An edge that ends at a personal shape: with a knob where it is long enough, else a plain curve. */
    public CurvePath stub(
            int kind,
            int row,
            int column,
            Point a,
            Point b,
            double[] leaving,
            double[] arriving,
            int attempt,
            double life) {
        SplitMix random = SplitMix.of(spec.seed(), STREAM + 2 * attempt + kind, row, column);
        double length = a.distanceTo(b);
        if (spec.style() == CutStyle.STRAIGHT) {
            return bends(random, a, b, 0.6 * life);
        }
        if (spec.style() == CutStyle.KNOBS && length > STUB_WITH_KNOB * unitMm) {
            return knob(random, length * 0.9, life).draw(a, b, leaving, arriving);
        }
        return wave(random, a, b, leaving, arriving, life);
    }

    private FreeKnob knob(SplitMix random, double lengthMm, double life) {
        int side = random.sign();
        double centre = 0.5 + life * random.between(-SHIFT, SHIFT);
        double tilt = life * random.between(-TILT, TILT);
        double size = Math.min(unitMm, lengthMm) * (0.84 + 0.16 * life);
        double neck = Math.max(size * (0.168 + life * random.between(-0.02, 0.03)), limits.closestLinesMm() * 1.04);
        // the neck may not be drawn thinner than the wood allows, nor the head without grip on either side
        double least = neck / 2 + Math.max(limits.smallestGripMm() / 2, 0.15 * neck);
        double wideLeft = Math.max(least, size * (0.147 + life * random.between(-0.026, 0.03)));
        double wideRight = Math.max(least, size * (0.147 + life * random.between(-0.026, 0.03)));
        double height = Math.max(size * (0.272 + life * random.between(-0.035, 0.035)), 0.84 * (wideLeft + wideRight));
        double neckAt = 0.25 + life * random.between(-0.06, 0.05);
        double top = life * random.between(-0.035, 0.035) * size;
        return new FreeKnob(
                side,
                centre,
                tilt,
                neck,
                height,
                neckAt,
                top,
                half(random, wideLeft, life),
                half(random, wideRight, life));
    }

    private static FreeKnob.Half half(SplitMix random, double wide, double life) {
        return new FreeKnob.Half(
                wide,
                0.63 + life * random.between(-0.07, 0.06),
                0.24 + life * random.between(-0.16, 0.14),
                0.5 + life * random.between(-0.1, 0.1));
    }

    /** Curves that run into each other at one place between the ends, in puzzles of many pieces at two. */
    private CurvePath wave(SplitMix random, Point a, Point b, double[] leaving, double[] arriving, double life) {
        int bends = spec.grid().pieces() <= FEW_WAVES ? 1 : 2;
        double length = a.distanceTo(b);
        double ux = (b.xMm() - a.xMm()) / length;
        double uy = (b.yMm() - a.yMm()) / length;
        double size = Math.min(unitMm, length);
        List<Segment> curves = new ArrayList<>();
        Point at = a;
        double wayX = ux + life * (leaving[0] - ux);
        double wayY = uy + life * (leaving[1] - uy);
        for (int i = 1; i <= bends + 1; i++) {
            Point to = b;
            double toX = ux + life * (arriving[0] - ux);
            double toY = uy + life * (arriving[1] - uy);
            if (i <= bends) {
                double share = (i + life * random.between(-WAVE_SHIFT, WAVE_SHIFT)) / (bends + 1);
                double off = life * random.between(-WAVE, WAVE) * size;
                double turn = life * random.between(-WAVE_TURN, WAVE_TURN);
                double cos = StrictMath.cos(turn);
                double sin = StrictMath.sin(turn);
                to = a.towards(b, share).plus(-uy * off, ux * off);
                toX = ux * cos - uy * sin;
                toY = uy * cos + ux * sin;
            }
            double apart = at.distanceTo(to);
            double leave = (0.38 + life * random.between(-0.1, 0.1)) * apart;
            double arrive = (0.38 + life * random.between(-0.1, 0.1)) * apart;
            curves.add(
                    new Segment.Cubic(at.plus(leave * wayX, leave * wayY), to.plus(-arrive * toX, -arrive * toY), to));
            at = to;
            wayX = toX;
            wayY = toY;
        }
        return new CurvePath(a, curves, false);
    }

    /**
     * Straight stretches with two bends, in puzzles of many pieces three: plain straight lines of one length could not be
     * told apart at all.
     */
    private CurvePath bends(SplitMix random, Point a, Point b, double life) {
        int bends = spec.grid().pieces() <= FEW_PIECES ? 2 : 3;
        double length = a.distanceTo(b);
        double ux = (b.xMm() - a.xMm()) / length;
        double uy = (b.yMm() - a.yMm()) / length;
        double size = Math.min(unitMm, length);
        List<Point> points = new ArrayList<>();
        points.add(a);
        for (int i = 1; i <= bends; i++) {
            double share = (i + random.between(-BEND_SHIFT, BEND_SHIFT)) / (bends + 1);
            double off = life * random.between(-BEND, BEND) * size;
            points.add(a.towards(b, share).plus(-uy * off, ux * off));
        }
        points.add(b);
        return CurvePath.through(points, false);
    }
}
