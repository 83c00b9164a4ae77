package puzzleworkshop.pattern.edges;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * An interlocking edge whose two halves may differ (patterns from design 2 on): shoulder, neck, head, neck, shoulder, in
 * six cubic curves that run into each other without a corner. More that can vary than in a {@link Knob} means more edges
 * that cannot be mistaken for each other.
 *
 * @param side 1 or -1: to which side of the line the knob stands
 * @param centre along the straight line from end to end, as a share
 * @param tilt of the head, radians
 * @param neckMm width at the narrowest
 * @param heightMm from the straight line to the top
 * @param neckAt where the neck is narrowest, as a share of the height
 * @param topMm how far the top stands beside the middle of the neck
 * @param left the half that comes first along the edge
 * @param right the half that comes last
 */
record FreeKnob(
        int side,
        double centre,
        double tilt,
        double neckMm,
        double heightMm,
        double neckAt,
        double topMm,
        Half left,
        Half right) {

    /**
     * @param wideMm from the middle of the neck to the widest place of the head
     * @param headAt where that is, as a share of the height
     * @param dip how far below the straight line the shoulder's handle reaches, as a share of the height
     * @param reach of the shoulder's outer handle, as a share of the way to the neck
     */
    record Half(double wideMm, double headAt, double dip, double reach) {}

    /** Handle of a quarter oval; a little above the circle's 0.5523 makes the head fuller. */
    private static final double FULLNESS = 0.57;

    private static final double WAIST_HANDLE = 0.56;

    /**
     * Draws the edge.
     *
     * @param leaving direction at the start, a unit vector
     * @param arriving direction at the end
     */
    CurvePath draw(Point a, Point b, double[] leaving, double[] arriving) {
        double length = a.distanceTo(b);
        double ux = (b.xMm() - a.xMm()) / length;
        double uy = (b.yMm() - a.yMm()) / length;
        double cos = StrictMath.cos(tilt);
        double sin = StrictMath.sin(tilt);
        double ax = ux * cos - uy * sin;
        double ay = uy * cos + ux * sin;
        Frame head = new Frame(a.towards(b, centre), ax, ay, -ay * side, ax * side);
        double neck = neckMm / 2;
        double neckUp = neckAt * heightMm;
        Point neckIn = head.at(-neck, neckUp);
        Point neckOut = head.at(neck, neckUp);
        Point top = head.at(topMm, heightMm);
        double leftUp = left.headAt() * heightMm;
        double rightUp = right.headAt() * heightMm;
        Point widestLeft = head.at(-left.wideMm(), leftUp);
        Point widestRight = head.at(right.wideMm(), rightUp);
        double waistLeft = WAIST_HANDLE * (leftUp - neckUp);
        double waistRight = WAIST_HANDLE * (rightUp - neckUp);
        double reachIn = left.reach() * a.distanceTo(neckIn);
        double reachOut = right.reach() * b.distanceTo(neckOut);
        return new CurvePath(
                a,
                List.of(
                        new Segment.Cubic(
                                a.plus(leaving[0] * reachIn, leaving[1] * reachIn),
                                head.at(-neck, -left.dip() * heightMm),
                                neckIn),
                        new Segment.Cubic(
                                head.at(-neck, neckUp + waistLeft),
                                head.at(-left.wideMm(), leftUp - waistLeft),
                                widestLeft),
                        new Segment.Cubic(
                                head.at(-left.wideMm(), leftUp + FULLNESS * (heightMm - leftUp)),
                                head.at(topMm - FULLNESS * (left.wideMm() + topMm), heightMm),
                                top),
                        new Segment.Cubic(
                                head.at(topMm + FULLNESS * (right.wideMm() - topMm), heightMm),
                                head.at(right.wideMm(), rightUp + FULLNESS * (heightMm - rightUp)),
                                widestRight),
                        new Segment.Cubic(
                                head.at(right.wideMm(), rightUp - waistRight),
                                head.at(neck, neckUp + waistRight),
                                neckOut),
                        new Segment.Cubic(
                                head.at(neck, -right.dip() * heightMm),
                                b.plus(-arriving[0] * reachOut, -arriving[1] * reachOut),
                                b)),
                false);
    }

    private record Frame(Point foot, double acrossX, double acrossY, double upX, double upY) {
        Point at(double across, double up) {
            return foot.plus(acrossX * across + upX * up, acrossY * across + upY * up);
        }
    }
}
