package puzzleworkshop.sheets.ui;

import java.util.List;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;

/** Outlines told by a few lengths, as one measures them with a tape. */
final class ShapeSteps {

    private ShapeSteps() {}

    /** A rectangle with one corner taken out, the lower right one as drawn. */
    static Outline elbow(Length width, Length height, Length cutWidth, Length cutHeight) {
        double w = width.mm();
        double h = height.mm();
        double x = w - cutWidth.mm();
        double y = h - cutHeight.mm();
        require(x > 0 && y > 0 && cutWidth.isPositive() && cutHeight.isPositive());
        return Outline.of(List.of(
                new Point(0, 0), new Point(w, 0), new Point(w, y), new Point(x, y), new Point(x, h), new Point(0, h)));
    }

    /** A rectangle with a bay in its lower side: left arm, bay, right arm. */
    static Outline bay(Length width, Length height, Length leftArm, Length bayWidth, Length bayDepth) {
        double w = width.mm();
        double h = height.mm();
        double from = leftArm.mm();
        double to = from + bayWidth.mm();
        double y = h - bayDepth.mm();
        require(from > 0 && to < w && y > 0 && bayWidth.isPositive() && bayDepth.isPositive());
        return Outline.of(List.of(
                new Point(0, 0),
                new Point(w, 0),
                new Point(w, h),
                new Point(to, h),
                new Point(to, y),
                new Point(from, y),
                new Point(from, h),
                new Point(0, h)));
    }

    private static void require(boolean possible) {
        if (!possible) {
            throw new Refused("sheets.steps.impossible");
        }
    }
}
