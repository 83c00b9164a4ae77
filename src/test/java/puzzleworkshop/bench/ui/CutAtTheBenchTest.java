package puzzleworkshop.bench.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.select.Select;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.progress.Rework.What;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.LaserFacts.Adhesive;
import puzzleworkshop.supplies.LaserFacts.Pvc;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Stage;

/** At the laser there is one next step at a time: prepare, start, record, done. */
@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CutAtTheBenchTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    Machines machines;

    @Autowired
    Supplies supplies;

    @Autowired
    Orders orders;

    @Autowired
    WeekPlan plan;

    @Autowired
    DataSource database;

    private Order order;
    private SupplyItem film;

    @BeforeEach
    void an_order_waits_at_the_laser() {
        CleanDatabase.now(database);
        machines.save(Machine.usual("Laser", Currency.getInstance("EUR")));
        BenchOrders make = new BenchOrders(beans);
        order = make.confirmed("Ida Lund", plan.today().plusDays(20), 10);
        make.bringTo(order.id(), Stage.CUT);
        film = supplies.keep(paperFilm(Optional.empty(), Pvc.FREE));
        navigate(BenchView.class, "cut");
    }

    private static SupplyItem paperFilm(Optional<SupplyId> id, Pvc pvc) {
        return new SupplyItem(
                id,
                "Paper film",
                SupplyKind.STICKER_PAPER,
                UseUnit.SHEET,
                Optional.of(Length.mm(297)),
                Optional.of(Length.mm(420)),
                "pack",
                BigDecimal.valueOf(100),
                new LaserFacts(pvc, Adhesive.DRY),
                3,
                3,
                true,
                false,
                BigDecimal.ZERO,
                Money.of("0", "EUR"));
    }

    @Test
    void a_cut_that_was_stopped_goes_on_when_the_data_sheet_has_been_read() {
        supplies.keep(paperFilm(film.id(), Pvc.UNKNOWN));
        press("Prepare the cut");
        assertThat(shown("Start the cut")).isFalse();
        assertThat(primary()).containsExactly("Look again at board and film");
        press("Look again at board and film");
        assertThat(primary()).as("still not known").containsExactly("Look again at board and film");
        supplies.keep(paperFilm(film.id(), Pvc.FREE));
        press("Look again at board and film");
        assertThat(primary()).containsExactly("Start the cut");
    }

    @Test
    void one_next_step_at_a_time_leads_through_the_cut() {
        assertThat(primary()).containsExactly("Prepare the cut");
        assertThat(shown("Start the clock")).isFalse();
        press("Prepare the cut");
        assertThat(primary()).containsExactly("Start the cut");
        tickAll();
        press("Start the cut");
        assertThat(primary()).containsExactly("Record the cut");
        assertThat(shown("Stop the clock")).isFalse();
        record(Result.PARTLY);
        // by hand it can be freed, but another cut is what comes next
        assertThat(primary()).containsExactly("Prepare another cut");
        assertThat(shown("Cut: done")).isTrue();
        press("Prepare another cut");
        tickAll();
        press("Start the cut");
        record(Result.THROUGH);
        assertThat(primary()).containsExactly("Cut: done");
        press("Cut: done");
        assertThat(orders.get(order.id()).next()).contains(Stage.FINISH);
    }

    @Test
    void what_went_wrong_begins_with_what_was_just_seen_of_the_cut() {
        press("Something went wrong");
        assertThat(likely()).as("nothing is cut yet").isEqualTo(What.NOT_THROUGH);
        press("Close");
        press("Prepare the cut");
        tickAll();
        press("Start the cut");
        record(Result.THROUGH, Finding.ACCEPTABLE_CHARRING + 1);
        press("Something went wrong");
        assertThat(likely()).isEqualTo(What.CHARRED);
        press("Close");
    }

    private Object likely() {
        return find(Select.class).all().stream()
                .filter(select -> "What happened".equals(select.getLabel()))
                .findFirst()
                .orElseThrow()
                .getValue();
    }

    private int cuts;

    private void tickAll() {
        for (int i = 0; i < 9; i++) {
            Checkbox open = find(Checkbox.class).all().stream()
                    .filter(box -> box.getElement().getParent().getClassList().contains("cutting-check"))
                    .filter(box -> !box.getValue())
                    .findFirst()
                    .orElseThrow();
            test(open).click();
        }
    }

    private void record(Result result) {
        record(result, 1);
    }

    @SuppressWarnings("unchecked")
    private void record(Result result, int charring) {
        // the beam needs its time; a cut recorded at once is asked about
        cuts++;
        TestClock.set(Instant.now().plus(Duration.ofHours(cuts)));
        Map<String, RadioButtonGroup<?>> groups = new HashMap<>();
        find(RadioButtonGroup.class).all().forEach(group -> groups.put(group.getLabel(), group));
        ((RadioButtonGroup<Result>) groups.get("How did it come out?")).setValue(result);
        ((RadioButtonGroup<Integer>) groups.get("Charring of the edge")).setValue(charring);
        press("Record the cut");
    }

    private void press(String words) {
        test(find(Button.class).withText(words).single()).click();
    }

    private boolean shown(String words) {
        return find(Button.class).all().stream()
                .anyMatch(button -> button.getText().equals(words));
    }

    private List<String> primary() {
        return find(Button.class).all().stream()
                .filter(button -> button.hasThemeName(ButtonVariant.PRIMARY.getVariantName()))
                .map(Button::getText)
                .toList();
    }
}
