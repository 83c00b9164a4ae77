package puzzleworkshop.pattern.judged;

import java.awt.geom.AffineTransform;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;

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
 * @param worst where the cut lies on the print when the least is left
 */
public record StickingCheck(
        Length spare,
        Length overhang,
        Length overhangNeeded,
        Side narrowest,
        Length shift,
        double turnDegrees,
        Position worst) {

    /**
     * How the cut lies on the print: turned about the middle of the finished size, then shifted.
     *
     * @param dxMm to the right
     * @param dyMm down
     * @param radians clockwise as seen on the screen
     */
    public record Position(double dxMm, double dyMm, double radians) {

        /** A path of the puzzle as it lies then. */
        public CurvePath of(CurvePath path, Size finished) {
            AffineTransform place = AffineTransform.getTranslateInstance(dxMm, dyMm);
            place.rotate(radians, finished.width().mm() / 2, finished.height().mm() / 2);
            return path.transformed(place);
        }
    }

    /** Sides of the print. */
    public enum Side {
        LEFT,
        TOP,
        RIGHT,
        BOTTOM
    }

    /** Common practice when sticking by hand. */
    public static final Length USUAL_SHIFT = Length.mm(1.5);

    public static final double USUAL_TURN_DEGREES = 0.5;
    public static final Length USUAL_OVERHANG = Length.mm(3);

    private static final double FLATTENING_MM = 0.005;
    /** Which way the sides lie, in their order. */
    private static final int[] SIDEWAYS = {-1, 0, 1, 0};

    private static final int[] DOWNWARDS = {0, -1, 0, 1};

    public boolean inside() {
        return spare.mm() >= 0;
    }

    /**
     * @param outline the outer cut, in millimetres from the top left corner of the finished size
     * @param finished finished size; the print is larger by the overhang on all sides
     */
    public static StickingCheck of(
            CurvePath outline, Size finished, Length overhang, Length shift, double turnDegrees) {
        double turn = Math.toRadians(turnDegrees);
        double halfWidth = finished.width().mm() / 2;
        double halfHeight = finished.height().mm() / 2;
        double[] half = {halfWidth, halfHeight, halfWidth, halfHeight};
        double[] outside = {-halfWidth, -halfHeight, -halfWidth, -halfHeight};
        double[] turned = new double[4];
        for (Point p : outline.flattened(FLATTENING_MM)) {
            double x = p.xMm() - halfWidth;
            double y = p.yMm() - halfHeight;
            double[][] towards = {{-x, -y}, {-y, x}, {x, y}, {y, -x}};
            for (int side = 0; side < 4; side++) {
                double angle = worstTurn(towards[side][0], towards[side][1], turn);
                double reach = towards[side][0] * Math.cos(angle) - towards[side][1] * Math.sin(angle) - half[side];
                if (reach > outside[side]) {
                    outside[side] = reach;
                    turned[side] = angle;
                }
            }
        }
        int worst = 0;
        for (int side = 1; side < 4; side++) {
            worst = outside[side] > outside[worst] + 1e-9 ? side : worst;
        }
        double needed = outside[worst] + shift.mm() + FLATTENING_MM;
        Position position = new Position(SIDEWAYS[worst] * shift.mm(), DOWNWARDS[worst] * shift.mm(), turned[worst]);
        return new StickingCheck(
                Length.mm(overhang.mm() - needed),
                overhang,
                Length.mm(Math.ceil(needed * 10 - 1e-9) / 10),
                Side.values()[worst],
                shift,
                turnDegrees,
                position);
    }

    /** With the usual tolerance and overhang. */
    public static StickingCheck of(CutPattern pattern) {
        return of(pattern.outline(), pattern.spec().size(), USUAL_OVERHANG, USUAL_SHIFT, USUAL_TURN_DEGREES);
    }

    /**
     * The angle a up to the turn at which x·cos a − y·sin a is largest: where the point lies straight in that direction,
     * when that is within the turn, else the end that turns it there.
     */
    private static double worstTurn(double x, double y, double turn) {
        double straight = -Math.atan2(y, x);
        return Math.abs(straight) <= turn ? straight : Math.copySign(turn, straight);
    }
}
