package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.MarkReading.Verdict;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.FeedUnit;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.machines.MachineControl;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.support.Seeds;

/** Readings are made from a place that the test chose, by the definition of the machine's axes, and must give it back. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MeasuringTest {

    private static final Size FINISHED = Size.mm(200, 150);
    private static final Size BED = Size.mm(400, 400);

    @Test
    void a_place_is_found_again_from_every_corner_direction_unit_and_quarter_turn() {
        Random random = new Random(Seeds.from(14));
        for (BedCorner corner : BedCorner.values()) {
            for (int way = 0; way < 4; way++) {
                for (MachineAxes.Unit unit : MachineAxes.Unit.values()) {
                    MachineAxes axes = new MachineAxes(corner, (way & 1) == 0, (way & 2) == 0, unit);
                    int turns = random.nextInt(4);
                    Similarity place = Similarity.about(
                            new Point(0, 0), 1.002, random.nextGaussian() * 0.01, 150 + random.nextInt(60), 170);
                    Measuring measured = Measuring.of(
                            print(), turns, visits(print(), turns, place, axes, 4), machine(axes), PlacingRules.USUAL);
                    assertThat(measured.reading().verdict())
                            .as("%s, %d", axes, turns)
                            .isEqualTo(Verdict.PLACED);
                    Similarity found = measured.reading().fit().place();
                    Point middle = DrawnPrint.turned(new Point(100, 75), turns);
                    assertThat(found.of(middle).distanceTo(place.of(middle))).isLessThan(1e-6);
                    assertThat(found.stretch()).isEqualTo(1.002, within(1e-9));
                    assertThat(measured.followed()).isTrue();
                }
            }
        }
    }

    @Test
    void a_direction_of_y_set_wrong_is_said_as_mirrored_by_three_marks() {
        MachineAxes told = MachineAxes.USUAL;
        MachineAxes truly = new MachineAxes(BedCorner.FRONT_LEFT, true, false, MachineAxes.Unit.MM);
        Similarity place = Similarity.about(new Point(0, 0), 1, 0.005, 100, 120);
        Measuring measured =
                Measuring.of(print(), 0, visits(print(), 0, place, truly, 3), machine(told), PlacingRules.USUAL);
        assertThat(measured.reading().verdict()).isEqualTo(Verdict.MIRRORED);
        assertThat(measured.said().key()).isEqualTo("placing.said.MIRRORED");
        assertThat(measured.proof()).isEmpty();
    }

    @Test
    void the_misread_mark_is_named_by_its_number_on_the_print() {
        Similarity place = Similarity.about(new Point(0, 0), 1, 0.005, 100, 120);
        List<MarkVisit> visits = visits(print(), 0, place, MachineAxes.USUAL, 4);
        MarkVisit third = visits.get(2);
        visits.set(2, new MarkVisit(third.mark(), third.drawn(), third.shownX() + 10, third.shownY()));
        Measuring measured = Measuring.of(print(), 0, visits, machine(MachineAxes.USUAL), PlacingRules.USUAL);
        assertThat(measured.reading().verdict()).isEqualTo(Verdict.ONE_MISREAD);
        assertThat(measured.said().arguments()).containsExactly("3");
    }

    @Test
    void one_mark_alone_is_refused() {
        List<MarkVisit> one = visits(print(), 0, Similarity.NONE, MachineAxes.USUAL, 1);
        assertThatThrownBy(() -> Measuring.of(print(), 0, one, machine(MachineAxes.USUAL), PlacingRules.USUAL))
                .isInstanceOf(Refused.class);
    }

    @Test
    void marks_too_near_to_each_other_and_numbers_no_machine_shows_are_refused_in_words() {
        DrawnPrint little = print(Size.mm(15, 40));
        List<MarkVisit> four = visits(little, 0, Similarity.NONE, MachineAxes.USUAL, 4);
        assertThat(refusal(little, four.subList(0, 2)))
                .as("18 mm apart, which a piece of 15 mm made again has")
                .isEqualTo("placing.too-near");
        MarkVisit first = four.getFirst();
        assertThat(refusal(little, List.of(new MarkVisit(1, first.drawn(), 1e307, -1e307), four.get(2))))
                .isEqualTo("placing.far-away");
        Similarity place = Similarity.about(new Point(0, 0), 1, 0.02, 100, 120);
        Measuring all = Measuring.of(
                little,
                0,
                visits(little, 0, place, MachineAxes.USUAL, 4),
                machine(MachineAxes.USUAL),
                PlacingRules.USUAL);
        assertThat(all.reading().fit().place().turn())
                .as("all four are far enough apart")
                .isEqualTo(0.02, within(1e-9));
    }

    private static String refusal(DrawnPrint print, List<MarkVisit> visits) {
        return catchThrowableOfType(
                        Refused.class,
                        () -> Measuring.of(print, 0, visits, machine(MachineAxes.USUAL), PlacingRules.USUAL))
                .sentence()
                .key();
    }

    /**
     * Four marks at the corners of a rectangle, reading 0.3 mm: at a corner of the cut the deviation is 0.3·√(1/4 + d²/S), its
     * 99.9 % radius √(−2·ln 0.001) = 3.717 times that (Rayleigh's distribution, any textbook); the rest is subtraction.
     */
    @Test
    void what_is_left_of_the_overhang_is_what_a_hand_calculation_leaves() {
        Similarity place = Similarity.about(new Point(0, 0), 1, 0, 100, 120);
        Measuring measured = Measuring.of(
                print(),
                0,
                visits(print(), 0, place, MachineAxes.USUAL, 4),
                machine(MachineAxes.USUAL),
                PlacingRules.USUAL);
        double d = Math.hypot(100, 75);
        double s = 4 * (101.5 * 101.5 + 76.5 * 76.5);
        double unsure = 0.3 * Math.sqrt(0.25 + d * d / s) * 3.7169;
        double left = 3 - 0.15 / 2 - unsure - 0.05;
        assertThat(measured.proof().orElseThrow().spare()).isEqualTo(left, within(0.015));
    }

    @Test
    void a_print_shrunk_more_than_is_followed_is_cut_as_drawn_and_leaves_less() {
        Similarity little = Similarity.about(new Point(0, 0), 0.996, 0, 100, 120);
        Similarity much = Similarity.about(new Point(0, 0), 0.992, 0, 100, 120);
        Measuring followed = measured(little);
        Measuring asDrawn = measured(much);
        assertThat(followed.followed()).isTrue();
        assertThat(asDrawn.followed()).isFalse();
        assertThat(asDrawn.proof().orElseThrow().cut().stretch()).isEqualTo(1, within(1e-9));
        assertThat(asDrawn.proof().orElseThrow().spare())
                .isLessThan(followed.proof().orElseThrow().spare());
    }

    private static Measuring measured(Similarity place) {
        return Measuring.of(
                print(),
                0,
                visits(print(), 0, place, MachineAxes.USUAL, 4),
                machine(MachineAxes.USUAL),
                PlacingRules.USUAL);
    }

    static DrawnPrint print() {
        return print(FINISHED);
    }

    static DrawnPrint print(Size size) {
        double w = size.width().mm();
        double h = size.height().mm();
        CurvePath outline =
                CurvePath.through(List.of(new Point(0, 0), new Point(w, 0), new Point(w, h), new Point(0, h)), true);
        CurvePath inner =
                CurvePath.through(List.of(new Point(w / 2, 0), new Point(0.45 * w, h / 2), new Point(w / 2, h)), false);
        return new DrawnPrint(
                size,
                Length.mm(3),
                Crosses.USUAL.on(size),
                CutPlan.of("2026-0147", List.of(inner), List.of(outline), CutPlan.Sequence.INNER_FIRST));
    }

    static Machine machine(MachineAxes axes) {
        return Machine.usual("Laser", Currency.getInstance("EUR"))
                .withControl(new MachineControl(
                        axes, FeedUnit.MM_PER_MINUTE, true, MachineControl.USUAL.words(), Percent.of(1)));
    }

    /** What the machine would show with its head on the marks of a print at a place on the bed. */
    static List<MarkVisit> visits(DrawnPrint print, int turns, Similarity place, MachineAxes axes, int count) {
        AffineTransform toMachine = axes.toMachine(BED);
        List<MarkVisit> visits = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point drawn = print.marks().get(i);
            Point bed = place.of(DrawnPrint.turned(drawn, turns));
            Point shown = DrawnPrint.moved(bed, toMachine);
            double inUnit = axes.unit().inMm();
            visits.add(new MarkVisit(i + 1, drawn, shown.xMm() / inUnit, shown.yMm() / inUnit));
        }
        return visits;
    }
}
