package puzzleworkshop.delivery.returns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.artwork.CameraPicture;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.labels.Customs;
import puzzleworkshop.delivery.labels.GoodsCategory;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.delivery.returns.Complaints.Report;
import puzzleworkshop.delivery.returns.Remedies.Terms;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ComplaintsIT {

    private static final String WHO = "Robin";
    private static final Report CHARRED = new Report(Reason.CHARRED, Stage.CUT, "brown edges");

    @Autowired
    BeanFactory beans;

    @Autowired
    Complaints complaints;

    @Autowired
    Remedies remedies;

    @Autowired
    Orders orders;

    @Autowired
    Bench bench;

    @Autowired
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Invoices invoices;

    @Autowired
    Addresses addresses;

    @Autowired
    Customs customs;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Test
    void a_remake_sends_the_order_back_and_its_loss_and_our_postage_stand_in_its_figures() {
        Order order = handedOver("Ada Reed");
        long id = complaints.report(order.id(), CHARRED, WHO);
        complaints.photo(id, CameraPicture.jpeg(1200, 3), WHO);
        remedies.remake(
                BookingKey.fresh(),
                id,
                new Terms(PostageBy.WORKSHOP, Optional.of(Money.of("9.40", "EUR")), "We make it again."),
                WHO);
        assertThat(orders.get(order.id()).next()).contains(Stage.PRINT);
        Complaint decided = complaints.of(order.id()).getFirst();
        assertThat(decided.decision().orElseThrow().remedy()).isEqualTo(Remedy.REMAKE);
        assertThat(complaints.photos(id)).hasSize(1);
        Money lost = bench.mishaps(order.id()).getFirst().materialLost();
        assertThat(jdbc.sql("select material_lost from order_took where order_id = :id")
                        .param("id", order.id().value())
                        .query(java.math.BigDecimal.class)
                        .single())
                .isEqualByComparingTo(lost.amount().add(new java.math.BigDecimal("9.40")));
        assertThatThrownBy(() ->
                        remedies.settle(id, Remedy.NOTHING, new Terms(PostageBy.CUSTOMER, Optional.empty(), ""), WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("decided");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, WHO, "test");
        assertThat(complaints.since(workshop.today()))
                .extracting(Complaint::board)
                .contains("birch-ply, 3.0 mm");
    }

    @Test
    void what_is_made_again_for_nothing_is_declared_as_no_sale_when_it_crosses_a_border() {
        addresses.home("DE");
        Order order = handedOver("Dee Moor");
        assertThat(customs.usual(order, addresses.of(order)))
                .as("no address yet")
                .isEmpty();
        addresses.keep(
                order.id(),
                new PostalAddress(
                        "CH",
                        Map.of(
                                Part.NAME, "Dee Moor",
                                Part.STREET, "Seeweg 4",
                                Part.POSTAL_CODE, "8001",
                                Part.TOWN, "Nordhafen")),
                false,
                WHO);
        assertThat(customs.usual(order, addresses.of(order))).contains(GoodsCategory.SALE_OF_GOODS);
        remedies.remake(
                BookingKey.fresh(),
                complaints.report(order.id(), CHARRED, WHO),
                new Terms(PostageBy.WORKSHOP, Optional.empty(), ""),
                WHO);
        assertThat(customs.usual(orders.get(order.id()), addresses.of(order))).contains(GoodsCategory.REPLACEMENT);
    }

    @Test
    void what_is_sent_again_goes_in_a_parcel_of_its_own_and_the_first_one_stays_on_record() {
        Order order = handedOver("Bo Lind");
        Parcel first = parcels.everOf(order.id()).getLast();
        journey.delivered(first.id(), WHO);
        jdbc.sql("update customer_order set state = 'CONFIRMED', next_stage = 'HAND_OVER' where id = :id")
                .param("id", order.id().value())
                .update();
        Parcel second = parcels.pack(List.of(order.id()), WHO);
        assertThat(second.id()).isNotEqualTo(first.id());
        assertThat(second.state()).isEqualTo(ParcelState.PACKED);
        assertThat(parcels.everOf(order.id())).extracting(Parcel::id).containsExactly(first.id(), second.id());
    }

    @Test
    void a_refund_is_a_credit_note_of_the_papers_and_not_more_than_is_left_of_the_invoice() {
        Order order = handedOver("Cy Moor");
        long id = complaints.report(order.id(), CHARRED, WHO);
        Terms ours = new Terms(PostageBy.CUSTOMER, Optional.of(Money.of("5.00", "EUR")), "");
        Money five = Money.of("5.00", "EUR");
        assertThatThrownBy(() -> remedies.refund(BookingKey.fresh(), id, five, ours, WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no-invoice");
        invoices.issue(BookingKey.fresh(), order.id(), WHO);
        Money gross = order.price().gross();
        assertThatThrownBy(() -> remedies.refund(BookingKey.fresh(), id, gross.plus(five), ours, WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("range");
        remedies.refund(BookingKey.fresh(), id, five, ours, WHO);
        assertThat(invoices.account(order.id()).invoiced())
                .isEqualTo(gross.minus(five).rounded());
        assertThat(complaints.of(order.id()).getFirst().decision().orElseThrow().postage())
                .as("the customer bears it")
                .isEmpty();
    }

    @Test
    void a_customer_says_that_all_is_well_or_what_is_not_a_few_times_at_most() {
        Order order = handedOver("Di Orr");
        complaints.allIsWell(order.id());
        complaints.allIsWell(order.id());
        assertThat(complaints.isWell(order.id())).isTrue();
        assertThatThrownBy(() -> complaints.reportedByCustomer(order.id(), " ")).isInstanceOf(Refused.class);
        for (int i = 0; i < 5; i++) {
            complaints.reportedByCustomer(order.id(), "a corner is missing");
        }
        assertThatThrownBy(() -> complaints.reportedByCustomer(order.id(), "once more"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("enough");
        assertThat(complaints.undecided()).extracting(one -> one.order().id()).contains(order.id());
    }

    @Test
    void a_customer_adds_a_few_photos_to_what_they_said_and_to_nothing_else() {
        Order order = handedOver("Eve Rask");
        Order other = handedOver("Fay Holt");
        long own = complaints.reportedByCustomer(order.id(), "a corner is missing");
        long ours = complaints.report(order.id(), CHARRED, WHO);
        byte[] photo = CameraPicture.jpeg(600, 3);
        for (int i = 0; i < Complaints.MOST_PHOTOS_BY_CUSTOMER; i++) {
            complaints.photoByCustomer(order.id(), own, photo);
        }
        assertThat(complaints.photos(own)).hasSize(Complaints.MOST_PHOTOS_BY_CUSTOMER);
        assertThatThrownBy(() -> complaints.photoByCustomer(order.id(), own, photo))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("photos");
        assertThatThrownBy(() -> complaints.photoByCustomer(order.id(), ours, photo))
                .as("the workshop's own note")
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> complaints.photoByCustomer(other.id(), own, photo))
                .as("by another customer's link")
                .isInstanceOf(Refused.class);
    }

    private Order handedOver(String customer) {
        Order order = new PackedOrders(beans).one(customer, "Parcel");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
        return orders.get(order.id());
    }
}
