package puzzleworkshop.pattern;

import puzzleworkshop.measure.Length;

/**
 * What the wood and the beam allow, in drawn millimetres (the beam takes half its kerf on either side of a line).
 *
 * @param closestLinesMm smallest distance between two lines, and the narrowest neck: thinnest wood plus kerf
 * @param smallestGripMm by how much a head must be wider than its neck: both lose a kerf against each other, and a
 *        quarter of a millimetre must remain to hold
 */
public record WoodLimits(double closestLinesMm, double smallestGripMm) {

    private static final double GRIP_LEFT_MM = 0.25;
    private static final double THINNEST_EVER_MM = 1.2;

    /**
     * Thinnest wood is half the board's thickness and never below 1.2 mm (common practice: thinner tongues of plywood
     * lose a ply when taken apart).
     */
    public static WoodLimits of(Length thickness, Length kerf) {
        double thinnest = Math.max(THINNEST_EVER_MM, thickness.mm() / 2);
        return new WoodLimits(thinnest + kerf.mm(), 2 * kerf.mm() + GRIP_LEFT_MM);
    }

    /** Shortest side of a piece that still has room for knobs on all four sides (found by trying 10,000 patterns). */
    public Length smallestKnobbedSide() {
        return Length.mm(5.6 * closestLinesMm);
    }
}
