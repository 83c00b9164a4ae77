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
 * Heat in Solids, 2nd ed., 1959, §10.3 with loss from the faces; from memory), summed over what was cut before on other lines, in earlier passes too. What the
 * beam's own line leaves is the same in every order and left out; a line that begins where the one before ended goes on as
 * that line, round a corner, and what was cut just before the corner is left out likewise.
 *
 * <p>Wood: density 600 kg/m³, specific heat 1,600 J/(kg·K), diffusivity 0.16 mm²/s (Wood Handbook, FPL-GTR-282, ch. 4;
 * from memory). A third of 4 J/mm stays in the wood, and heat is lost in 40 s (35 W/(m²·K) on either face under air assist):
 * common practice. So the figure compares orders; it is no measured temperature.
 *
 * @param peakKelvin the greatest rise at which the beam arrives anywhere
 * @param soonestSeconds after which the beam comes back at the earliest to where it cut another line: the time that heat has
 *     to pass; infinite where no line meets another
 */
public record CutHeat(double peakKelvin, double soonestSeconds) {

    static final double DIFFUSIVITY_MM2_PER_S = 0.16;
    static final double LOST_AFTER_S = 40;
    private static final double STAYS_IN_WOOD = 1.0 / 3;
    private static final double WOOD_J_PER_MM3_K = 6e-7 * 1600;

    private static final double STEP_MM = 1;
    private static final double FELT_WITHIN_MM = 8;
    private static final double FELT_FOR_S = 6 * LOST_AFTER_S;

    /** Lines nearer than this are one run of the beam. */
    private static final double JOINED_MM = 0.05;

    /** Places nearer than this are the same place on two lines. */
    private static final double SAME_PLACE_MM = 4;

    /** @param joined whether its line begins where the one before it ended */
    private record Sample(int pass, int line, double x, double y, double at, boolean joined) {}

    /** Lines cut in this order and direction; each pass goes over all of them. */
    public static CutHeat of(List<CurvePath> inOrder, CutPace pace) {
        Map<Long, List<Sample>> cells = new HashMap<>();
        List<Sample> samples = samples(inOrder, pace, passesFelt(inOrder, pace));
        for (Sample sample : samples) {
            cells.computeIfAbsent(cell(sample.x(), sample.y(), 0, 0), c -> new ArrayList<>())
                    .add(sample);
        }
        double peak = 0;
        double soonest = Double.POSITIVE_INFINITY;
        int last = samples.isEmpty() ? 0 : samples.getLast().pass();
        for (Sample here : samples) {
            if (here.pass() < last) {
                continue; // the last pass finds all that the one before it found, and what that left
            }
            double sum = 0;
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    for (Sample before : cells.getOrDefault(cell(here.x(), here.y(), dx, dy), List.of())) {
                        if (before.at() < here.at() && before.line() != here.line() && !goesOn(before, here, pace)) {
                            sum += rise(before, here);
                            if (Math.hypot(here.x() - before.x(), here.y() - before.y()) <= SAME_PLACE_MM) {
                                soonest = Math.min(soonest, here.at() - before.at());
                            }
                        }
                    }
                }
            }
            peak = Math.max(peak, sum);
        }
        return new CutHeat(peak * strength(pace), soonest);
    }

    /** J/mm left in the wood over ρ·c·h in J/(mm²·K). */
    private static double strength(CutPace pace) {
        return STAYS_IN_WOOD * pace.joulesPerMm() / (WOOD_J_PER_MM3_K * pace.thicknessMm());
    }

    private static boolean goesOn(Sample before, Sample here, CutPace pace) {
        return here.joined()
                && before.pass() == here.pass()
                && before.line() == here.line() - 1
                && here.at() - before.at() <= 2 * FELT_WITHIN_MM / pace.cutMmPerS();
    }

    /** For each kelvin and millimetre of strength. */
    private static double rise(Sample before, Sample here) {
        // a piece of line is no point: it counts as if it had spread over its own length already
        double gone = here.at() - before.at() + STEP_MM * STEP_MM / (4 * DIFFUSIVITY_MM2_PER_S);
        if (gone > FELT_FOR_S) {
            return 0;
        }
        double dx = here.x() - before.x();
        double dy = here.y() - before.y();
        double spread = 4 * DIFFUSIVITY_MM2_PER_S * gone;
        return STEP_MM / (Math.PI * spread) * Math.exp(-(dx * dx + dy * dy) / spread - gone / LOST_AFTER_S);
    }

    /** After so many passes it gets no warmer: what was left before is gone. */
    private static int passesFelt(List<CurvePath> inOrder, CutPace pace) {
        double pass = seconds(inOrder, pace) + pace.pauseS();
        return (int) Math.min(pace.passes(), 1 + Math.ceil(FELT_FOR_S / Math.max(1, pass)));
    }

    private static List<Sample> samples(List<CurvePath> inOrder, CutPace pace, int passes) {
        List<Sample> samples = new ArrayList<>();
        List<List<Point>> places =
                inOrder.stream().map(line -> evenly(line, STEP_MM)).toList();
        double now = 0;
        Point at = Point.of(0, 0);
        for (int pass = 0; pass < passes; pass++) {
            for (int line = 0; line < inOrder.size(); line++) {
                double way = at.distanceTo(inOrder.get(line).start());
                now += way / pace.travelMmPerS();
                boolean joined = line > 0 && way <= JOINED_MM;
                for (Point place : places.get(line)) {
                    samples.add(new Sample(pass, line, place.xMm(), place.yMm(), now, joined));
                    now += STEP_MM / pace.cutMmPerS();
                }
                at = inOrder.get(line).end();
            }
            now += pace.pauseS();
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

    /** Time in seconds to cut and travel once in this order. */
    public static double seconds(List<CurvePath> inOrder, CutPace pace) {
        double seconds = 0;
        Point at = Point.of(0, 0);
        for (CurvePath line : inOrder) {
            seconds += at.distanceTo(line.start()) / pace.travelMmPerS() + line.lengthMm() / pace.cutMmPerS();
            at = line.end();
        }
        return seconds;
    }
}
