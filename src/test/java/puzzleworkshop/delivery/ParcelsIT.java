package puzzleworkshop.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ParcelsIT {

    private static final String WHO = "Robin";

    @Autowired
    BeanFactory beans;

    @Autowired
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Orders orders;

    @Autowired
    Bench bench;

    @Autowired
    SendingWays ways;

    @Autowired
    TransactionTemplate transactions;

    private PackedOrders packed;

    @BeforeEach
    void workshop() {
        packed = new PackedOrders(beans);
    }

    @Test
    void a_parcel_goes_from_packed_over_sent_to_delivered_and_its_order_is_handed_over() {
        Order order = packed.one("Ada Reed", "Parcel");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        assertThat(parcel.state()).isEqualTo(ParcelState.PACKED);
        parcels.tracked(parcel.id(), " 00 340\t434 1234\r\n", WHO);
        journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test");
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.SENT);
        assertThat(parcels.get(parcel.id()).tracking()).isEqualTo("003404341234");
        assertThat(orders.get(order.id()).state()).isEqualTo(OrderState.HANDED_OVER);
        journey.delivered(parcel.id(), WHO);
        journey.delivered(parcel.id(), WHO);
        assertThat(parcels.get(parcel.id()).arrivedAt()).isPresent();
    }

    @Test
    void what_is_collected_waits_ready_and_is_handed_over_when_the_customer_comes() {
        Order order = packed.one("Bo Lind", "Collection");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        journey.ready(parcel.id(), WHO);
        journey.ready(parcel.id(), WHO);
        assertThat(orders.get(order.id()).state()).isEqualTo(OrderState.CONFIRMED);
        journey.reminded(parcel.id(), order.id(), WHO);
        assertThatThrownBy(() -> journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test"))
                .isInstanceOf(Refused.class);
        journey.collected(BookingKey.fresh(), parcel.id(), WHO, "test");
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.COLLECTED);
        assertThat(orders.get(order.id()).state()).isEqualTo(OrderState.HANDED_OVER);
    }

    @Test
    void collected_by_mistake_it_waits_again_since_it_was_ready() {
        Order order = packed.one("Kit Berry", "Collection");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        Parcel ready = journey.ready(parcel.id(), WHO);
        journey.collected(BookingKey.fresh(), parcel.id(), WHO, "test");
        journey.takeBack(BookingKey.fresh(), parcel.id(), WHO);
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.READY);
        assertThat(parcels.get(parcel.id()).leftAt()).isEqualTo(ready.leftAt());
        Order atOnce = packed.one("Lea Stone", "Collection");
        Parcel neverReady = parcels.pack(List.of(atOnce.id()), WHO);
        journey.collected(BookingKey.fresh(), neverReady.id(), WHO, "test");
        journey.takeBack(BookingKey.fresh(), neverReady.id(), WHO);
        assertThat(parcels.get(neverReady.id()).state())
                .as("its customer was not told yet")
                .isEqualTo(ParcelState.PACKED);
    }

    @Test
    void several_orders_of_one_customer_leave_in_one_parcel_and_no_other_customers_comes_along() {
        List<Order> two = packed.of("Cy Moor", "Parcel", 2);
        Order stranger = packed.one("Di Orr", "Parcel");
        parcels.pack(List.of(two.getFirst().id()), WHO);
        parcels.pack(List.of(two.getLast().id()), WHO);
        Parcel both = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        assertThat(both.orders()).hasSize(2);
        assertThat(parcels.underWay().stream().filter(one -> one.customer() == both.customer()))
                .as("the other one is empty, and gone")
                .hasSize(1);
        assertThatThrownBy(() -> parcels.pack(List.of(two.getFirst().id(), stranger.id()), WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("other-customer");
        assertThat(parcels.alone(two.getLast().id(), WHO).orders()).hasSize(1);
        parcels.pack(two.stream().map(Order::id).toList(), WHO);
        Parcel again = parcels.everOf(two.getFirst().id()).getLast();
        journey.send(BookingKey.fresh(), again.id(), Optional.empty(), WHO, "test");
        assertThat(orders.all(again.orderIds())).allMatch(one -> one.state() == OrderState.HANDED_OVER);
    }

    @Test
    void ticked_at_the_bench_it_has_left_all_the_same_and_taken_back_it_is_here_again() {
        Order order = packed.one("Eve Rask", "Parcel");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
        Parcel parcel = parcels.everOf(order.id()).getLast();
        assertThat(parcel.state()).isEqualTo(ParcelState.SENT);
        bench.undo(BookingKey.fresh(), order.id(), WHO);
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.PACKED);
        journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test");
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.SENT);
    }

    @Test
    void a_hand_over_that_is_not_taken_back_after_all_leaves_its_parcel_where_it_was() {
        Order order = packed.one("Eve Rask", "Parcel");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
        Parcel parcel = parcels.everOf(order.id()).getLast();
        transactions.executeWithoutResult(transaction -> {
            bench.undo(BookingKey.fresh(), order.id(), WHO);
            assertThat(parcels.get(parcel.id()).state())
                    .as("with its order, not later")
                    .isEqualTo(ParcelState.PACKED);
            transaction.setRollbackOnly();
        });
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.SENT);
        assertThat(orders.get(order.id()).state()).isEqualTo(OrderState.HANDED_OVER);
    }

    @Test
    void a_parcel_of_several_orders_is_taken_back_at_once() {
        List<Order> two = packed.of("Ivo Lund", "Parcel", 2);
        Parcel parcel = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test");
        BookingKey key = BookingKey.fresh();
        journey.takeBack(key, parcel.id(), WHO);
        journey.takeBack(key, parcel.id(), WHO);
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.PACKED);
        assertThat(orders.all(parcel.orderIds()))
                .hasSize(2)
                .allMatch(one -> one.next().equals(Optional.of(Stage.HAND_OVER)));
        assertThatThrownBy(() -> journey.takeBack(BookingKey.fresh(), parcel.id(), WHO))
                .isInstanceOf(Refused.class);
    }

    @Test
    void what_was_weighed_holds_only_for_what_lay_in_it_then() {
        ParcelMeasure weighed = ParcelMeasure.of(900, Length.mm(350), Length.mm(250), Length.mm(50));
        List<Order> three = packed.of("Jo Vance", "Parcel", 3);
        Parcel parcel = parcels.pack(List.of(three.getFirst().id()), WHO);
        parcels.weighed(parcel.id(), weighed);
        assertThat(parcels.pack(List.of(three.getFirst().id()), WHO).measure())
                .as("nothing was put in")
                .isPresent();
        Parcel all = parcels.pack(three.stream().map(Order::id).toList(), WHO);
        assertThat(all.measure()).as("two more lie in it").isEmpty();
        parcels.weighed(all.id(), weighed);
        parcels.alone(three.getLast().id(), WHO);
        assertThat(parcels.get(all.id()).measure()).as("one was taken out").isEmpty();
    }

    @Test
    void an_order_not_yet_packed_keeps_the_whole_parcel_here() {
        List<Order> two = packed.of("Fay Holt", "Parcel", 2);
        Parcel parcel = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        bench.undo(BookingKey.fresh(), two.getLast().id(), WHO);
        assertThatThrownBy(() -> journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test"))
                .isInstanceOf(Refused.class);
        assertThat(orders.get(two.getFirst().id()).state()).isEqualTo(OrderState.CONFIRMED);
        assertThat(parcels.get(parcel.id()).state()).isEqualTo(ParcelState.PACKED);
    }

    @Test
    void one_number_stands_on_one_parcel() {
        Parcel first = parcels.pack(List.of(packed.one("Gus Dahl", "Parcel").id()), WHO);
        Parcel second = parcels.pack(List.of(packed.one("Hal Berg", "Parcel").id()), WHO);
        parcels.tracked(first.id(), "RR123456785XX", WHO);
        assertThatThrownBy(() -> parcels.tracked(second.id(), "RR 123 456 785 XX", WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("twice");
        assertThat(parcels.byTracking("RR123456785XX")).extracting(Parcel::id).containsExactly(first.id());
    }

    @Test
    void before_it_leaves_another_way_can_be_chosen() {
        Parcel parcel = parcels.pack(List.of(packed.one("Ina Frost", "Parcel").id()), WHO);
        parcels.by(
                parcel.id(), ways.orUsual(Optional.of(packed.way("Collection").id())), WHO);
        journey.ready(parcel.id(), WHO);
        assertThatThrownBy(() -> parcels.by(
                        parcel.id(),
                        ways.orUsual(Optional.of(packed.way("Parcel").id())),
                        WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("too-late");
    }
}
