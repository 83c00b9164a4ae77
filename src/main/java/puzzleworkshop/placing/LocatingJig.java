package puzzleworkshop.placing;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutting.trials.StrokeDigits;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.placing.given.SettingWords;

/**
 * An L-shaped fence for the front left of a machine's bed, cut from waste of any thickness: blanks are pushed against both
 * arms and so come to the same place each time. Half-round finger holes in the inner edges let a blank be lifted, a round
 * relief frees the inner corner of splinters, ticks with sizes show how far each blank reaches. On the bed, millimetres, x
 * to the right, y to the front.
 *
 * @param bed of the machine
 * @param arm width of each arm
 * @param blanks sizes that are to lie in it, as they lie: width along the front
 */
public record LocatingJig(Size bed, Length arm, List<Size> blanks) {

    public static final Length USUAL_ARM = Length.mm(40);
    /** Fingers of 16 to 20 mm find room (common practice). */
    private static final double FINGER_RADIUS = 12;

    private static final double RELIEF_RADIUS = 3;
    private static final double BEYOND = 15;
    private static final double TICK = 6;
    private static final double DIGITS = 4;
    private static final int ARC_STEPS = 36;

    /** @throws Refused when a blank does not find room beside the fence, or the arms are too narrow for finger holes */
    public LocatingJig {
        blanks = List.copyOf(blanks);
        if (blanks.isEmpty()) {
            throw new Refused("placing.jig.no-blanks");
        }
        if (arm.mm() < FINGER_RADIUS + 10
                || arm.mm() > Math.min(bed.width().mm(), bed.height().mm()) / 3) {
            throw new Refused(
                    "placing.jig.arm",
                    Length.mm(FINGER_RADIUS + 10),
                    Length.mm(Math.floor(Math.min(bed.width().mm(), bed.height().mm()) / 3)));
        }
        for (Size blank : blanks) {
            if (blank.width().mm() > bed.width().mm() - arm.mm()
                    || blank.height().mm() > bed.height().mm() - arm.mm()) {
                throw new Refused("placing.jig.no-room", blank, bed);
            }
            if (Math.min(blank.width().mm(), blank.height().mm()) < 4 * FINGER_RADIUS) {
                throw new Refused("placing.jig.too-small", blank);
            }
        }
    }

    /** Where the front left corner of every blank comes. */
    public Point corner() {
        return new Point(arm.mm(), bed.height().mm() - arm.mm());
    }

    /** The fence as one closed line to be cut through. */
    public CutPlan fence(String title) {
        return CutPlan.of(title, List.of(), List.of(outline()), CutPlan.Sequence.OUTLINE_FIRST);
    }

    /** Ticks and sizes to be engraved first, at low power. */
    public CutPlan marking(String title) {
        return CutPlan.of(title, ticks(), List.of(), CutPlan.Sequence.INNER_FIRST);
    }

    CurvePath outline() {
        double a = arm.mm();
        double h = bed.height().mm();
        Point in = corner();
        double right = Math.min(bed.width().mm(), a + widest() + BEYOND);
        double back = Math.max(0, in.yMm() - deepest() - BEYOND);
        double fingerX = a + smallestWidth() / 2;
        double fingerY = in.yMm() - smallestHeight() / 2;
        List<Point> points = new ArrayList<>();
        points.add(new Point(0, h));
        points.add(new Point(0, back));
        points.add(new Point(a, back));
        // down the inner edge of the left arm: the finger hole bites to the left, into the arm
        arc(points, new Point(a, fingerY), FINGER_RADIUS, -90, -270);
        // the inner corner is freed all round but where the edges meet it
        arc(points, in, RELIEF_RADIUS, -90, -360);
        // along the inner edge of the front arm: the finger hole bites to the front
        arc(points, new Point(fingerX, in.yMm()), FINGER_RADIUS, 180, 0);
        points.add(new Point(right, in.yMm()));
        points.add(new Point(right, h));
        return CurvePath.through(points, true);
    }

    private List<CurvePath> ticks() {
        List<CurvePath> lines = new ArrayList<>();
        Point in = corner();
        blanks.stream().map(blank -> blank.width().mm()).distinct().forEach(width -> {
            double x = in.xMm() + width;
            lines.add(line(x, in.yMm(), x, in.yMm() + TICK));
            String size = SettingWords.number(width, 1);
            lines.addAll(
                    StrokeDigits.write(size, x - StrokeDigits.width(size, DIGITS) - 1, in.yMm() + TICK + 2, DIGITS));
        });
        blanks.stream().map(blank -> blank.height().mm()).distinct().forEach(height -> {
            double y = in.yMm() - height;
            lines.add(line(in.xMm() - TICK, y, in.xMm(), y));
            String size = SettingWords.number(height, 1);
            lines.addAll(
                    StrokeDigits.write(size, in.xMm() - TICK - 2 - StrokeDigits.width(size, DIGITS), y + 1, DIGITS));
        });
        return lines;
    }

    private static CurvePath line(double x1, double y1, double x2, double y2) {
        return CurvePath.through(List.of(new Point(x1, y1), new Point(x2, y2)), false);
    }

    /** From one angle to another, in degrees from x towards y; chords within 0.02 mm. */
    private static void arc(List<Point> points, Point middle, double radius, double from, double to) {
        for (int i = 0; i <= ARC_STEPS; i++) {
            double angle = Math.toRadians(from + (to - from) * i / ARC_STEPS);
            points.add(new Point(middle.xMm() + radius * Math.cos(angle), middle.yMm() + radius * Math.sin(angle)));
        }
    }

    private double widest() {
        return blanks.stream().mapToDouble(b -> b.width().mm()).max().orElseThrow();
    }

    private double deepest() {
        return blanks.stream().mapToDouble(b -> b.height().mm()).max().orElseThrow();
    }

    private double smallestWidth() {
        return blanks.stream().mapToDouble(b -> b.width().mm()).min().orElseThrow();
    }

    private double smallestHeight() {
        return blanks.stream().mapToDouble(b -> b.height().mm()).min().orElseThrow();
    }
}
