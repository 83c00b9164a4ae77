package puzzleworkshop.planning.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextArea;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.Still;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.orders.ui.StateVerdict;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.StillHtml;

/** The methods build on each other: one week fills up. */
@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class ThisWeekViewTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    WeekPlan plan;

    @Autowired
    Orders orders;

    private BenchOrders make() {
        return new BenchOrders(beans);
    }

    private List<String> words() {
        return Stream.concat(
                        find(Span.class).all().stream().map(Span::getText),
                        StillHtml.words(find(Still.class).all(), "*").stream())
                .toList();
    }

    @Test
    @org.junit.jupiter.api.Order(1)
    void an_empty_week_says_what_to_do_next() {
        navigate(ThisWeekView.class);
        assertThat(find(WeekBoard.class).all()).isEmpty();
        assertThat(find(Anchor.class).all())
                .as("first things while the shelves are empty, else a new order")
                .anyMatch(link -> link.getHref().matches("orders/new|sheets/?.*|machines/?.*|supplies/?.*"));
    }

    @Test
    @org.junit.jupiter.api.Order(2)
    void a_card_says_who_what_is_next_and_whether_its_day_can_be_kept() {
        Order order = make().confirmed("Ida Lund", plan.today().plusDays(20), 25);
        make().waitingForApproval("Tom Reed", plan.today().plusDays(21), 25);
        navigate(ThisWeekView.class);
        assertThat(words())
                .contains("Ida Lund", "Tom Reed", "on time", "waiting", "next: Print", "waiting: 1 for approval");
        assertThat(words())
                .anyMatch(text -> text.startsWith("waits for approval since ") && text.contains("; if it comes by "));
        assertThat(StillHtml.words(find(Still.class).all(), "a[href='orders/" + order.number() + "']"))
                .isNotEmpty();
    }

    @Test
    @org.junit.jupiter.api.Order(3)
    void a_day_is_chosen_without_dragging_and_left_to_the_plan_again() {
        Order order = orders.open().getFirst();
        navigate(ThisWeekView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "button[aria-label*='" + order.number() + "']"))
                .containsExactly("Day…");
        find(WeekBoard.class).single().choose(order.id());
        Button day = find(DayDialog.class)
                .single()
                .getChildren()
                .flatMap(child -> child.getChildren())
                .filter(Button.class::isInstance)
                .map(Button.class::cast)
                .reduce((one, other) -> other)
                .orElseThrow();
        test(day).click();
        List<WeekPlan.Entry> pinned = plan.now().entries().stream()
                .filter(entry -> entry.pinned().isPresent())
                .toList();
        assertThat(pinned).hasSize(1);
        navigate(ThisWeekView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "button[aria-label*='" + order.number() + "']"))
                .allMatch(words -> words.startsWith("pinned "));
        find(WeekBoard.class).single().choose(order.id());
        test(find(Button.class).withText("Let the plan choose").single()).click();
        assertThat(plan.now().entries()).allMatch(entry -> entry.pinned().isEmpty());
        assertThat(order.next()).isPresent();
    }

    @Test
    @org.junit.jupiter.api.Order(4)
    void an_order_dragged_to_a_day_stays_there_and_days_stand_only_where_it_can_be_dragged_to() {
        Order order = orders.open().getFirst();
        navigate(ThisWeekView.class);
        List<String> days = StillHtml.all(find(WeekBoard.class).single(), ".planning-column[data-day]").stream()
                .map(column -> column.attr("data-day"))
                .toList();
        assertThat(days).hasSizeGreaterThan(3).isSorted().doesNotContain("");
        LocalDate third = LocalDate.parse(days.get(2));
        find(WeekBoard.class).single().move(order.id(), third);
        assertThat(plan.now().of(order.id()).orElseThrow().pinned()).contains(third);
        plan.unpin(order.id(), "Robin");
    }

    @Test
    @org.junit.jupiter.api.Order(4)
    void a_late_order_offers_words_for_its_customer_and_the_new_day_is_promised_once_they_know() {
        // Laminate rests over night, so a day promised for today cannot be kept.
        Order late = make().confirmed("Ada Moor", plan.today(), 25);
        navigate(OrderView.class, late.number());
        assertThat(words()).anyMatch(text -> text.startsWith("late by "));
        assertThat(find(StateVerdict.class).single().getElement().getAttribute("data-kind"))
                .as("no green tick beside an order that is late")
                .isEqualTo("bad");
        assertThat(words()).anyMatch(text -> text.startsWith("Print next, late by "));
        test(find(Button.class).withText("Tell the customer").single()).click();
        assertThat(find(TextArea.class).all()).anyMatch(area -> area.getValue().startsWith("Dear Ada Moor,"));
        Button told = find(Button.class).all().stream()
                .filter(b -> b.getText().startsWith("The customer knows: promise"))
                .findFirst()
                .orElseThrow();
        test(told).click();
        assertThat(orders.get(late.id()).promised().orElseThrow()).isAfter(plan.today());
        assertThat(plan.now().of(late.id()).map(entry -> entry.outlook().isLate()))
                .isEqualTo(Optional.of(false));
    }

    /** Beyond a dozen the page would be half a list of late orders. */
    @Test
    @org.junit.jupiter.api.Order(5)
    void of_many_customers_to_warn_a_dozen_stand_there_and_the_others_follow_on_a_press() {
        for (int i = 0; i < 15; i++) {
            make().confirmed("Late Customer " + i, plan.today(), 25);
        }
        navigate(ThisWeekView.class);
        // worked out beside the screen
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(1)).untilAsserted(() -> {
            roundTrip();
            assertThat(others()).isNotEmpty();
        });
        long late = plan.now().entries().stream()
                .filter(entry -> entry.outlook().isLate())
                .count();
        assertThat(late).isGreaterThan(12);
        assertThat(others()).extracting(Button::getText).containsExactly("Show the other " + (late - 12));
        assertThat(find(Button.class).withText("Tell").all()).hasSize(12);
        test(others().getFirst()).click();
        assertThat(find(Button.class).withText("Tell").all()).hasSize((int) late);
        assertThat(others()).isEmpty();
    }

    private List<Button> others() {
        return find(Button.class).all().stream()
                .filter(button -> button.getText().startsWith("Show the other "))
                .toList();
    }
}
