package puzzleworkshop.machines;

import java.awt.geom.AffineTransform;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;

/**
 * How a machine counts X and Y. On the bed itself, as everything here is drawn, x runs to the right and y to the front,
 * in millimetres from the back left corner, as one looks at it standing in front.
 *
 * @param origin the corner at which the machine shows 0, 0
 * @param xToRight whether X grows to the right
 * @param yToBack whether Y grows away from whoever stands in front
 * @param unit of the numbers it shows
 */
public record MachineAxes(BedCorner origin, boolean xToRight, boolean yToBack, Unit unit) {

    /** What a coordinate is shown in. */
    public enum Unit {
        MM(1),
        INCH(25.4);

        private final double mm;

        Unit(double mm) {
            this.mm = mm;
        }

        public double inMm() {
            return mm;
        }
    }

    /** Origin at the front left, X to the right, Y to the back, millimetres: the commonest way (common practice). */
    public static final MachineAxes USUAL = new MachineAxes(BedCorner.FRONT_LEFT, true, true, Unit.MM);

    /** From the bed to the machine's own numbers, in millimetres whatever it shows. */
    public AffineTransform toMachine(Size bed) {
        double x0 = origin.isLeft() ? 0 : bed.width().mm();
        double y0 = origin.isFront() ? bed.height().mm() : 0;
        double sx = xToRight ? 1 : -1;
        double sy = yToBack ? -1 : 1;
        return new AffineTransform(sx, 0, 0, sy, -sx * x0, -sy * y0);
    }

    /** Where on the bed the machine stands when it shows these numbers. */
    public Point onBed(double x, double y, Size bed) {
        double x0 = origin.isLeft() ? 0 : bed.width().mm();
        double y0 = origin.isFront() ? bed.height().mm() : 0;
        return new Point(x0 + (xToRight ? x : -x) * unit.mm, y0 + (yToBack ? -y : y) * unit.mm);
    }

    /** X as the machine shows it at a place on the bed, in its own unit. */
    public double shownX(Point onBed, Size bed) {
        double away = onBed.xMm() - (origin.isLeft() ? 0 : bed.width().mm());
        return (xToRight ? away : -away) / unit.mm;
    }

    /** Y likewise. */
    public double shownY(Point onBed, Size bed) {
        double away = onBed.yMm() - (origin.isFront() ? bed.height().mm() : 0);
        return (yToBack ? -away : away) / unit.mm;
    }
}
