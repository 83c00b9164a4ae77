package puzzleworkshop.cutting.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.jobs.CutJob.State;
import puzzleworkshop.cutting.jobs.Workpiece.Film;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@Transactional
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CutJobsIT {

    private static final BoardKind CRAFT = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    @Autowired
    CutJobs jobs;

    @Autowired
    CutEnds ends;

    @Autowired
    Machines machines;

    @Autowired
    RunningTimes times;

    @Autowired
    Settings settings;

    @Autowired
    PlannedTrials planned;

    @Autowired
    JdbcClient jdbc;

    Machine machine;

    @BeforeEach
    void a_machine_and_some_orders() {
        jdbc.sql("insert into customer (name) values ('Mara')").update();
        for (int id = 7; id <= 14; id++) {
            jdbc.sql("""
                insert into customer_order (id, number, customer_id, state, quantity, width_mm, height_mm,
                    piece_columns, piece_rows, pattern_seed, cut_style, outline_kind, outline_measure_mm, kerf_mm,
                    intended_age, tray, board_material, board_grade, board_thickness_mm, rush, laser_minutes,
                    price_net, price_vat, price_gross, cost, currency, kept_price, valid_until, created_at, created_by)
                overriding system value
                select :id, 'T-' || :id, max(id), 'QUOTE', 1, 200, 300, 6, 8, 1, 'KNOBS', 'SQUARE', 0, 0.15,
                    'FROM_6', false, 'birch-ply', 'CRAFT', 3, false, 0, 0, 0, 0, 0, 'EUR', '{}', current_date, now(), 'x'
                from customer
                """).param("id", id).update();
        }
        machine = machines.save(Machine.usual("Bench laser", Currency.getInstance("EUR")));
    }

    @Test
    void a_cut_goes_from_checklist_to_trial_and_measures_the_machine() {
        CutJob job = jobs.prepare(wish(7, Workpiece.clean(CRAFT)), "Ines");
        assertThat(job.state()).isEqualTo(State.CHECKING);
        assertThat(refusal(() -> jobs.start(job.id(), "Ines"))).isEqualTo("cutting.job.unanswered");
        answerAll(job);
        assertThat(jobs.start(job.id(), "Ines").state()).isEqualTo(State.RUNNING);
        jdbc.sql("update cutting_job set started_at = started_at - interval '20 minutes'")
                .update();
        CutJob done =
                ends.finish(BookingKey.fresh(), job.id(), 2, Finding.of(Result.THROUGH, 1), Optional.empty(), "Ines");
        assertThat(done.state()).isEqualTo(State.DONE);
        assertThat(done.took().orElseThrow().value()).isBetween(19.9, 20.5);
        List<Trial> trials =
                settings.evidence(settings.forBoard(machine, CRAFT)).trials();
        assertThat(trials).hasSize(1);
        assertThat(trials.getFirst().source()).isEqualTo(Source.CUT);
        assertThat(trials.getFirst().parameters().passes()).isEqualTo(2);
        assertThat(times.ratio(machine.id()).cuts()).isZero();
        assertThat(jobs.openFor(new OrderId(7))).isEmpty();
    }

    @Test
    void a_cut_in_the_planned_passes_feeds_the_machines_ratio() {
        CutJob job = jobs.prepare(wish(7, Workpiece.clean(CRAFT)), "Ines");
        answerAll(job);
        jobs.start(job.id(), "Ines");
        double estimate = job.estimate().orElseThrow().toSeconds();
        jdbc.sql("update cutting_job set started_at = started_at - make_interval(secs => :s)")
                .param("s", estimate * 1.2)
                .update();
        ends.finish(
                BookingKey.fresh(),
                job.id(),
                job.parameters().passes(),
                Finding.of(Result.THROUGH, 1),
                Optional.empty(),
                "Ines");
        assertThat(times.ratio(machine.id()).cuts()).isEqualTo(1);
    }

    @Test
    void a_cut_far_quicker_than_its_estimate_is_asked_about_and_is_neither_evidence_nor_time_nor_cost() {
        CutJob job = jobs.prepare(wish(7, Workpiece.clean(CRAFT)), "Ines");
        answerAll(job);
        jobs.start(job.id(), "Ines");
        assertThat(job.estimate().orElseThrow().toSeconds()).isGreaterThan(20);
        jdbc.sql("update cutting_job set started_at = started_at - interval '1 second'")
                .update();
        int passes = job.parameters().passes();
        assertThat(refusal(() -> ends.finish(
                        BookingKey.fresh(), job.id(), passes, Finding.of(Result.THROUGH, 1), Optional.empty(), "Ines")))
                .isEqualTo("cutting.job.too-quick");
        assertThat(jobs.find(job.id()).orElseThrow().state()).isEqualTo(State.RUNNING);

        CutJob done = ends.finishWithoutTime(BookingKey.fresh(), job.id(), "started late", "Ines");
        assertThat(done.state()).isEqualTo(State.DONE);
        assertThat(done.trialId()).isEmpty();
        assertThat(settings.evidence(settings.forBoard(machine, CRAFT)).trials())
                .isEmpty();
        assertThat(times.ratio(machine.id()).cuts()).isZero();
        assertThat(jdbc.sql("select laser_minutes from order_took where order_id = 7")
                        .query((row, n) -> Optional.ofNullable(row.getObject(1)))
                        .single())
                .isEmpty();
    }

    @Test
    void an_order_that_was_cut_without_its_time_waits_for_no_trial_any_more() {
        planned.planFor(new OrderId(7), "2026-0007", machine, CRAFT, "Ines");
        CutJob job = jobs.prepare(wish(7, Workpiece.clean(CRAFT)), "Ines");
        answerAll(job);
        jobs.start(job.id(), "Ines");
        assertThat(planned.openFor(new OrderId(7))).isPresent();
        ends.finishWithoutTime(BookingKey.fresh(), job.id(), "started late", "Ines");
        assertThat(planned.openFor(new OrderId(7))).isEmpty();
    }

    @Test
    void skipping_needs_a_reason_and_stays_on_record() {
        CutJob job = jobs.prepare(wish(8, Workpiece.clean(CRAFT)), "Ines");
        assertThat(refusal(() -> jobs.skip(job.id(), CheckItem.MASKED, "no", "Ines")))
                .isEqualTo("cutting.job.skip.reason");
        jobs.skip(job.id(), CheckItem.MASKED, "engraved back, no print on it", "Ines");
        assertThat(jobs.find(job.id()).orElseThrow().skipped())
                .extracting(CheckAnswer::reason)
                .containsExactly("engraved back, no print on it");
        jobs.check(job.id(), CheckItem.MASKED, "Ines");
        assertThat(jobs.find(job.id()).orElseThrow().skipped()).isEmpty();
        assertThat(jdbc.sql("select count(*) from cutting_check where not done")
                        .query(Integer.class)
                        .single())
                .isOne();
    }

    @Test
    void what_must_not_be_cut_stops_the_job_with_the_reason() {
        CutJob vinyl =
                jobs.prepare(wish(9, new Workpiece(CRAFT, BoardContamination.CLEAN, Film.PVC, "Glossy vinyl")), "Ines");
        answerAll(vinyl);
        assertThat(jobs.find(vinyl.id()).orElseThrow().state()).isEqualTo(State.FORBIDDEN);
        assertThat(refusal(() -> jobs.start(vinyl.id(), "Ines"))).isEqualTo("cutting.forbidden.film.PVC");
        CutJob unknown =
                jobs.prepare(wish(10, new Workpiece(CRAFT, BoardContamination.UNKNOWN, Film.SAFE, "")), "Ines");
        answerAll(unknown);
        assertThat(refusal(() -> jobs.start(unknown.id(), "Ines"))).isEqualTo("cutting.forbidden.board.UNKNOWN");
        assertThat(jobs.prepare(wish(10, Workpiece.clean(CRAFT)), "Ines").state())
                .isEqualTo(State.READY);
    }

    @Test
    void the_database_refuses_a_forbidden_start_too() {
        CutJob glued = jobs.prepare(wish(11, new Workpiece(CRAFT, BoardContamination.WET_GLUE, Film.SAFE, "")), "Ines");
        answerAll(glued);
        assertThatThrownBy(() -> jdbc.sql("update cutting_job set started_by = 'x', started_at = now()")
                        .update())
                .hasMessageContaining("cutting_job_forbidden_material");
    }

    @Test
    void the_database_refuses_a_start_with_unanswered_checks() {
        jobs.prepare(wish(12, Workpiece.clean(CRAFT)), "Ines");
        assertThatThrownBy(() -> jdbc.sql("update cutting_job set started_by = 'x', started_at = now()")
                        .update())
                .hasMessageContaining("unanswered");
    }

    @Test
    void one_machine_cuts_one_thing_at_a_time() {
        CutJob first = jobs.prepare(wish(13, Workpiece.clean(CRAFT)), "Ines");
        CutJob second = jobs.prepare(wish(14, Workpiece.clean(CRAFT)), "Ines");
        answerAll(first);
        answerAll(second);
        jobs.start(first.id(), "Ines");
        assertThat(refusal(() -> jobs.start(second.id(), "Ines"))).isEqualTo("cutting.job.busy");
        ends.giveUp(BookingKey.fresh(), first.id(), "flame at the corner, extinguished", "Ines");
        assertThat(jobs.start(second.id(), "Ines").state()).isEqualTo(State.RUNNING);
        assertThat(times.ratio(machine.id()).cuts()).isZero();
        assertThat(refusal(() -> ends.giveUp(BookingKey.fresh(), first.id(), "again", "Ines")))
                .isEqualTo("cutting.job.ended");
    }

    @Test
    void a_cut_broken_off_is_a_trial_too_but_no_measure_of_the_machines_time() {
        CutJob job = jobs.prepare(wish(7, Workpiece.clean(CRAFT)), "Ines");
        answerAll(job);
        jobs.start(job.id(), "Ines");
        CutJob broken = ends.breakOff(
                BookingKey.fresh(),
                job.id(),
                "charred black in the first corner",
                job.parameters().passes(),
                Finding.of(Result.THROUGH, 4),
                Optional.empty(),
                "Ines");
        assertThat(broken.state()).isEqualTo(State.BROKEN_OFF);
        Trial trial =
                settings.evidence(settings.forBoard(machine, CRAFT)).trials().getLast();
        assertThat(broken.trialId()).hasValue(trial.id());
        assertThat(trial.source()).isEqualTo(Source.CUT);
        assertThat(trial.finding().charring()).isEqualTo(4);
        assertThat(times.ratio(machine.id()).cuts()).isZero();
    }

    @Test
    void a_cut_that_has_not_started_cannot_have_come_out_in_any_way() {
        CutJob job = jobs.prepare(wish(8, Workpiece.clean(CRAFT)), "Ines");
        assertThat(refusal(() -> ends.breakOff(
                        BookingKey.fresh(),
                        job.id(),
                        "no reason",
                        1,
                        Finding.of(Result.THROUGH, 1),
                        Optional.empty(),
                        "Ines")))
                .isEqualTo("cutting.job.not.started");
        assertThat(settings.evidence(settings.forBoard(machine, CRAFT)).trials())
                .isEmpty();
    }

    @Test
    void another_gap_dialled_in_must_be_checked_again_and_another_speed_changes_the_estimate() {
        CutJob job = jobs.prepare(wish(9, Workpiece.clean(CRAFT)), "Ines");
        answerAll(job);
        CutParameters slower = new CutParameters(
                Speed.mmPerSecond(job.parameters().speed().mmPerSecond() / 2),
                job.parameters().power(),
                job.parameters().passes(),
                job.parameters().airAssist(),
                job.parameters().gap());
        CutTime time = CutTime.estimate(List.of(CutTimeTest.line(300)), machine, slower);
        CutJob dialled = jobs.dial(job.id(), slower, Optional.of(time));
        assertThat(dialled.state()).isEqualTo(State.READY);
        assertThat(dialled.estimate().orElseThrow().value())
                .isGreaterThan(job.estimate().orElseThrow().value() * 1.5);
        CutParameters higher = new CutParameters(
                slower.speed(),
                slower.power(),
                slower.passes(),
                slower.airAssist(),
                slower.gap().plus(Length.mm(1)));
        assertThat(jobs.dial(job.id(), higher, Optional.of(time)).unanswered())
                .containsExactlyInAnyOrder(CheckItem.GAP_SET, CheckItem.AIR_ON);
        assertThat(refusal(() -> jobs.start(job.id(), "Ines"))).isEqualTo("cutting.job.unanswered");
        assertThatThrownBy(() -> jdbc.sql("update cutting_job set started_by = 'x', started_at = now()")
                        .update())
                .hasMessageContaining("unanswered");
    }

    private void answerAll(CutJob job) {
        for (CheckItem item : CheckItem.values()) {
            jobs.check(job.id(), item, "Ines");
        }
    }

    private CutJob.Wish wish(long order, Workpiece workpiece) {
        CutTime time =
                CutTime.estimate(List.of(CutTimeTest.line(300)), machine, CommonPractice.parametersFor(machine, CRAFT));
        return new CutJob.Wish(
                Optional.of(new OrderId(order)), "2026-" + order, machine.id(), workpiece, Optional.of(time));
    }

    private static String refusal(Runnable deed) {
        try {
            deed.run();
            return "allowed";
        } catch (Refused refused) {
            return refused.sentence().key();
        }
    }
}
