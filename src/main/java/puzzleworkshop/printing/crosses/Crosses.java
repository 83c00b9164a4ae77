package puzzleworkshop.printing.crosses;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Four small crosses, one beyond each corner of the finished picture: outside the outer cut, inside the overhang.
 *
 * @param span from end to end of an arm
 * @param away from the two nearest edges of the finished picture out to the middle of a cross
 */
public record Crosses(Length span, Length away) {

    /** In the middle of an overhang of 3 mm. */
    public static final Crosses USUAL = new Crosses(Length.mm(2), Length.mm(1.5));

    public static final int COUNT = 4;
    /** Left between a cross and the cut, and between a cross and the edge of the print; the halo lies in it. */
    private static final double CLEAR_MM = 0.3;

    public Crosses {
        if (span.mm() < 1 || span.mm() > 10 || away.mm() < 0.5 || away.mm() > 20) {
            throw new IllegalArgumentException(
                    "A cross is 1 to 10 mm wide and 0.5 to 20 mm away, not " + span + ", " + away);
        }
    }

    /** Whether they lie wholly between the outer cut and the edge of a print with this overhang. */
    public boolean fit(Length overhang) {
        return away.mm() - span.mm() / 2 >= CLEAR_MM && away.mm() + span.mm() / 2 + CLEAR_MM <= overhang.mm();
    }

    /** The least overhang that takes them. */
    public Length leastOverhang() {
        return Length.mm(away.mm() + span.mm() / 2 + CLEAR_MM);
    }

    /** Their middles in millimetres from the top left corner of the finished picture: top left, then clockwise. */
    public List<Point> on(Size finished) {
        double a = away.mm();
        double right = finished.width().mm() + a;
        double bottom = finished.height().mm() + a;
        return List.of(new Point(-a, -a), new Point(right, -a), new Point(right, bottom), new Point(-a, bottom));
    }
}
