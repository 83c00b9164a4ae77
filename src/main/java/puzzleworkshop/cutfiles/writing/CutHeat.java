package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * How warm the board still is, from lines cut before, where the beam arrives: a simple model of a thin plate.
 *
 * <p>A millimetre of cut leaves its heat in the plate at once; it spreads in two dimensions and is lost through both faces:
 * a point source in a plate of thickness h gives e/(ρ·c·h·4π·α·t)·exp(−r²/(4·α·t) − t/τ) (Carslaw and Jaeger, Conduction of
 * Heat in Solids, 2nd ed., 1959, §10.3 with loss from the faces; from memory), summed over what was cut before on other lines. What the
 * beam's own line leaves is the same in every order and left out; a line that begins where the one before ended goes on as
 * that line, round a corner, and what was cut just before the corner is left out likewise.
 *
 * <p>Wood: density 600 kg/m³, specific heat 1,600 J/(kg·K), diffusivity 0.16 mm²/s (Wood Handbook, FPL-GTR-282, ch. 4;
 * from memory). A third of 4 J/mm stays in the wood, and heat is lost in 40 s (35 W/(m²·K) on either face under air assist):
 * common practice. So the figure compares orders; it is no measured temperature.
 */
public final class CutHeat {

    /** 20 W on 3 mm plywood: 300 mm/min; and the head moves at 6,000 mm/min between lines. Common practice. */
    public static final double CUT_MM_PER_S = 5;

    public static final double TRAVEL_MM_PER_S = 100;

    static final double DIFFUSIVITY_MM2_PER_S = 0.16;
    static final double LOST_AFTER_S = 40;
    /** J/mm left in the wood over ρ·c·h in J/(mm²·K). */
    static final double STRENGTH_K_MM = 4.0 / 3 / (6e-7 * 1600 * 3);

    private static final double STEP_MM = 1;
    private static final double FELT_WITHIN_MM = 8;
    private static final double FELT_FOR_S = 6 * LOST_AFTER_S;

    /** Lines nearer than this are one run of the beam. */
    private static final double JOINED_MM = 0.05;

    /** @param joined whether its line begins where the one before it ended */
    private record Sample(int line, double x, double y, double at, boolean joined) {}

    private CutHeat() {}

    /** The greatest rise in kelvin at which the beam arrives anywhere, lines cut in this order and direction. */
    public static double peakKelvin(List<CurvePath> inOrder) {
        Map<Long, List<Sample>> cells = new HashMap<>();
        List<Sample> samples = samples(inOrder);
        for (Sample sample : samples) {
            cells.computeIfAbsent(cell(sample.x(), sample.y(), 0, 0), c -> new ArrayList<>())
                    .add(sample);
        }
        double peak = 0;
        for (Sample here : samples) {
            double sum = 0;
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    for (Sample before : cells.getOrDefault(cell(here.x(), here.y(), dx, dy), List.of())) {
                        if (before.line() < here.line() && !goesOn(before, here)) {
                            sum += rise(before, here);
                        }
                    }
                }
            }
            peak = Math.max(peak, sum);
        }
        return peak;
    }

    private static boolean goesOn(Sample before, Sample here) {
        return here.joined()
                && before.line() == here.line() - 1
                && here.at() - before.at() <= 2 * FELT_WITHIN_MM / CUT_MM_PER_S;
    }

    private static double rise(Sample before, Sample here) {
        // a piece of line is no point: it counts as if it had spread over its own length already
        double gone = here.at() - before.at() + STEP_MM * STEP_MM / (4 * DIFFUSIVITY_MM2_PER_S);
        if (gone > FELT_FOR_S) {
            return 0;
        }
        double dx = here.x() - before.x();
        double dy = here.y() - before.y();
        double spread = 4 * DIFFUSIVITY_MM2_PER_S * gone;
        return STRENGTH_K_MM
                * STEP_MM
                / (Math.PI * spread)
                * Math.exp(-(dx * dx + dy * dy) / spread - gone / LOST_AFTER_S);
    }

    private static List<Sample> samples(List<CurvePath> inOrder) {
        List<Sample> samples = new ArrayList<>();
        double now = 0;
        Point at = Point.of(0, 0);
        for (int line = 0; line < inOrder.size(); line++) {
            double way = at.distanceTo(inOrder.get(line).start());
            now += way / TRAVEL_MM_PER_S;
            List<Point> places = evenly(inOrder.get(line), STEP_MM);
            for (Point place : places) {
                samples.add(new Sample(line, place.xMm(), place.yMm(), now, line > 0 && way <= JOINED_MM));
                now += STEP_MM / CUT_MM_PER_S;
            }
            at = inOrder.get(line).end();
        }
        return samples;
    }

    /** Places along a path, this far apart. */
    static List<Point> evenly(CurvePath path, double stepMm) {
        List<Point> flat = path.flattened(0.05);
        List<Point> places = new ArrayList<>();
        double left = stepMm / 2;
        Point from = flat.getFirst();
        for (Point to : flat.subList(1, flat.size())) {
            double length = from.distanceTo(to);
            double gone = left;
            while (gone <= length) {
                places.add(from.towards(to, gone / length));
                gone += stepMm;
            }
            left = gone - length;
            from = to;
        }
        return places;
    }

    private static long cell(double x, double y, int dx, int dy) {
        long column = (long) Math.floor(x / FELT_WITHIN_MM) + dx;
        long row = (long) Math.floor(y / FELT_WITHIN_MM) + dy;
        return column << 32 | row & 0xFFFFFFFFL;
    }

    /** Time in seconds to cut and travel in this order, at the speeds above. */
    public static double seconds(List<CurvePath> inOrder) {
        double seconds = 0;
        Point at = Point.of(0, 0);
        for (CurvePath line : inOrder) {
            seconds += at.distanceTo(line.start()) / TRAVEL_MM_PER_S + line.lengthMm() / CUT_MM_PER_S;
            at = line.end();
        }
        return seconds;
    }
}
