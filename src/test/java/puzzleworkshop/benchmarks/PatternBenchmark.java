package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.BruteForceLikeness;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.JtsLines;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.RandomSpecs;
import puzzleworkshop.pattern.mesh.KnobRoom;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * How long a puzzle of 2,000 pieces takes to draw and verify (median of five after a warm-up), how many
 * pairs of inner edges a solver could take for each other, by brute force; how warm the wood is where the beam arrives; how
 * many edges can differ at all; then whether 10,000 random patterns hold a crossing or a line drawn twice in the eyes of JTS.
 */
public final class PatternBenchmark implements Benchmark {

    private static final int RANDOM_PATTERNS = 10_000;
    private static final double ALIKE_MM = 0.2;
    private static final double LOOKED_TO_MM = 0.25;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long SEED = 20261125;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        double[] seconds = new double[5];
        double[] cpu = new double[5];
        PatternMaker.make(large(0));
        for (int i = 0; i < seconds.length; i++) {
            long started = System.nanoTime();
            long worked = THREADS.getCurrentThreadCpuTime();
            CutPattern pattern = PatternMaker.make(large(i + 1));
            cpu[i] = (THREADS.getCurrentThreadCpuTime() - worked) / 1e9;
            seconds[i] = (System.nanoTime() - started) / 1e9;
            out.printf(
                    "2,000 pieces, seed %d: %.3f s (%.3f s of one processor), %d edges compared, %d redrawn, smallest"
                            + " gap %.3f mm of %.3f allowed%n",
                    i + 1,
                    seconds[i],
                    cpu[i],
                    pattern.verified().edges(),
                    pattern.verified().redrawn(),
                    pattern.verified().smallestGapMm(),
                    pattern.verified().closestAllowedMm());
        }
        Arrays.sort(seconds);
        Arrays.sort(cpu);

