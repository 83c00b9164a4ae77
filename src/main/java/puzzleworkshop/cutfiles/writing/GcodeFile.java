package puzzleworkshop.cutfiles.writing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.BeamWords;
import puzzleworkshop.measure.Refused;

/**
 * Lines written as G-code, so that speed, power, passes and pauses reach the machine without being typed. Words as in ISO
 * 6983-1 and in Kramer, Proctor and Messina, The NIST RS274NGC Interpreter, NISTIR 6556 (2000): G0, G1, G4, G17, G21, G90,
 * G94, F in mm/min, S, M3, M4, M5, M7, M8, M9, M2. Feed and S act before the move of their block (NISTIR 6556, order of
 * execution), so a move with the beam off carries S0 itself.
 *
 * <p>Curves become chords within {@link #TOLERANCE_MM}. Every block stays inside the bed and every line inside the print,
 * or nothing is written. The beam is off (M5) at the start, in every pause and at the end; a dry run never readies it.
 */
public final class GcodeFile {

    public static final double TOLERANCE_MM = 0.01;
    /** Rounding of the written coordinates. */
    private static final double ROUNDING_MM = 0.0006;

    private GcodeFile() {}

    /** What a file is for. */
    public enum Purpose {
        CUT,
        /** Goes round the frame at low power, for the check that it lies inside the print. */
        FRAME,
        /** All moves, the beam never readied. */
        DRY_RUN
    }

    /**
     * What is to be done.
     *
     * @param title one line; other than plain letters is replaced
     * @param lines in cutting order, in the machine's own coordinates, mm
     * @param feedMmPerMinute with the beam on
     * @param power share of full power, above 0 to 1
     * @param passes how often all lines are gone over
     * @param air whether air blows
     * @param pauseSeconds between passes, beam and air as they were but the beam off
     * @param bed what the machine reaches, in the same coordinates
     * @param print what the lines must stay in, kerf included; the bed where there is no print
     * @param kerf width of the cut, mm
     */
    public record Job(
            String title,
            List<CurvePath> lines,
            double feedMmPerMinute,
            double power,
            int passes,
            boolean air,
            double pauseSeconds,
            Bounds bed,
            Bounds print,
            double kerf) {

        public Job {
            lines = List.copyOf(lines);
            if (lines.isEmpty()) {
                throw new IllegalArgumentException("There is nothing to cut");
            }
            if (!(feedMmPerMinute > 0) || !(power > 0) || power > 1 || passes < 1 || !(pauseSeconds >= 0)) {
                throw new IllegalArgumentException("Feed, power, passes and pause must be possible");
            }
        }
    }

    /**
     * @throws Refused when a line would leave the bed or the print
     */
    public static byte[] write(Job job, BeamWords words, Purpose purpose) {
        requireInside(job);
        boolean dry = purpose == Purpose.DRY_RUN;
        StringBuilder text = new StringBuilder();
        text.append("(").append(comment(job.title)).append(")\n");
        text.append("(")
                .append(purpose.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .append(", ");
        text.append(plain(job.feedMmPerMinute, 1)).append(" mm/min, ");
        text.append(dry ? "beam off" : plain(job.power * 100, 1) + " percent of full power");
        text.append(", ")
                .append(job.passes)
                .append(job.passes == 1 ? " pass" : " passes")
                .append(")\n");
        text.append("G21 G90 G94 G17\n");
        text.append("M5 S0\n");
        if (job.air && !dry && !words.airOn().isEmpty()) {
            text.append(words.airOn()).append('\n');
        }
        int power = dry ? 0 : words.power(job.power);
        String feed = " F" + plain(job.feedMmPerMinute, 3);
        for (int pass = 1; pass <= job.passes; pass++) {
            if (pass > 1 && job.pauseSeconds > 0) {
                double dwell = words.secondsInDwell() ? job.pauseSeconds : job.pauseSeconds * 1000;
                text.append("M5\nG4 P").append(plain(dwell, 3)).append('\n');
            }
            text.append("(pass ").append(pass).append(" of ").append(job.passes).append(")\n");
            if (!dry && (pass == 1 || job.pauseSeconds > 0)) {
                text.append(words.beamReady()).append(" S0\n");
            }
            for (CurvePath line : job.lines) {
                List<Point> points = rounded(line.flattened(TOLERANCE_MM));
                text.append("G0").append(place(points.getFirst())).append(" S0\n");
                text.append("G1")
                        .append(place(points.get(1)))
                        .append(feed)
                        .append(" S")
                        .append(power)
                        .append('\n');
                for (Point point : points.subList(2, points.size())) {
                    text.append("G1").append(place(point)).append('\n');
                }
            }
            // the last move of a pass leaves no power standing for whatever comes next
            text.append("S0\n");
        }
        text.append("M5 S0\nM9\nM2\n");
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static void requireInside(Job job) {
        for (CurvePath line : job.lines) {
            Bounds bounds = line.bounds();
            if (!job.bed.grownBy(ROUNDING_MM).holds(bounds)) {
                throw new Refused("cutfiles.gcode.outside-bed", job.title);
            }
            if (!job.print.grownBy(ROUNDING_MM).holds(bounds.grownBy(job.kerf / 2))) {
                throw new Refused("cutfiles.gcode.outside-print", job.title);
            }
        }
    }

    /** To thousandths of a millimetre, without points that then coincide. */
    private static List<Point> rounded(List<Point> points) {
        List<Point> rounded = new ArrayList<>(points.size());
        for (Point p : points) {
            Point r = Point.of(Math.round(p.xMm() * 1000) / 1000.0, Math.round(p.yMm() * 1000) / 1000.0);
            if (rounded.isEmpty() || !rounded.getLast().equals(r)) {
                rounded.add(r);
            }
        }
        if (rounded.size() == 1) {
            rounded.add(rounded.getFirst());
        }
        return rounded;
    }

    private static String place(Point p) {
        return " X" + plain(p.xMm(), 3) + " Y" + plain(p.yMm(), 3);
    }

    private static String plain(double value, int digits) {
        BigDecimal number =
                BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).stripTrailingZeros();
        return number.signum() == 0 ? "0" : number.toPlainString();
    }

    /** A comment ends at its bracket and holds plain letters only. */
    private static String comment(String title) {
        return title.replaceAll("[^A-Za-z0-9 .,:_/+-]", "-");
    }
}
