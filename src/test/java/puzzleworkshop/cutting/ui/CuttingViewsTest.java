package puzzleworkshop.cutting.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.Currency;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.cutting.ui.settings.SettingView;
import puzzleworkshop.machines.BeamWords;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineControl;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;

@DatabaseTest
@Transactional
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CuttingViewsTest extends SpringBrowserlessTest {

    private static final BoardKind CRAFT = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    @Autowired
    Machines machines;

    @Autowired
    Settings settings;

    @Autowired
    CutJobs jobs;

    @Autowired
    PlannedTrials planned;

    @Autowired
    DataSource database;

    @Test
    void without_a_machine_the_screen_says_what_to_do_next() {
        navigate(MachinesView.class);
        assertThat(find(Button.class).withText("Write down the laser").exists()).isTrue();
    }

    @Test
    void a_setting_shows_its_state_and_leads_to_its_evidence() {
        CutSetting setting = settings.add(laser(), CRAFT);
        navigate(MachinesView.class);
        assertThat(find(Anchor.class).all())
                .anyMatch(link -> link.getHref().equals("machines/settings/" + setting.id()));
        navigate(SettingView.class, setting.id());
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith("No trial yet. 3 mm wood"));
    }

    @Test
    void a_cut_can_only_be_started_when_every_item_is_ticked() {
        CutJob job = jobs.prepare(wish(Workpiece.clean(CRAFT)), "Robin");
        navigate(CutJobView.class, job.id());
        assertThat(find(Button.class).withText("Start the cut").single().isEnabled())
                .isFalse();
        for (int i = 0; i < 9; i++) {
            Checkbox open = find(Checkbox.class).all().stream()
                    .filter(box -> !box.getValue())
                    .findFirst()
                    .orElseThrow();
            test(open).click();
        }
        Button start = find(Button.class).withText("Start the cut").single();
        assertThat(start.isEnabled()).isTrue();
        test(start).click();
        assertThat(jobs.find(job.id()).orElseThrow().state()).isEqualTo(CutJob.State.RUNNING);
        assertThat(find(Button.class).withText("Record the cut").exists()).isTrue();
    }

    @Test
    void a_forbidden_board_shows_its_reason_and_no_start() {
        CutJob job =
                jobs.prepare(wish(new Workpiece(CRAFT, BoardContamination.WET_GLUE, Workpiece.Film.SAFE, "")), "Robin");
        navigate(CutJobView.class, job.id());
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith("This board was wet-glued"));
        assertThat(find(Button.class).withText("Start the cut").exists()).isFalse();
    }

    @Test
    void a_trial_that_an_order_waits_for_stands_above_the_boards_with_what_to_try_first() {
        PlainOrders.withIds(database, 77);
        planned.planFor(new OrderId(77), "2026-9077", laser(), CRAFT, "Robin");
        navigate(MachinesView.class);
        assertThat(find(Span.class).all()).anyMatch(words -> words.getText().startsWith("before 2026-9077 is cut"));
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith("First "));
    }

    @Test
    void how_a_machine_counts_and_is_spoken_to_is_asked_once_and_kept() {
        Machine laser = laser();
        navigate(MachinesView.class);
        test(find(Button.class).withText("Change").single()).click();
        Select<?> corner = find(Select.class).all().stream()
                .filter(select -> "X and Y are 0 at".equals(select.getLabel()))
                .findFirst()
                .orElseThrow();
        test(corner).selectItem("the back right corner");
        test(find(Checkbox.class).withLabel("It takes G-code").single()).click();
        Select<?> preset = find(Select.class).all().stream()
                .filter(select -> "Start from".equals(select.getLabel()))
                .findFirst()
                .orElseThrow();
        test(preset).selectItem("constant power");
        test(find(Button.class).withText("Save machine").single()).click();
        MachineControl kept = machines.find(laser.id()).orElseThrow().control();
        assertThat(kept.axes().origin()).isEqualTo(BedCorner.BACK_RIGHT);
        assertThat(kept.takesGcode()).isTrue();
        assertThat(kept.words()).isEqualTo(BeamWords.CONSTANT);
    }

    @Test
    void a_machine_with_an_impossible_number_is_not_kept_and_the_field_says_what_is_possible() {
        laser();
        navigate(MachinesView.class);
        press("Change");
        NumberField power = find(NumberField.class).all().stream()
                .filter(field -> field.getLabel().equals("Power of the beam"))
                .findFirst()
                .orElseThrow();
        power.setValue(0.0);
        press("Save machine");
        assertThat(power.isInvalid()).isTrue();
        assertThat(power.getErrorMessage()).startsWith("Between 0.1 and");
        power.setValue(22.5);
        press("Save machine");
        assertThat(machines.standard().orElseThrow().beam().powerWatts()).isEqualTo(22.5);
    }

    @Test
    void other_passes_are_dialled_in_for_one_cut_and_the_setting_stays_as_it_is() {
        CutJob job = jobs.prepare(wish(Workpiece.clean(CRAFT)), "Robin");
        navigate(CutJobView.class, job.id());
        press("Dial in otherwise…");
        IntegerField passes = find(IntegerField.class).all().stream()
                .filter(field -> field.getLabel().equals("Passes"))
                .findFirst()
                .orElseThrow();
        int before = passes.getValue();
        passes.setValue(before + 2);
        press("Use for this cut");
        assertThat(jobs.find(job.id()).orElseThrow().parameters().passes()).isEqualTo(before + 2);
        assertThat(settings.find(job.setting().id()).orElseThrow().passes()).isEqualTo(before);
    }

    @Test
    @SuppressWarnings("unchecked")
    void breaking_a_cut_off_asks_what_the_wood_shows_and_keeps_the_reason_typed() {
        CutJob job = jobs.prepare(wish(Workpiece.clean(CRAFT)), "Robin");
        for (CheckItem item : CheckItem.values()) {
            jobs.check(job.id(), item, "Robin");
        }
        jobs.start(job.id(), "Robin");
        navigate(CutJobView.class, job.id());
        press("Broken off…");
        TextField why = find(TextField.class).all().stream()
                .filter(field -> "Why?".equals(field.getLabel()))
                .findFirst()
                .orElseThrow();
        why.setValue("smoke did not draw off");
        press("Stop: it did not end well");
        assertThat(jobs.find(job.id()).orElseThrow().state()).isEqualTo(CutJob.State.RUNNING);
        assertThat(why.getValue()).isEqualTo("smoke did not draw off");
        for (RadioButtonGroup<?> group : find(RadioButtonGroup.class).all()) {
            if (group.getLabel().equals("Charring of the edge")) {
                ((RadioButtonGroup<Integer>) group).setValue(3);
            } else {
                ((RadioButtonGroup<Result>) group).setValue(Result.PARTLY);
            }
        }
        press("Stop: it did not end well");
        assertThat(jobs.find(job.id()).orElseThrow().state()).isEqualTo(CutJob.State.BROKEN_OFF);
        assertThat(settings.evidence(settings.find(job.setting().id()).orElseThrow())
                        .trials())
                .singleElement()
                .satisfies(trial -> assertThat(trial.finding().charring()).isEqualTo(3));
    }

    @Test
    @SuppressWarnings("unchecked")
    void squares_of_a_test_card_become_trials_and_a_card_without_any_is_not_recorded() {
        CutSetting setting = settings.add(laser(), CRAFT);
        navigate(SettingView.class, setting.id());
        press("Test card");
        press("Record the card");
        assertThat(settings.evidence(setting).trials()).isEmpty();
        Select<Finding> square = null;
        for (Select<?> select : find(Select.class).all()) {
            if (square == null && select.getAriaLabel().orElse("").startsWith("Outcome at")) {
                square = (Select<Finding>) select;
            }
        }
        square.setValue(Finding.of(Result.THROUGH, 1));
        press("Record the card");
        assertThat(settings.evidence(setting).trials())
                .singleElement()
                .satisfies(trial -> assertThat(trial.source()).isEqualTo(Source.TEST_CARD));
    }

    private void press(String words) {
        test(find(Button.class).withText(words).single()).click();
    }

    private CutJob.Wish wish(Workpiece workpiece) {
        return new CutJob.Wish(Optional.empty(), "test", laser().id(), workpiece, Optional.empty());
    }

    private Machine laser() {
        return machines.save(Machine.usual("Bench laser", Currency.getInstance("EUR")));
    }
}
