package puzzleworkshop.insights.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import java.time.LocalDate;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.insights.work.Period;
import puzzleworkshop.insights.work.Topic;
import puzzleworkshop.insights.work.WorkFigures;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.orders.Order;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.StillHtml;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FiguresViewTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    Bench bench;

    @Autowired
    Workshop workshop;

    @Autowired
    Formatter figures;

    @Autowired
    WorkFigures work;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
    }

    @Test
    void days_of_another_year_are_short_enough_to_stand_below_their_bars() {
        LocalDate last = LocalDate.of(workshop.today().getYear() - 2, 1, 31);
        String plot = FigurePlot.of(work.of(Topic.STOCK, new Period(last.minusMonths(2), last)), figures)
                .markup();
        assertThat(plot)
                .contains(">31 Dec " + (last.getYear() - 1) % 100 + "<")
                .doesNotContain(">31 Dec " + (last.getYear() - 1) + "<");
    }

    @Test
    @SuppressWarnings("unchecked")
    void the_day_of_the_stock_value_can_be_chosen() {
        navigate(WorkFiguresView.class);
        assertThat(find(DayField.class).exists()).isFalse();
        ((Select<Topic>) find(Select.class).all().getFirst()).setValue(Topic.STOCK);
        find(DayField.class).single().setValue(workshop.today().minusDays(40));
        assertThat(StillHtml.words(find(Still.class).all(), "*"))
                .contains(figures.day(workshop.today().minusDays(40)));
    }

    @Test
    @SuppressWarnings("unchecked")
    void both_pages_count_complaints_over_the_same_months_and_say_so() {
        String since = figures.day(Period.yearUntil(workshop.today()).from());
        navigate(FiguresView.class);
        assertThat(find(Paragraph.class).all())
                .extracting(Paragraph::getText)
                .contains("No complaints since " + since + ".");
        navigate(WorkFiguresView.class);
        ((Select<Topic>) find(Select.class).all().getFirst()).setValue(Topic.COMPLAINTS);
        assertThat(find(Paragraph.class).all())
                .extracting(Paragraph::getText)
                .contains(since + " to " + figures.day(workshop.today()));
    }

    @Test
    void without_finished_orders_the_screen_says_what_to_do_next() {
        navigate(FiguresView.class);
        assertThat(find(H2.class).all()).extracting(H2::getText).contains("Nothing handed over yet");
    }

    @Test
    void the_accountants_files_are_there_only_for_a_period_that_can_be_read() {
        finish(10);
        navigate(FiguresView.class);
        DayField from = day("From");
        assertThat(files()).hasSize(2);
        from.clear();
        assertThat(files()).as("no first day is not the beginning of time").isEmpty();
        from.setValue(day("To").getValue().plusDays(1));
        assertThat(files()).as("the first day after the last").isEmpty();
        from.setValue(day("To").getValue());
        assertThat(files()).hasSize(2);
    }

    private DayField day(String label) {
        return find(DayField.class).all().stream()
                .filter(field -> label.equals(field.getLabel()))
                .findFirst()
                .orElseThrow();
    }

    private List<String> files() {
        return find(Anchor.class).all().stream()
                .map(Anchor::getText)
                .filter(text -> text.equals("Invoices and credit notes") || text.equals("Payments"))
                .toList();
    }

    @Test
    void minutes_that_drifted_are_proposed_and_one_press_makes_them_the_standard() {
        StageStandard before = workshop.stageStandards().get(Stage.STICK);
        double clocked = before.hands(1, 24).value() * 1.5;
        for (int i = 0; i < 5; i++) {
            finish(clocked);
        }
        navigate(FiguresView.class);
        assertThat(find(Span.class).all())
                .anyMatch(line -> line.getText().contains("takes 150 % of its standard (middle of 5 orders)"));
        test(find(Button.class).withText("Use it").single()).click();
        StageStandard after = workshop.stageStandards().get(Stage.STICK);
        // Rounded to half a minute; by hand: one and a half times the minutes of a puzzle.
        assertThat(after.perPuzzle().value())
                .isEqualTo(Math.round(before.perPuzzle().value() * 1.5 * 2) / 2.0);
        assertThat(find(Button.class).withText("Use it").exists()).isFalse();
    }

    @Test
    void a_finished_order_stands_by_month_by_size_and_among_those_who_owe() {
        Order order = finish(10);
        navigate(FiguresView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "a"))
                .filteredOn(order.number()::equals)
                .hasSize(2);
        assertThat(StillHtml.words(find(Still.class).all(), "span")).contains("200 × 150 mm", "Ida Lund");
        assertThat(find(Paragraph.class).all()).anyMatch(all -> all.getText().endsWith("is open in all."));
    }

    @Test
    void of_many_orders_the_first_are_shown_and_the_others_when_asked() {
        for (int i = 0; i < 13; i++) {
            finish(10);
        }
        navigate(FiguresView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "a[href^=orders/2]"))
                .hasSize(24);
        List<Button> more = find(Button.class).withText("Show the other 1").all();
        assertThat(more).hasSize(2);
        more.forEach(button -> test(button).click());
        assertThat(StillHtml.words(find(Still.class).all(), "a[href^=orders/2]"))
                .hasSize(26);
        assertThat(more).noneMatch(Button::isVisible);
    }

    private Order finish(double minutesOfSticking) {
        BenchOrders make = new BenchOrders(beans);
        Order order = make.confirmed("Ida Lund", LocalDate.now().plusDays(9), 12);
        make.bringTo(order.id(), Stage.STICK);
        jdbc.sql("insert into stage_timer (order_id, stage, started_at, started_by, stopped_at, stopped_by)"
                        + " values (:id, 'STICK', now() - make_interval(secs => :seconds), 'Robin', now(), 'Robin')")
                .param("id", order.id().value())
                .param("seconds", minutesOfSticking * 60)
                .update();
        for (Stage stage : Stage.values()) {
            if (stage.compareTo(Stage.STICK) >= 0) {
                assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), stage, "Robin", "tablet")
                                .refused())
                        .isEmpty();
            }
        }
        return order;
    }
}
