package puzzleworkshop.bench.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.confirmdialog.ConfirmDialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.QueryParameters;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Nobody;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** The methods build on each other: the same orders go on from stage to stage. */
@DatabaseTest
@WithMockUser(username = "Robin", roles = "HELPER")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class BenchViewTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    WeekPlan plan;

    @Autowired
    Bench bench;

    @Autowired
    SignedIn signedIn;

    @Autowired
    Orders orders;

    @Autowired
    PaymentsAwaited payments;

    private Optional<Stage> next(OrderId order) {
        return orders.get(order).next();
    }

    private void press(String words) {
        Button button = find(Button.class).all().stream()
                .filter(b -> b.getText().equals(words))
                .findFirst()
                .orElseThrow();
        test(button).click();
    }

    @Test
    @org.junit.jupiter.api.Order(1)
    void an_empty_bench_says_when_there_will_be_work() {
        navigate(BenchView.class, "print");
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith("No orders are open."));
    }

    @Test
    @org.junit.jupiter.api.Order(2)
    void a_stage_is_ticked_and_a_mis_tap_taken_back() {
        Order order = new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(20), 25);
        navigate(BenchView.class, "print");
        assertThat(find(Anchor.class).withText("Open Print runs").single().getHref())
                .as("the file to print is one tap away")
                .isEqualTo("print-runs");
        press("Print: done");
        assertThat(next(order.id())).contains(Stage.LAMINATE);
        assertThat(bench.ticks(order.id()).getLast().who()).isEqualTo(signedIn.name());
        press("Take back");
        assertThat(next(order.id())).contains(Stage.PRINT);
    }

    @Test
    @org.junit.jupiter.api.Order(3)
    void two_orders_are_gathered_and_ticked_together() {
        OrderId one = orders.open().getFirst().id();
        OrderId other = new BenchOrders(beans)
                .confirmed("Tom Reed", plan.today().plusDays(20), 25)
                .id();
        navigate(BenchView.class, "print");
        for (Checkbox box : find(Checkbox.class).all().stream()
                .filter(b -> b.getAriaLabel().isPresent())
                .toList()) {
            test(box).click();
        }
        press("Print: tick 2 together");
        assertThat(next(one)).contains(Stage.LAMINATE);
        assertThat(next(other)).contains(Stage.LAMINATE);
    }

    @Test
    @org.junit.jupiter.api.Order(4)
    void the_clock_is_started_and_stopped_and_its_time_is_in_the_books() {
        navigate(BenchView.class, "laminate");
        press("Start the clock");
        assertThat(bench.running()).hasSize(1);
        assertThat(bench.running().getFirst().who()).isEqualTo(signedIn.name());
        press("Stop the clock");
        assertThat(bench.running()).isEmpty();
    }

    @Test
    @org.junit.jupiter.api.Order(5)
    void what_went_wrong_sends_the_order_back_and_books_what_is_lost() {
        navigate(BenchView.class, "laminate");
        OrderId first = bench.queue(Stage.LAMINATE).getFirst().order().id();
        press("Something went wrong");
        press("Book the loss and make it again");
        assertThat(next(first)).contains(Stage.PRINT);
        // a maker is not told what it cost
        assertThat(Nobody.does(() -> bench.mishaps(first))).singleElement().satisfies(mishap -> {
            assertThat(mishap.noticedAt()).isEqualTo(Stage.LAMINATE);
            assertThat(mishap.againFrom()).isEqualTo(Stage.PRINT);
            assertThat(mishap.materialLost().isPositive()).isTrue();
        });
    }

    @Test
    @org.junit.jupiter.api.Order(6)
    void every_stage_that_can_hurt_shows_its_cautions_and_defers_to_local_rules() {
        OrderId order = orders.open().getFirst().id();
        for (Stage stage : Stage.values()) {
            if (next(order).orElseThrow() == Stage.CUT) {
                break;
            }
            if (next(order).orElseThrow() == stage) {
                navigate(BenchView.class, stage.name().toLowerCase(java.util.Locale.ROOT));
                assertThat(find(Paragraph.class).all())
                        .as(stage.name())
                        .anyMatch(words -> words.getText().contains("local rules and qualified people come first"));
                assertThat(bench.tick(BookingKey.fresh(), List.of(order), stage, "Robin", "")
                                .refused())
                        .isEmpty();
            }
        }
        assertThat(next(order)).contains(Stage.CUT);
    }

    @Test
    @org.junit.jupiter.api.Order(7)
    void when_another_screen_moves_the_open_order_on_no_other_card_comes_under_the_thumb() {
        BenchOrders made = new BenchOrders(beans);
        made.confirmed("Uma Field", plan.today().plusDays(20), 25);
        made.confirmed("Vik Moor", plan.today().plusDays(20), 25);
        navigate(BenchView.class, "print");
        Order open = bench.queue(Stage.PRINT).getFirst().order();
        assertThat(bench.tick(BookingKey.fresh(), List.of(open.id()), Stage.PRINT, "Ada", "another screen")
                        .refused())
                .isEmpty();
        assertThat(bench.queue(Stage.PRINT)).isNotEmpty();
        untilShown(words -> words.getText().startsWith(open.number() + " has gone on from here"));
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith(open.number() + " has gone on from here"));
        assertThat(find(Button.class).all())
                .noneMatch(button -> button.getText().equals("Print: done"));
    }

    /** News of others comes by itself, a moment later. */
    private void untilShown(Predicate<Paragraph> words) {
        for (int i = 0; i < 40 && find(Paragraph.class).all().stream().noneMatch(words); i++) {
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            roundTrip();
        }
    }

    @Test
    @org.junit.jupiter.api.Order(8)
    void what_should_still_rest_is_asked_about_once_and_stands_in_the_history() {
        navigate(BenchView.class, "laminate");
        Bench.Waiting open = bench.queue(Stage.LAMINATE).getFirst();
        assertThat(open.restsUntil()).isPresent();
        press("Laminate: done");
        assertThat(next(open.order().id())).contains(Stage.LAMINATE);
        test(find(ConfirmDialog.class).single()).confirm();
        assertThat(next(open.order().id())).contains(Stage.SHEET_PREP);
        assertThat(historyOf(open.order().id())).contains("bench.history.early").doesNotContain("bench.history.unpaid");
    }

    @Test
    @org.junit.jupiter.api.Order(9)
    void an_order_whose_payment_comes_first_is_asked_about_before_it_is_printed() {
        Order order = bench.queue(Stage.PRINT).getFirst().order();
        Nobody.does(() -> {
            payments.ask(order.id(), orders.get(order.id()).price().gross(), "Robin");
            return order;
        });
        openAt("print", order);
        assertThat(find(Paragraph.class).all())
                .anyMatch(words -> words.getText().startsWith("This order waits for payment since"));
        press("Print: done");
        assertThat(next(order.id())).contains(Stage.PRINT);
        test(find(ConfirmDialog.class).single()).confirm();
        assertThat(next(order.id())).contains(Stage.LAMINATE);
        assertThat(historyOf(order.id())).contains("bench.history.unpaid").doesNotContain("bench.history.early");
    }

    @Test
    @org.junit.jupiter.api.Order(10)
    void an_order_that_may_not_be_printed_is_open_without_its_tick() {
        BenchOrders made = new BenchOrders(beans);
        made.confirmed("Wes Park", plan.today().plusDays(10), 25);
        Order unapproved = made.waitingForApproval("Yan Rowe", plan.today().plusDays(30), 25);
        openAt("print", unapproved);
        // what is not allowed is not offered
        assertThat(find(Button.class).all())
                .noneMatch(button -> button.getText().equals("Print: done"));
        assertThat(next(unapproved.id())).contains(Stage.PRINT);
        assertThat(find(H2.class).all())
                .anyMatch(head -> head.getText().equals("Yan Rowe"))
                .noneMatch(head -> head.getText().equals("Wes Park"));
    }

    private void openAt(String stage, Order order) {
        UI.getCurrentOrThrow().navigate("bench/" + stage, QueryParameters.of("order", order.number()));
        roundTrip();
    }

    private List<String> historyOf(OrderId order) {
        return orders.history(order).stream().map(line -> line.what().key()).toList();
    }
}
