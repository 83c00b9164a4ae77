package puzzleworkshop.delivery.ui;

import static org.assertj.core.api.Assertions.as;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.sql.DataSource;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.ui.BenchView;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.planning.ui.ThisWeekView;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Nobody;
import puzzleworkshop.support.StillHtml;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class HandOverCardsTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Addresses addresses;

    @Autowired
    SendingWays ways;

    @Autowired
    Workshop workshop;

    @Autowired
    Formatter figures;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
    }

    @Test
    void an_owner_reads_how_much_is_still_to_be_paid() {
        packed("Ada Reed", "Parcel");
        navigate(HandOversView.class);
        assertThat(paid())
                .singleElement()
                .asString()
                .startsWith("Still to pay ")
                .doesNotContain("0.00");
    }

    @Test
    @WithMockUser(username = "Ines", roles = "MAKER")
    void a_maker_reads_that_something_is_to_be_paid_and_no_amount() {
        packed("Ada Reed", "Parcel");
        navigate(HandOversView.class);
        assertThat(paid()).containsExactly("Something is still to be paid");
    }

    @Test
    void at_the_bench_what_is_collected_asks_for_no_tracking_number() {
        packed("Ada Reed", "Parcel");
        navigate(BenchView.class, "hand_over");
        assertThat(checks()).contains("Receipt or tracking number kept");
        CleanDatabase.now(database);
        packed("Ben Ode", "Collection");
        navigate(BenchView.class, "hand_over");
        assertThat(checks())
                .contains("Name or order number asked of whoever collects it")
                .noneMatch(check -> check.contains("tracking") || check.contains("on its way"));
    }

    @Test
    void what_waits_to_be_collected_has_no_time_to_spare_on_this_week() {
        Order order = packed("Ben Ode", "Collection");
        Nobody.does(() ->
                journey.ready(parcels.pack(List.of(order.id()), "Robin").id(), "Robin"));
        navigate(ThisWeekView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "*"))
                .contains("waits to be collected")
                .noneMatch(words -> words.contains("to spare"));
    }

    @Test
    void at_the_bench_what_waits_to_be_collected_comes_last_and_opens_not_first() {
        Order collected = packed("Ben Ode", "Collection");
        Order sent = packed("Ada Reed", "Parcel");
        JdbcClient.create(database)
                .sql("update customer_order set promised_on = promised_on + 20, version = version + 1 where id = :id")
                .param("id", sent.id().value())
                .update();
        navigate(BenchView.class, "hand_over");
        assertThat(StillHtml.words(find(Still.class).all(), ".bench-card-who"))
                .as("nobody told Ben yet")
                .containsExactly("Ben Ode", "Ada Reed");
        Nobody.does(() ->
                journey.ready(parcels.pack(List.of(collected.id()), "Robin").id(), "Robin"));
        navigate(BenchView.class, "hand_over");
        assertThat(StillHtml.words(find(Still.class).all(), ".bench-card-who")).containsExactly("Ada Reed", "Ben Ode");
        assertThat(StillHtml.words(find(Still.class).all(), ".bench-card-words .pw-verdict"))
                .contains("waits to be collected");
    }

    /** Its address was looked through, and lies behind a border of customs. */
    private Order packedForAbroad() {
        Order order = packed("Ada Reed", "Parcel");
        Map<Part, String> parts = Map.of(
                Part.NAME,
                "Ada Reed",
                Part.STREET,
                "12 Oak Street",
                Part.TOWN,
                "Springvale",
                Part.REGION,
                "NY",
                Part.POSTAL_CODE,
                "12345");
        Nobody.does(() -> {
            addresses.home("GB");
            addresses.keep(order.id(), new PostalAddress("US", parts), true, "Robin");
            return order;
        });
        return order;
    }

    @Test
    void a_card_says_which_country_a_parcel_goes_to_and_that_it_passes_customs() {
        packedForAbroad();
        navigate(HandOversView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "*"))
                .anyMatch(words -> words.endsWith("Springvale, NY 12345, UNITED STATES"))
                .contains("Goes through customs: the CN 22 is among its papers");
        assertThat(find(Button.class).all())
                .as("an address that was looked through is not asked for again")
                .noneMatch(button -> "Check the address".equals(button.getText()));
    }

    private List<String> checks() {
        return find(Checkbox.class).all().stream()
                .map(Checkbox::getLabel)
                .filter(Objects::nonNull)
                .toList();
    }

    @Test
    @WithMockUser(username = "Ines", roles = "MAKER")
    void a_maker_weighs_a_parcel_without_touching_what_the_carrier_takes() {
        Order order = packed("Ada Reed", "Parcel");
        Money postage = Money.of("7.49", workshop.currency().getCurrencyCode());
        Parcel parcel = Nobody.does(() -> {
            Parcel one = parcels.pack(List.of(order.id()), "Robin");
            return parcels.costs(one.id(), Optional.of(postage));
        });
        Dialog dialog = new MeasureDialog(
                parcels.get(parcel.id()),
                Optional.of(ParcelMeasure.of(700, Length.mm(300), Length.mm(200), Length.mm(50))),
                ways.orUsual(parcel.way()),
                parcels,
                workshop,
                false,
                figures,
                () -> {});
        dialog.open();
        assertThat(find(BigDecimalField.class).all()).isEmpty();
        press("Save");
        Parcel kept = Nobody.does(() -> parcels.get(parcel.id()));
        assertThat(kept.measure().orElseThrow().grams()).isEqualTo(700);
        assertThat(kept.postage()).contains(postage);
    }

    @Test
    void an_address_that_nobody_looked_through_yet_is_shown_as_it_was_typed() {
        Order order = packed("Ada Reed", "Parcel");
        JdbcClient.create(database)
                .sql("update customer set address = :lines where id = :id")
                .param("lines", "4 Mill Lane\nYork YO1 7AA")
                .param("id", order.customer().id())
                .update();
        navigate(HandOversView.class);
        assertThat(StillHtml.words(find(Still.class).all(), ".delivery-where"))
                .singleElement(as(STRING))
                .contains("Address not checked", "4 Mill Lane, York YO1 7AA");
    }

    @Test
    void on_the_page_of_an_order_address_way_and_who_it_is_for_are_said_once() {
        Order order = packedForAbroad();
        navigate(OrderView.class, order.number());
        assertThat(StillHtml.words(find(Still.class).all(), ".delivery-words"))
                .singleElement(as(STRING))
                .contains("Goes through customs", "Still to pay")
                .doesNotContain("Ada Reed", "12 Oak Street", order.number())
                .doesNotStartWith("Parcel");
        assertThat(find(Button.class).all())
                .as("which way is best is answered above already")
                .noneMatch(button -> "Which way is best?".equals(button.getText()));
    }

    @Test
    void who_is_told_that_it_is_ready_and_reminded_is_written_to() {
        Order order = packed("Bo Lind", "Collection");
        navigate(HandOversView.class);
        press("Ready to collect");
        assertThat(letter()).contains(order.number()).contains("is packed and waits for you");
        press("I have sent it");
        press("Remind the customer");
        assertThat(letter()).contains("waits for you since");
        assertThat(parcel(order).remindedAt()).as("not before it is written").isEmpty();
        press("I have sent it");
        assertThat(parcel(order).remindedAt()).isPresent();
    }

    @Test
    void what_is_sent_is_told_with_its_number_and_what_arrived_with_thanks() {
        Order order = packed("Ada Reed", "Parcel");
        navigate(HandOversView.class);
        test(find(TextField.class).withCaption("Tracking number").single()).setValue("00340");
        // news show the cards again: what was typed stands there still
        navigate(HandOversView.class);
        assertThat(find(TextField.class).withCaption("Tracking number").single().getValue())
                .isEqualTo("00340");
        press("Sent");
        assertThat(letter()).contains("00340").contains("is on its way");
        press("I have sent it");
        press("Delivered");
        assertThat(letter()).contains("thank you for your order");
        assertThat(parcel(order).state()).isEqualTo(ParcelState.DELIVERED);
    }

    @Test
    void a_refusal_goes_when_what_was_refused_has_been_done() {
        packed("Ada Reed", "Parcel");
        navigate(HandOversView.class);
        test(find(TextField.class).withCaption("Tracking number").single()).setValue("7".repeat(100));
        press("Sent");
        press("Sent");
        assertThat(said()).containsExactly("A tracking number has at most 80 characters.");
        test(find(TextField.class).withCaption("Tracking number").single()).setValue("00340");
        press("Sent");
        assertThat(said()).containsExactly("Sent: Ada Reed");
    }

    @Test
    void a_way_that_does_not_go_there_is_named_on_the_card() {
        Order order = packed("Ada Reed", "Parcel");
        Nobody.does(() -> {
            addresses.home("GB");
            return order;
        });
        JdbcClient.create(database)
                .sql("update sending_way set goes_to = 'HOME' where kind = 'PARCEL'")
                .update();
        Nobody.does(() -> {
            addresses.keep(
                    order.id(),
                    new PostalAddress(
                            "CH",
                            Map.of(
                                    Part.NAME, "Ada Reed",
                                    Part.STREET, "Seeweg 4",
                                    Part.POSTAL_CODE, "8001",
                                    Part.TOWN, "Nordhafen")),
                    true,
                    "Robin");
            return order;
        });
        navigate(HandOversView.class);
        assertThat(StillHtml.words(find(Still.class).all(), ".delivery-where"))
                .singleElement(as(STRING))
                .contains("Parcel does not go there: Switzerland");
    }

    private List<String> said() {
        return find(Notification.class).all().stream()
                .filter(Notification::isOpened)
                .map(card -> card.getElement().getProperty("text"))
                .toList();
    }

    @Test
    void which_way_is_best_is_said_on_the_card_when_it_is_asked_for() {
        Order order = packed("Ada Reed", "Parcel");
        Nobody.does(() -> {
            Parcel parcel = parcels.pack(List.of(order.id()), "Robin");
            return parcels.weighed(parcel.id(), ParcelMeasure.of(900, Length.mm(300), Length.mm(200), Length.mm(50)));
        });
        navigate(HandOversView.class);
        press("Which way is best?");
        // worked out beside the screen
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(1)).untilAsserted(() -> {
            roundTrip();
            assertThat(find(Component.class).all())
                    .anyMatch(shown -> shown.getElement().getText().startsWith("Parcel arrives"));
        });
    }

    @Test
    void what_was_put_together_by_mistake_comes_apart() {
        List<Order> two = Nobody.does(() -> new PackedOrders(beans).of("Cy Moor", "Parcel", 2));
        navigate(HandOversView.class);
        test(find(Button.class).all().stream()
                        .filter(button -> button.getText().startsWith("Into one parcel with"))
                        .findFirst()
                        .orElseThrow())
                .click();
        assertThat(parcel(two.getFirst()).orders()).hasSize(2);
        press("Take " + two.getLast().number() + " out");
        assertThat(parcel(two.getFirst()).orders()).hasSize(1);
        assertThat(StillHtml.words(find(Still.class).all(), ".delivery-words h3"))
                .hasSize(2);
    }

    @Test
    void a_parcel_of_two_orders_is_taken_back_with_one_press() {
        List<Order> two = Nobody.does(() -> {
            List<Order> packed = new PackedOrders(beans).of("Cy Moor", "Parcel", 2);
            parcels.pack(packed.stream().map(Order::id).toList(), "Robin");
            return packed;
        });
        navigate(HandOversView.class);
        press("Sent");
        assertThat(parcel(two.getFirst()).state()).isEqualTo(ParcelState.SENT);
        assertThat(find(Button.class).withText("Take back").all())
                .singleElement()
                .extracting(button -> button.getElement().getAttribute("aria-label"), as(STRING))
                .contains(two.getFirst().number(), two.getLast().number());
        press("Close");
        press("Take back");
        assertThat(parcel(two.getFirst()).state()).isEqualTo(ParcelState.PACKED);
        assertThat(find(Button.class).withText("Take back").exists()).isFalse();
        press("Sent");
        assertThat(parcel(two.getLast()).state()).isEqualTo(ParcelState.SENT);
    }

    private Order packed(String customer, String way) {
        return Nobody.does(() -> new PackedOrders(beans).one(customer, way));
    }

    private Parcel parcel(Order order) {
        return parcels.everOf(order.id()).getLast();
    }

    private List<String> paid() {
        return StillHtml.words(find(Still.class).all(), ".delivery-words > .pw-verdict");
    }

    private String letter() {
        return find(TextArea.class).single().getValue();
    }

    private void press(String words) {
        test(find(Button.class).all().stream()
                        .filter(button -> words.equals(button.getText()))
                        .findFirst()
                        .orElseThrow())
                .click();
    }
}
