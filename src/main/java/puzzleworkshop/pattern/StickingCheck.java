package puzzleworkshop.pattern;

import puzzleworkshop.geometry.CurvePath;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Whether the outer cut still lies inside the print when the sticker was stuck on a little off: shifted in any
 * direction and turned about its middle at the same time. For each point of the outline the farthest it can get to
 * each side is computed in closed form, so the answer is no sample of positions but the worst of all.
 *
 * @param spare what is left on the narrowest side at the worst; negative when the cut can leave the print
 * @param overhang the print's overhang a side that was looked at
 * @param overhangNeeded the least that would do, rounded up to 0.1 mm
 * @param narrowest the side with the least left
 * @param shift misplacement in any direction
 * @param turnDegrees misplacement in angle, either way
 */
public record StickingCheck(Length spare, Length overhang, Length overhangNeeded, Side narrowest, Length shift,
        double turnDegrees) {

    /** Sides of the print. */
    public enum Side { LEFT, TOP, RIGHT, BOTTOM }

    /** Common practice when sticking by hand. */
    public static final Length USUAL_SHIFT = Length.mm(1.5);
    public static final double USUAL_TURN_DEGREES = 0.5;
    public static final Length USUAL_OVERHANG = Length.mm(3);

    private static final double FLATTENING_MM = 0.005;

    public boolean inside() {
        return spare.mm() >= 0;
    }

    /**
     * @param outline the outer cut, in millimetres from the top left corner of the finished size
     * @param finished finished size; the print is larger by the overhang on all sides
     */
    public static StickingCheck of(CurvePath outline, Size finished, Length overhang, Length shift, double turnDegrees) {
        double turn = Math.toRadians(turnDegrees);
        double halfWidth = finished.width().mm() / 2;
        double halfHeight = finished.height().mm() / 2;
        double left = 0;
        double top = 0;
        double right = 0;
        double bottom = 0;
        for (Point p : outline.flattened(FLATTENING_MM)) {
            double x = p.xMm() - halfWidth;
            double y = p.yMm() - halfHeight;
            right = Math.max(right, farthest(x, y, turn));
            left = Math.max(left, farthest(-x, -y, turn));
            bottom = Math.max(bottom, farthest(y, -x, turn));
            top = Math.max(top, farthest(-y, x, turn));
        }
        double[] outside = {left - halfWidth, top - halfHeight, right - halfWidth, bottom - halfHeight};
        int worst = 0;
        for (int side = 1; side < 4; side++) {
            worst = outside[side] > outside[worst] + 1e-9 ? side : worst;
        }
        double needed = outside[worst] + shift.mm() + FLATTENING_MM;
        return new StickingCheck(Length.mm(overhang.mm() - needed), overhang,
                Length.mm(Math.ceil(needed * 10 - 1e-9) / 10), Side.values()[worst], shift, turnDegrees);
    }

    /** With the usual tolerance and overhang. */
    public static StickingCheck of(CutPattern pattern) {
        return of(pattern.outline(), pattern.spec().size(), USUAL_OVERHANG, USUAL_SHIFT, USUAL_TURN_DEGREES);
    }

    /** Largest x·cos a − y·sin a for |a| up to the turn: at an end, or the full distance when that angle is within. */
    private static double farthest(double x, double y, double turn) {
        double radius = Math.sqrt(x * x + y * y);
        if (Math.abs(Math.atan2(y, x)) <= turn) {
            return radius;
        }
        return x * Math.cos(turn) + Math.abs(y) * Math.sin(turn);
    }
}
