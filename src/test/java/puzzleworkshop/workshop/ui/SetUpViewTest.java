package puzzleworkshop.workshop.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.component.textfield.NumberField;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ScreenTest;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class SetUpViewTest extends ScreenTest {

    @Autowired
    Workshop workshop;

    @Autowired
    DataSource database;

    @BeforeEach
    void fresh() {
        CleanDatabase.now(database);
    }

    @Test
    void each_part_has_a_way_of_its_own_and_stands_alone() {
        navigate(SetUpView.class);
        List<Anchor> ways = find(
                        Anchor.class,
                        find(Nav.class).withClassName("workshop-ways").single())
                .all();
        assertThat(ways).hasSizeGreaterThan(12);
        assertThat(ways.stream().map(Anchor::getHref).distinct())
                .as("no two parts share a way")
                .hasSameSizeAs(ways);
        List<String> read = ways.stream().map(Anchor::getText).toList();
        for (int i = 0; i < ways.size(); i++) {
            String address = ways.get(i).getHref();
            if (address.equals("set-up/letters")) {
                continue; // a page of its own
            }
            UI.getCurrentOrThrow().navigate(address);
            assertThat(find(H2.class).all().stream()
                            .filter(SetUpViewTest::isSeen)
                            .map(H2::getText))
                    .as(address)
                    .containsExactly(read.get(i));
            assertThat(find(Anchor.class).all().stream()
                            .filter(way -> "page".equals(way.getElement().getAttribute("aria-current")))
                            .map(Anchor::getText))
                    .containsExactly(read.get(i));
        }
    }

    @Test
    void an_overhang_too_small_for_the_crosses_is_said_before_it_is_saved() {
        UI.getCurrentOrThrow().navigate("set-up/trade-numbers");
        LengthField overhang = find(LengthField.class).all().stream()
                .filter(field -> field.getLabel().startsWith("Print beyond the cut"))
                .findFirst()
                .orElseThrow();
        assertThat(find(Note.class).withId("lost-in-overhang").all()).isEmpty();
        overhang.setValue(Length.mm(2));
        Note lost = find(Note.class).withId("lost-in-overhang").single();
        assertThat(lost.getText()).contains("no crosses are printed any more");
        overhang.setValue(Length.mm(3));
        assertThat(lost.isVisible()).isFalse();
    }

    /** Each field shows two digits; the standards hold more. */
    @Test
    void of_what_a_stage_takes_only_the_number_that_was_typed_is_changed() {
        long seed = Seeds.from(9);
        Random random = new Random(seed);
        Map<Stage, StageStandard> before = new HashMap<>();
        for (Stage stage : Stage.values()) {
            StageStandard odd = new StageStandard(
                    stage,
                    Minutes.of(20 * random.nextDouble()),
                    Minutes.of(20 * random.nextDouble()),
                    Minutes.ofSeconds(9 * random.nextDouble()),
                    Duration.ofMinutes(random.nextInt(600)),
                    new Percent(BigDecimal.valueOf(random.nextInt(3000), 2)));
            workshop.save(odd);
            before.put(stage, workshop.stageStandards().get(stage));
        }
        navigate("set-up/what-each-stage-takes", SetUpView.class);
        for (Stage stage : Stage.values()) {
            String name = find(NumberField.class).all().stream()
                    .map(field -> field.getAriaLabel().orElse(""))
                    .filter(label -> label.startsWith(UI.getCurrentOrThrow().getTranslation(stage.textKey()) + ", "))
                    .toList()
                    .get(1);
            NumberField perPuzzle = find(NumberField.class).all().stream()
                    .filter(field -> field.getAriaLabel().orElse("").equals(name))
                    .findFirst()
                    .orElseThrow();
            perPuzzle.setValue(33.25);
            StageStandard was = before.get(stage);
            assertThat(workshop.stageStandards().get(stage))
                    .as("seed %d", seed)
                    .isEqualTo(new StageStandard(
                            stage, was.setUp(), Minutes.of(33.25), was.perPiece(), was.rest(), was.rejects()));
        }
    }

    private static boolean isSeen(Component component) {
        return component.isVisible()
                && component.getParent().map(SetUpViewTest::isSeen).orElse(true);
    }
}
