package puzzleworkshop.pattern.edges;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * One interlocking edge: shoulder, neck, head, neck, shoulder, in six cubic curves that run into each other without a
 * corner. The head is an oval, a little wider than tall, so that the stretch from neck to head and the oval have
 * nearly the same bend where they meet; the shoulders dip below the straight line before they rise.
 *
 * @param side 1 or -1: to which side of the line the knob stands
 * @param centre along the straight line from end to end, as a share
 * @param tilt of the head, radians
 * @param neckMm width at the narrowest
 * @param headMm width at the widest
 * @param heightMm from the straight line to the top
 */
record Knob(int side, double centre, double tilt, double neckMm, double headMm, double heightMm) {

    /** Where the neck is narrowest and the head widest, as shares of the height. */
    private static final double NECK_AT = 0.25;

    private static final double HEAD_AT = 0.63;
    /** How far below the straight line the shoulder's handle reaches, as a share of the height. */
    private static final double DIP = 0.24;

    private static final double SHOULDER_REACH = 0.5;
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
        Point foot = a.towards(b, centre);
        // across and up: the frame of the tilted head
        double ax = ux * cos - uy * sin;
        double ay = uy * cos + ux * sin;
        Head head = new Head(foot, ax, ay, -ay * side, ax * side);

        double neckAt = NECK_AT * heightMm;
        double headAt = HEAD_AT * heightMm;
        double neck = neckMm / 2;
        double wide = headMm / 2;
        double waist = WAIST_HANDLE * (headAt - neckAt);
        double dip = -DIP * heightMm;
        Point neckIn = head.at(-neck, neckAt);
        Point neckOut = head.at(neck, neckAt);
        double reachIn = SHOULDER_REACH * a.distanceTo(neckIn);
        double reachOut = SHOULDER_REACH * b.distanceTo(neckOut);
        return new CurvePath(
                a,
                List.of(
                        new Segment.Cubic(
                                a.plus(leaving[0] * reachIn, leaving[1] * reachIn), head.at(-neck, dip), neckIn),
                        new Segment.Cubic(
                                head.at(-neck, neckAt + waist), head.at(-wide, headAt - waist), head.at(-wide, headAt)),
                        new Segment.Cubic(
                                head.at(-wide, headAt + FULLNESS * (heightMm - headAt)),
                                head.at(-wide * FULLNESS, heightMm),
                                head.at(0, heightMm)),
                        new Segment.Cubic(
                                head.at(wide * FULLNESS, heightMm),
                                head.at(wide, headAt + FULLNESS * (heightMm - headAt)),
                                head.at(wide, headAt)),
                        new Segment.Cubic(head.at(wide, headAt - waist), head.at(neck, neckAt + waist), neckOut),
                        new Segment.Cubic(
                                head.at(neck, dip), b.plus(-arriving[0] * reachOut, -arriving[1] * reachOut), b)),
                false);
    }

    private record Head(Point foot, double acrossX, double acrossY, double upX, double upY) {
        Point at(double across, double up) {
            return foot.plus(acrossX * across + upX * up, acrossY * across + upY * up);
        }
    }
}
