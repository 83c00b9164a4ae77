package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.textfield.TextArea;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import javax.sql.DataSource;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.PromiseCheck;
import puzzleworkshop.offers.PromiseCheck.TooEarly;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.planning.ReadyDay;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Workshop;

/** A quote is confirmed from its own page: whoever would be late by it is named before, never found out afterwards. */
@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class ConfirmQuoteTest extends SpringBrowserlessTest {

    private static final int MOST_ORDERS = 16;
    private static final int PUZZLES = 12;

    @Autowired
    BeanFactory beans;

    @Autowired
    Orders orders;

    @Autowired
    PromiseCheck promises;

    @Autowired
    DataSource database;

    private SoldOrders sold;

    /** Who is late by how much hangs on the hour: what is left of a day's work decides. */
    @BeforeEach
    void an_empty_workshop_on_a_tuesday_morning() {
        CleanDatabase.now(database);
        ZoneId zone = beans.getBean(Workshop.class).zone();
        TestClock.set(LocalDate.of(2027, 3, 2).atTime(9, 0).atZone(zone).toInstant());
        sold = new SoldOrders(beans);
    }

    @Test
    void in_an_empty_week_a_quote_is_confirmed_without_a_question() {
        Order quote = sold.quote("Ada Reed", 1, false, Percent.ZERO);
        assertThat(promises.of(quote.id())).isEmpty();
        navigate(OrderView.class, quote.number());
        press("Confirm");
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(3)).untilAsserted(() -> {
            roundTrip();
            assertThat(orders.get(quote.id()).state())
                    .as(
                            "%s",
                            find(Notification.class).all().stream()
                                    .map(card -> test(card).getText())
                                    .toList())
                    .isEqualTo(OrderState.CONFIRMED);
        });
        assertThat(orders.get(quote.id()).promised()).isEqualTo(quote.promised());
    }

    @Test
    void whoever_would_be_late_is_named_and_the_earliest_day_can_be_promised_instead() {
        Order quote = fullWeek();
        TooEarly found = promises.of(quote.id()).orElseThrow();
        ReadyDay.Harm harm =
                found.forecast().harmedBy(quote.promised().orElseThrow()).getFirst();
        navigate(OrderView.class, quote.number());
        press("Confirm");
        SafeQuestion question = question();
        assertThat(find(ListItem.class).all())
                .anyMatch(
                        line -> line.getText().startsWith("This would make " + harm.order() + " (Bela Faro) late by"));
        assertThat(orders.get(quote.id()).state()).isEqualTo(OrderState.QUOTE);

        test(question).confirm();
        assertThat(orders.get(quote.id()).state()).isEqualTo(OrderState.CONFIRMED);
        assertThat(orders.get(quote.id()).promised()).contains(found.earliest());
    }

    @Test
    void left_alone_the_quote_stays_a_quote() {
        Order quote = fullWeek();
        navigate(OrderView.class, quote.number());
        press("Confirm");
        test(question()).cancel();
        assertThat(orders.get(quote.id()).state()).isEqualTo(OrderState.QUOTE);
        press("Confirm");
        test(question()).reject();
        assertThat(orders.get(quote.id()).promised()).isEqualTo(quote.promised());
        assertThat(orders.get(quote.id()).state()).isEqualTo(OrderState.CONFIRMED);
    }

    /** A promise that was given to others is asked about before it is broken, also by an order that was taken on long ago. */
    @Test
    void changing_an_order_so_that_others_would_be_late_asks_before_anything_is_saved() {
        aBoardToBuy();
        Order quote = fullWeek();
        LocalDate tooEarly = quote.promised().orElseThrow();
        LocalDate earliest = promises.of(quote.id()).orElseThrow().earliest();
        beans.getBean(Confirmations.class).confirm(quote.id(), earliest, "Robin");
        NewOrderView page = navigate(NewOrderView.class, quote.number());
        workedOut(page);
        find(DayField.class).withId("promised").single().setValue(tooEarly);
        press("Save the change");
        SafeQuestion question = question();
        assertThat(find(ListItem.class).all()).anyMatch(line -> line.getText().contains("(Bela Faro) late by"));
        test(question).cancel();
        assertThat(orders.get(quote.id()).promised()).contains(earliest);

        press("Save the change");
        test(question()).reject();
        assertThat(orders.get(quote.id()).promised()).contains(tooEarly);
    }

    @Test
    void what_the_week_is_not_planned_by_is_changed_without_a_question() {
        aBoardToBuy();
        Order order = fullWeek();
        beans.getBean(Confirmations.class).confirm(order.id(), "Robin");
        NewOrderView page = navigate(NewOrderView.class, order.number());
        workedOut(page);
        test(find(TextArea.class).withCaption("Note").single()).setValue("wrap it as a present");
        press("Save the change");
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(3)).untilAsserted(() -> {
            assertThat(find(Button.class).all()).isNotEmpty();
            assertThat(orders.get(order.id()).note()).isEqualTo("wrap it as a present");
        });
    }

    private void aBoardToBuy() {
        Workshop workshop = beans.getBean(Workshop.class);
        beans.getBean(Machines.class).save(Machine.usual("Laser", workshop.currency()));
        beans.getBean(RackSettings.class)
                .save(new BoardOffer(
                        0,
                        "Birch",
                        "birch-ply",
                        Grade.CRAFT,
                        Length.mm(3),
                        Size.mm(600, 400),
                        Grain.NONE,
                        Money.of("8", workshop.currency().getCurrencyCode()),
                        true));
    }

    private void workedOut(NewOrderView page) {
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(3)).untilAsserted(() -> {
            // what other threads have brought comes to the screen with the next look at it
            assertThat(find(NewOrderView.class).single()).isSameAs(page);
            assertThat(page.hasClassName("neworder-working")).isFalse();
        });
    }

    /** As many orders as it takes until one more for the same day makes somebody late. */
    private Order fullWeek() {
        Order quote = sold.quote("Ada Reed", PUZZLES, false, Percent.ZERO);
        for (int taken = 0; taken < MOST_ORDERS; taken++) {
            sold.confirmed("Bela Faro", PUZZLES);
            Optional<TooEarly> found = promises.of(quote.id());
            if (found.filter(one -> !one.forecast().harmedBy(one.promised()).isEmpty())
                    .isPresent()) {
                return quote;
            }
        }
        throw new AssertionError("The week never filled");
    }

    private SafeQuestion question() {
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(3)).untilAsserted(() -> {
            roundTrip();
            assertThat(find(SafeQuestion.class).exists()).isTrue();
        });
        return find(SafeQuestion.class).single();
    }

    private void press(String words) {
        test(find(Button.class).withText(words).single()).click();
    }
}
