package puzzleworkshop.cutting.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Currency;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.BoardKind;
import puzzleworkshop.cutting.CutJob;
import puzzleworkshop.cutting.CutJobs;
import puzzleworkshop.cutting.CutSetting;
import puzzleworkshop.cutting.Machine;
import puzzleworkshop.cutting.Machines;
import puzzleworkshop.cutting.Settings;
import puzzleworkshop.cutting.Workpiece;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.Past;
import puzzleworkshop.support.DatabaseTest;

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

    @Test
    void without_a_machine_the_screen_says_what_to_do_next() {
        navigate(MachinesView.class);
        assertThat(find(Button.class).withText("Write down the laser").exists()).isTrue();
    }

    @Test
    void a_setting_shows_its_state_and_leads_to_its_evidence() {
        CutSetting setting = settings.add(laser(), CRAFT);
        navigate(MachinesView.class);
        assertThat(find(Anchor.class).all()).anyMatch(link -> link.getHref().equals("machines/settings/" + setting.id()));
        navigate(SettingView.class, setting.id());
        assertThat(find(Paragraph.class).all()).anyMatch(words -> words.getText().startsWith("No trial yet. 3 mm wood"));
    }

    @Test
    void a_cut_can_only_be_started_when_every_item_is_ticked() {
        CutJob job = jobs.prepare(wish(Workpiece.clean(CRAFT)), "Robin");
        navigate(CutJobView.class, job.id());
        assertThat(find(Button.class).withText("Start the cut").single().isEnabled()).isFalse();
        for (int i = 0; i < 9; i++) {
            Checkbox open = find(Checkbox.class).all().stream().filter(box -> !box.getValue()).findFirst().orElseThrow();
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
        CutJob job = jobs.prepare(wish(new Workpiece(CRAFT, Past.WET_GLUE, Workpiece.Film.SAFE, "")), "Robin");
        navigate(CutJobView.class, job.id());
        assertThat(find(Paragraph.class).all()).anyMatch(words -> words.getText().startsWith("This board was wet-glued"));
        assertThat(find(Button.class).withText("Start the cut").exists()).isFalse();
    }

    private CutJob.Wish wish(Workpiece workpiece) {
        return new CutJob.Wish(OptionalLong.empty(), "test", laser().id(), workpiece, Optional.empty());
    }

    private Machine laser() {
        return machines.save(Machine.usual("Bench laser", Currency.getInstance("EUR")));
    }
}
