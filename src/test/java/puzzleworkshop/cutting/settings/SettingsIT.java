package puzzleworkshop.cutting.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

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
import puzzleworkshop.artwork.CameraPicture;
import puzzleworkshop.artwork.PhotoIntakeIT;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.trials.SimulatedBoards;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.WearPart;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@Transactional
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SettingsIT {

    private static final Currency EUR = Currency.getInstance("EUR");
    private static final BoardKind CRAFT = new BoardKind("BIRCH", "CRAFT", Length.mm(3));

    @Autowired
    Machines machines;

    @Autowired
    Settings settings;

    @Autowired
    JdbcClient jdbc;

    Machine machine;

    @BeforeEach
    void a_machine() {
        machine = machines.save(Machine.usual("Bench laser", EUR));
    }

    @Test
    void a_machine_comes_back_as_it_was_saved_and_the_first_is_the_standard_one() {
        MachineCosts costs = new MachineCosts(
                Money.of("900", "EUR"),
                Money.of("100", "EUR"),
                4_000,
                0.18,
                Money.of("60", "EUR"),
                400,
                List.of(new WearPart("lens", Money.of("35", "EUR"), 300)));
        Machine changed = new Machine(
                machine.id(),
                "Bench laser 2",
                machine.bed(),
                machine.beam(),
                machine.motion(),
                Length.mm(0.8),
                machine.setUp(),
                machine.passPause(),
                costs,
                true,
                false);
        Machine saved = machines.save(changed);
        assertThat(saved.costs().price().sameAs(costs.price())).isTrue();
        assertThat(saved.costs().wearParts()).hasSize(1);
        assertThat(saved.bowLimit()).isEqualTo(Length.mm(0.8));
        assertThat(saved.motion()).isEqualTo(machine.motion());
        assertThat(machines.standard()).contains(saved);
    }

    @Test
    void two_machines_have_two_names_and_only_one_is_the_standard() {
        assertThatThrownBy(() -> machines.save(Machine.usual("bench LASER", EUR)))
                .isInstanceOf(Refused.class);
        Machine second = machines.save(Machine.usual("Big laser", EUR));
        assertThat(second.standard()).isFalse();
        machines.makeStandard(second.id());
        assertThat(machines.standard().map(Machine::name)).contains("Big laser");
        assertThatThrownBy(() -> machines.retire(second.id())).isInstanceOf(Refused.class);
        machines.retire(machine.id());
        assertThat(machines.inUse()).extracting(Machine::name).containsExactly("Big laser");
    }

    /** 20 W, 100 %, 300 mm/min, one pass is 4 J/mm: by definition; the operating point is common practice. */
    @Test
    void a_board_never_cut_before_says_what_its_first_trial_says_which_is_a_little_more_than_common_practice() {
        CutParameters usual = CommonPractice.parametersFor(machine, CRAFT);
        assertThat(usual.lineEnergy(machine.beam())).isCloseTo(4.0, within(1e-9));
        assertThat(usual.speed().toMmPerMinute()).isCloseTo(300, within(1e-9));
        CutSetting setting = settings.forBoard(machine, "BIRCH", "CRAFT", Length.mm(3));
        assertThat(setting.state()).isEqualTo(SettingState.UNTRIED);
        assertThat(setting.parameters())
                .isEqualTo(settings.nextTry(setting).orElseThrow().parameters());
        assertThat(setting.lineEnergy()).isBetween(4.0, 5.0);
        assertThat(setting.passes()).isEqualTo(1);
        assertThat(settings.of(machine)).isEmpty();
        assertThat(settings.add(machine, CRAFT).parameters())
                .as("on the list of the machine as well")
                .isEqualTo(setting.parameters());
    }

    @Test
    void good_trials_prove_a_setting_and_become_what_is_dialled_in() {
        for (int i = 0; i < 12 && !settings.forBoard(machine, CRAFT).isProven(); i++) {
            CutSetting now = settings.forBoard(machine, CRAFT);
            NextTry next = settings.nextTry(now).orElseThrow();
            Finding seen = Finding.of(next.lineEnergy() > 4.4 ? Result.THROUGH : Result.NOT_THROUGH, 1);
            settings.record(
                    BookingKey.fresh(), machine, CRAFT, next.parameters(), seen, Source.TRY, "Ines", Optional.empty());
        }
        CutSetting proven = settings.forBoard(machine, CRAFT);
        assertThat(proven.state()).isEqualTo(SettingState.PROVEN);
        assertThat(proven.lineEnergy()).isGreaterThan(4.4);
        assertThat(settings.nextTry(proven)).isEmpty();
        assertThat(settings.of(machine)).containsExactly(proven);
        assertThat(settings.evidence(proven).trials().getLast().by()).isEqualTo("Ines");
    }

    /** Until December 2026 a board began with common practice, and nothing was written down when trials proved just that. */
    @Test
    void what_was_proven_by_trials_of_an_older_version_stays_as_it_was() {
        CutParameters usual = CommonPractice.parametersFor(machine, CRAFT);
        for (int i = 0; i < TrialEvidence.ROW_THAT_PROVES; i++) {
            settings.record(
                    BookingKey.fresh(),
                    machine,
                    CRAFT,
                    usual,
                    Finding.of(Result.THROUGH, 1),
                    Source.TRY,
                    "Ines",
                    Optional.empty());
        }
        CutSetting now = settings.forBoard(machine, CRAFT);
        assertThat(now.parameters()).isEqualTo(usual);
        jdbc.sql("alter table cutting_setting_choice disable trigger user").update();
        jdbc.sql("delete from cutting_setting_choice where setting_id = :id")
                .param("id", now.id())
                .update();
        jdbc.sql("alter table cutting_setting_choice enable trigger user").update();
        assertThat(settings.forBoard(machine, CRAFT)).isEqualTo(now);
        assertThat(settings.forBoard(machine, CRAFT).state()).isEqualTo(SettingState.PROVEN);
    }

    @Test
    void a_first_trial_that_fails_leaves_the_board_with_what_was_begun_with() {
        CutParameters begun = settings.forBoard(machine, CRAFT).parameters();
        settings.record(
                BookingKey.fresh(),
                machine,
                CRAFT,
                begun,
                Finding.of(Result.NOT_THROUGH, 1),
                Source.TRY,
                "Ines",
                Optional.empty());
        assertThat(settings.forBoard(machine, CRAFT).parameters()).isEqualTo(begun);
    }

    @Test
    void a_photo_is_kept_beside_its_trial() {
        CutParameters used = settings.forBoard(machine, CRAFT).parameters();
        TrialPhoto photo = TrialPhoto.of(CameraPicture.jpeg(400, 3)).orElseThrow();
        Trial trial = settings.record(
                BookingKey.fresh(),
                machine,
                CRAFT,
                used,
                SimulatedBoards.finding(Result.PARTLY, 1, 3.4),
                Source.TRY,
                "Ines",
                Optional.of(photo));
        assertThat(trial.hasPhoto()).isTrue();
        assertThat(trial.finding().gapMeasured()).contains(Length.mm(3.4));
        PhotoIntakeIT.requireUprightWithoutTraces(
                settings.photo(trial.id()).orElseThrow().bytes());
        assertThatThrownBy(() -> settings.record(
                        BookingKey.fresh(),
                        machine,
                        CRAFT,
                        used,
                        Finding.of(Result.PARTLY, 1),
                        Source.TRY,
                        "Ines",
                        Optional.of(new TrialPhoto("image/png", new byte[] {1}))))
                .isInstanceOf(Refused.class);
    }

    @Test
    void speeds_beyond_the_machine_are_refused_in_a_sentence() {
        CutParameters mixedUp = new CutParameters(Speed.mmPerSecond(300), Percent.of(100), 1, true, Length.mm(3));
        assertThatThrownBy(() -> settings.choose(machine, CRAFT, mixedUp, "Ines"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("cutting.setting.too.fast"));
    }

    @Test
    void the_database_keeps_trials_as_they_were_written() {
        CutParameters used = settings.forBoard(machine, CRAFT).parameters();
        settings.record(
                BookingKey.fresh(),
                machine,
                CRAFT,
                used,
                Finding.of(Result.THROUGH, 1),
                Source.TRY,
                "Ines",
                Optional.empty());
        assertThatThrownBy(
                        () -> jdbc.sql("update cutting_trial set charring = 0").update())
                .hasMessageContaining("only added");
    }
}
