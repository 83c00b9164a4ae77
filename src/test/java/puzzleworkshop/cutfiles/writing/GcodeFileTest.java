package puzzleworkshop.cutfiles.writing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.writing.GcodeFile.Job;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter.Event;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter.Move;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.machines.BeamWords;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.support.Seeds;

@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class GcodeFileTest {

    private static final Bounds BED = new Bounds(0, 0, 400, 410);

    /**
     * What the blocks n0140 to n0230 of a sample program of the standard's first author do, those for the height left out:
     * T. R. Kramer (NIST), Circle Diamond Square Program, 26 September 1994, in inches. The machining functions that his
     * interpreter called for them are printed at the head of LinuxCNC's emc/task/canterp.cc, lines 14 to 26.
     */
    @Test
    void the_interpreter_does_what_that_of_the_standard_printed_for_its_sample_program() {
        GcodeInterpreter run = GcodeInterpreter.run("""
            G90 M9
            G20 G94
            F16.0 S3500 M3
            G0 X+0.0 Y+3.915
            G1 X+4.0
            G1 Y+3.725
            G1 X+0.0
            G1 Y+3.535
            G1 X+1.437
            M5
            M2
            """);
        double[][] printed = {{0, 3.915}, {4, 3.915}, {4, 3.725}, {0, 3.725}, {0, 3.535}, {1.437, 3.535}};
        assertThat(run.moves()).hasSize(printed.length);
        for (int i = 0; i < printed.length; i++) {
            Move move = run.moves().get(i);
            assertThat(move.to().xMm()).isEqualTo(25.4 * printed[i][0], within(1e-9));
            assertThat(move.to().yMm()).isEqualTo(25.4 * printed[i][1], within(1e-9));
            assertThat(move.rapid()).isEqualTo(i == 0);
            assertThat(move.power()).isEqualTo(3500);
            assertThat(move.feed()).isEqualTo(16 * 25.4, within(1e-9));
            assertThat(move.air()).isFalse();
        }
    }

    /**
     * One way in places and in steps, and inches changed to millimetres on the way: the worked examples of two controls that
     * follow ISO 6983 (Beckhoff Information System, TF5200 programming manual, Linear interpolation (G01), and TF5100,
     * Inch/metric dimensions; there inches are G70).
     */
    @Test
    void places_and_steps_are_one_way_and_inches_end_where_the_published_examples_say() {
        String start = "G21 G94 G90\nG0 X40 Y20\nG1 F1000 ";
        List<Move> places =
                GcodeInterpreter.run(start + "G90 X60 Y60\nX120 Y80\nM2").moves();
        List<Move> steps =
                GcodeInterpreter.run(start + "g91 x 20 Y40\nX60 y20\nM2").moves();
        assertThat(steps).isEqualTo(places);
        assertThat(places.getLast().to()).isEqualTo(Point.of(120, 80));
        List<Move> mixed = GcodeInterpreter.run("G94 G90\nG1 X2 G20 F6000\nG1 Y1\nG1 X80 Y25.4 G21\nM2")
                .moves();
        assertThat(mixed)
                .extracting(Move::to)
                .containsExactly(Point.of(50.8, 0), Point.of(50.8, 25.4), Point.of(80, 25.4));
    }

    /** NISTIR 6556, sections 3.5.3 and 3.6 (from memory of them): dwell, end, and what there is no answer to. */
    @Test
    void the_interpreter_waits_and_refuses_what_it_does_not_know() {
        assertThat(GcodeInterpreter.run("G21 G94\nM3 S100\nG4 P1.5\nM5\nM2").events())
                .contains(new Event.Dwelt(1.5, 100));
        assertThatThrownBy(() -> GcodeInterpreter.run("G21 G94\nG1 X1\nM2")).hasMessageContaining("feed");
        assertThatThrownBy(() -> GcodeInterpreter.run("G21 G5 X1\nM2")).hasMessageContaining("G5");
        assertThatThrownBy(() -> GcodeInterpreter.run("G21\n")).hasMessageContaining("end");
    }

    @Test
    void two_thousand_random_jobs_are_cut_as_planned_and_nothing_else() {
        long seed = Seeds.from(6556);
        Random dice = new Random(seed);
        for (int round = 0; round < 2000; round++) {
            Job job = job(dice);
            BeamWords words = new BeamWords(
                    dice.nextBoolean(),
                    List.of(255, 1000, 10_000).get(dice.nextInt(3)),
                    List.of("", "M7", "M8").get(dice.nextInt(3)),
                    dice.nextBoolean());
            String text = text(job, words, Purpose.CUT);
            GcodeInterpreter run = GcodeInterpreter.run(text);
            assertThat(run.beamReadyAtEnd())
                    .as("seed %d, round %d", seed, round)
                    .isFalse();
            List<Move> burning = run.moves().stream().filter(Move::beamOn).toList();
            assertThat(run.moves().stream().filter(Move::rapid)).noneMatch(Move::beamOn);
            assertThat(burning)
                    .allMatch(move -> move.power() == words.power(job.power())
                            && Math.abs(move.feed() - job.feedMmPerMinute()) < 1e-3
                            && move.dynamic() == words.dynamic()
                            && move.air() == (job.air() && !words.airOn().isEmpty()));
            assertThat(run.moves()).allMatch(move -> BED.holds(Bounds.at(move.to())));
            double length =
                    job.lines().stream().mapToDouble(CurvePath::lengthMm).sum() * job.passes();
            assertThat(burning.stream().mapToDouble(Move::length).sum())
                    .as("seed %d, round %d", seed, round)
                    .isEqualTo(length, within(length * 0.002 + 0.01));
            everyLineIsCutAsOftenAsPlanned(job, run.moves());
            assertThat(run.events().stream().filter(Event.Dwelt.class::isInstance))
                    .hasSize(job.pauseSeconds() > 0 ? job.passes() - 1 : 0)
                    .allMatch(e -> ((Event.Dwelt) e).power() == 0)
                    .as("the interpreter reads P in seconds, as the standard says; some controls want milliseconds")
                    .allMatch(e -> Math.abs(((Event.Dwelt) e).seconds()
                                    - job.pauseSeconds() * (words.secondsInDwell() ? 1 : 1000))
                            < 1e-9);
        }
    }

    @Test
    void the_time_of_the_file_is_the_estimate_within_one_in_a_hundred() {
        long seed = Seeds.from(28);
        Random dice = new Random(seed);
        Machine usual = Machine.usual("bench laser", Currency.getInstance("EUR"));
        for (int round = 0; round < 300; round++) {
            Job job = job(dice);
            CutParameters parameters = new CutParameters(
                    Speed.mmPerSecond(job.feedMmPerMinute() / 60),
                    Percent.of(80),
                    job.passes(),
                    job.air(),
                    Length.mm(3));
            Machine machine = new Machine(
                    0,
                    usual.name(),
                    usual.bed(),
                    usual.beam(),
                    new Motion(Speed.mmPerSecond(100), Speed.mmPerSecond(500), 500, Length.mm(0.02)),
                    usual.bowLimit(),
                    usual.setUp(),
                    Minutes.ofSeconds(job.pauseSeconds()),
                    usual.costs(),
                    false,
                    false);
            List<CurvePath> chords = job.lines().stream()
                    .map(line -> CurvePath.through(line.flattened(GcodeFile.TOLERANCE_MM), false))
                    .toList();
            CutTime estimate = CutTime.estimate(chords, machine, parameters);
            double seconds = estimate.running().toSeconds();
            GcodeInterpreter run = GcodeInterpreter.run(text(job, BeamWords.FOLLOWING_SPEED, Purpose.CUT));
            assertThat(GcodeClock.seconds(run, machine.motion()))
                    .as("seed %d, round %d", seed, round)
                    .isEqualTo(seconds, within(seconds * 0.01 + 0.05));
        }
    }

    /** What a person reads before the cut is worked out from the drawn lines, not from the file: within one in a hundred too. */
    @Test
    void the_time_that_is_shown_for_a_puzzle_is_that_of_its_file() {
        Machine machine = Machine.usual("bench laser", Currency.getInstance("EUR"));
        for (CutStyle style : CutStyle.values()) {
            PatternSpec spec =
                    PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 5).withStyle(style);
            CutPattern pattern = PatternMaker.make(spec);
            CutParameters parameters = new CutParameters(Speed.mmPerSecond(5), Percent.of(80), 2, true, Length.mm(3));
            double shown = CutTime.estimate(
                            new Puzzle(
                                            spec,
                                            IntendedAge.FROM_6,
                                            false,
                                            pattern.pieces().size())
                                    .cutPaths(pattern, true),
                            machine,
                            parameters)
                    .running()
                    .toSeconds();
            Job job = new Job(
                    "2026-0012",
                    pattern.plan(CutPlan.Sequence.INNER_FIRST).inOrder(),
                    300,
                    0.8,
                    2,
                    true,
                    machine.passPause().toSeconds(),
                    BED,
                    BED.grownBy(1),
                    0.1);
            GcodeInterpreter run = GcodeInterpreter.run(text(job, BeamWords.FOLLOWING_SPEED, Purpose.CUT));
            assertThat(GcodeClock.seconds(run, machine.motion()))
                    .as("%s", style)
                    .isEqualTo(shown, within(shown * 0.01));
        }
    }

    @Test
    void a_dry_run_moves_alike_and_never_readies_the_beam() {
        Job job = job(new Random(3));
        GcodeInterpreter cut = GcodeInterpreter.run(text(job, BeamWords.FOLLOWING_SPEED, Purpose.CUT));
        String dry = text(job, BeamWords.FOLLOWING_SPEED, Purpose.DRY_RUN);
        GcodeInterpreter run = GcodeInterpreter.run(dry);
        assertThat(dry).doesNotContain("M3").doesNotContain("M4").doesNotContain("M8");
        assertThat(run.moves()).noneMatch(Move::beamOn);
        assertThat(run.moves().stream().map(Move::to).toList())
                .isEqualTo(cut.moves().stream().map(Move::to).toList());
    }

    @Test
    void the_frame_goes_round_once_at_its_own_power() {
        Job job = job(new Random(5));
        Bounds round =
                job.lines().stream().map(CurvePath::bounds).reduce(Bounds::and).orElseThrow();
        CurvePath around = CurvePath.through(
                List.of(
                        Point.of(round.minX(), round.minY()),
                        Point.of(round.maxX(), round.minY()),
                        Point.of(round.maxX(), round.maxY()),
                        Point.of(round.minX(), round.maxY())),
                true);
        Job frame = new Job(job.title(), List.of(around), 3000, 0.02, 1, false, 0, BED, BED, 0.1);
        GcodeInterpreter run = GcodeInterpreter.run(text(frame, BeamWords.FOLLOWING_SPEED, Purpose.FRAME));
        Bounds all =
                job.lines().stream().map(CurvePath::bounds).reduce(Bounds::and).orElseThrow();
        List<Move> burning = run.moves().stream().filter(Move::beamOn).toList();
        assertThat(burning).hasSize(4).allMatch(move -> move.power() == 20 && move.feed() == 3000);
        assertThat(burning.stream().mapToDouble(Move::length).sum())
                .isEqualTo(2 * (all.width() + all.height()), within(0.01));
    }

    @Test
    void what_leaves_bed_or_print_is_not_written() {
        CurvePath line = CurvePath.through(List.of(Point.of(10, 10), Point.of(401, 10)), false);
        Job outside = new Job("2026-0012", List.of(line), 300, 1, 1, true, 0, BED, BED, 0.1);
        assertThatThrownBy(() -> GcodeFile.write(outside, BeamWords.CONSTANT, Purpose.DRY_RUN))
                .isInstanceOf(Refused.class);
        CurvePath edge = CurvePath.through(List.of(Point.of(10, 10), Point.of(60, 10)), false);
        Bounds print = new Bounds(5, 9.96, 70, 60);
        Job tight = new Job("2026-0012", List.of(edge), 300, 1, 1, true, 0, BED, print, 0.1);
        assertThatThrownBy(() -> GcodeFile.write(tight, BeamWords.CONSTANT, Purpose.CUT))
                .isInstanceOf(Refused.class);
    }

    /** Judge: each point of each line lies within the tolerance of what burned, once for every pass. */
    private static void everyLineIsCutAsOftenAsPlanned(Job job, List<Move> moves) {
        List<List<Move>> runs = new ArrayList<>();
        for (Move move : moves) {
            if (move.rapid()) {
                runs.add(new ArrayList<>());
            } else {
                runs.getLast().add(move);
            }
        }
        assertThat(runs).hasSize(job.lines().size() * job.passes());
        for (int i = 0; i < runs.size(); i++) {
            CurvePath line = job.lines().get(i % job.lines().size());
            List<Move> of = runs.get(i);
            assertThat(of.getFirst().from().distanceTo(line.start())).isLessThan(0.002);
            assertThat(of.getLast().to().distanceTo(line.end())).isLessThan(0.002);
            for (int s = 0; s < line.segments().size(); s++) {
                Point middle = line.at(s, 0.37);
                assertThat(of.stream()
                                .mapToDouble(move -> distance(middle, move.from(), move.to()))
                                .min()
                                .orElseThrow())
                        .isLessThan(GcodeFile.TOLERANCE_MM + 0.002);
            }
        }
    }

    private static double distance(Point p, Point a, Point b) {
        double dx = b.xMm() - a.xMm();
        double dy = b.yMm() - a.yMm();
        double squared = dx * dx + dy * dy;
        double t = squared == 0 ? 0 : Math.clamp(((p.xMm() - a.xMm()) * dx + (p.yMm() - a.yMm()) * dy) / squared, 0, 1);
        return p.distanceTo(Point.of(a.xMm() + t * dx, a.yMm() + t * dy));
    }

    private static Job job(Random dice) {
        List<CurvePath> lines = new ArrayList<>();
        int count = 1 + dice.nextInt(6);
        for (int i = 0; i < count; i++) {
            List<Segment> segments = new ArrayList<>();
            int stretches = 1 + dice.nextInt(4);
            for (int s = 0; s < stretches; s++) {
                segments.add(
                        dice.nextBoolean()
                                ? new Segment.Line(point(dice))
                                : new Segment.Cubic(point(dice), point(dice), point(dice)));
            }
            lines.add(new CurvePath(point(dice), segments, dice.nextInt(4) == 0));
        }
        return new Job(
                "2026-0012, 48 pieces (own)",
                lines,
                60 * (2 + 60 * dice.nextDouble()),
                (1 + dice.nextInt(100)) / 100.0,
                1 + dice.nextInt(3),
                dice.nextBoolean(),
                dice.nextInt(3) * 5,
                BED,
                BED,
                0.1);
    }

    private static Point point(Random dice) {
        return Point.of(5 + 390 * dice.nextDouble(), 5 + 400 * dice.nextDouble());
    }

    private static String text(Job job, BeamWords words, Purpose purpose) {
        return new String(GcodeFile.write(job, words, purpose), StandardCharsets.US_ASCII);
    }
}