        Likeness likeness = likeness(out);
        Heat heat = heat(out);
        KnobRoom room = room(out);
        Random random = new Random(SEED);
        int crossings = 0;
        int doubled = 0;
        long pieces = 0;
        long redrawn = 0;
        for (int i = 0; i < RANDOM_PATTERNS; i++) {
            CutPattern pattern = PatternMaker.make(RandomSpecs.next(random));
            crossings += JtsLines.crossings(pattern);
            doubled += JtsLines.doubled(pattern);
            pieces += pattern.pieces().size();
            redrawn += pattern.verified().redrawn();
            if ((i + 1) % 1000 == 0) {
                out.printf(
                        "%,d random patterns, %,d pieces, %,d edges redrawn: %d with a crossing, %d stretches"
                                + " doubled%n",
                        i + 1, pieces, redrawn, crossings, doubled);
            }
        }
        return String.format(
                "pieces=%d seconds=%.3f cpu_s=%.3f crossings=%d doubled=%d alike=%d closest_mm=%.3f"
                        + " room_at_least=%.0f room_at_most=%.0f room_needed=%d heat_before=%.1f heat_after=%.1f"
                        + " time_more_percent=%.2f",
                2000,
                seconds[2],
                cpu[2],
                crossings,
                doubled,
                likeness.alike(),
                likeness.closestMm(),
                room.atLeast(),
                room.atMost(),
                room.needed(),
                heat.before(),
                heat.after(),
                100 * heat.timeMore());
    }

    /** How many edges can differ, for 1,000 pieces of some sizes; told of is the style with the least room at 20 mm. */
    private static KnobRoom room(PrintStream out) {
        KnobRoom least = null;
        for (int side : new int[] {12, 20, 30}) {
            for (CutStyle style : CutStyle.values()) {
                KnobRoom room = KnobRoom.of(PatternSpec.of(Size.mm(40 * side, 25 * side), new PieceGrid(40, 25), SEED)
                        .withStyle(style));
                out.printf(
                        "pieces of %d mm, %s: about %.2g to %.2g edges differ by %.2f mm or more, %.1f ways to differ;"
                                + " %,d needed for 1,000 pieces%n",
                        side, style, room.atLeast(), room.atMost(), room.distanceMm(), room.ways(), room.needed());
                if (side == 20 && (least == null || room.atLeast() < least.atLeast())) {
                    least = room;
                }
            }
        }
        return least;
    }

    /** Kelvin that other lines have left where the beam arrives: the greatest of all sizes and styles tried. */
    private record Heat(double before, double after, double timeMore) {}

    private static Heat heat(PrintStream out) {
        double before = 0;
        double after = 0;
        double more = 0;
        for (PatternSpec spec : List.of(
                PatternSpec.of(Size.mm(264, 198), new PieceGrid(8, 6), SEED),
                PatternSpec.of(Size.mm(400, 280), new PieceGrid(20, 14), SEED),
                PatternSpec.of(Size.mm(800, 500), new PieceGrid(40, 25), SEED))) {
            for (CutStyle style : CutStyle.values()) {
                CutPattern pattern = PatternMaker.make(spec.withStyle(style));
                List<CurvePath> shortest = CutPlan.beforeCooling(pattern.inner(), List.of(pattern.outline()));
                List<CurvePath> cooled = CutPlan.of(
                                "cooled", pattern.inner(), List.of(pattern.outline()), CutPlan.Sequence.INNER_FIRST)
                        .inOrder();
                double was = CutHeat.of(shortest, CutPace.USUAL).peakKelvin();
                double is = CutHeat.of(cooled, CutPace.USUAL).peakKelvin();
                out.printf(
                        "%,d pieces, %s: the beam arrives on wood up to %.1f K warmer from other lines, %.1f K in our"
                                + " order; time %+.1f %%%n",
                        pattern.pieces().size(),
                        style,
                        was,
                        is,
                        100 * (CutHeat.seconds(cooled, CutPace.USUAL) / CutHeat.seconds(shortest, CutPace.USUAL) - 1));
                CutPace twoPasses = new CutPace(15, 100, 2, 10, 1.4, 3);
                out.printf(
                        "  in two passes at 900 mm/min: %.1f K, %.1f K in our order, back after %.0f s at the"
                                + " earliest%n",
                        CutHeat.of(shortest, twoPasses).peakKelvin(),
                        CutHeat.of(ours(pattern, twoPasses), twoPasses).peakKelvin(),
                        CutHeat.of(ours(pattern, twoPasses), twoPasses).soonestSeconds());
                more = Math.max(
                        more, CutHeat.seconds(cooled, CutPace.USUAL) / CutHeat.seconds(shortest, CutPace.USUAL) - 1);
                before = Math.max(before, was);
                after = Math.max(after, is);
            }
        }
        return new Heat(before, after, more);
    }

    private static List<CurvePath> ours(CutPattern pattern, CutPace pace) {
        return pattern.plan(CutPlan.Sequence.INNER_FIRST, pace).inOrder();
    }

    private record Likeness(int alike, double closestMm) {}

    /** Every pair of inner edges of 1,000 pieces of 20 mm in every style, by brute force; for comparison the first design. */
    private static Likeness likeness(PrintStream out) {
        int alike = 0;
        double closest = LOOKED_TO_MM;
        PatternSpec plain = PatternSpec.of(Size.mm(800, 500), new PieceGrid(40, 25), SEED);
        for (CutStyle style : CutStyle.values()) {
            BruteForceLikeness.Found found = likeness(out, plain.withStyle(style));
            alike += found.alike();
            closest = Math.min(closest, found.closestMm());
        }
        likeness(
                out,
                PatternSpec.of(Size.mm(400, 280), new PieceGrid(20, 14), SEED).withDesign(PatternSpec.FIRST_DESIGN));
        return new Likeness(alike, closest);
    }

    private static BruteForceLikeness.Found likeness(PrintStream out, PatternSpec spec) {
        CutPattern pattern = PatternMaker.make(spec);
        BruteForceLikeness.Found found =
                BruteForceLikeness.of(pattern.inner(), pattern.outline(), ALIKE_MM, LOOKED_TO_MM);
        out.printf(
                "%,d pieces, %s, design %d: of %,d inner edges %d pairs alike within %.1f mm, closest %.3f mm%n",
                pattern.pieces().size(),
                spec.style(),
                spec.design(),
                found.edges(),
                found.alike(),
                ALIKE_MM,
                found.closestMm());
        return found;
    }

    private static PatternSpec large(long seed) {
        return PatternSpec.of(Size.mm(1000, 700), new PieceGrid(50, 40), seed);
    }
}
