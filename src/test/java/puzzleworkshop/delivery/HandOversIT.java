package puzzleworkshop.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Complaints.Report;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.delivery.returns.Remedies.Terms;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.Reach;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.Punctuality;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.schedule.DueVerdict;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class HandOversIT {

    private static final String WHO = "Robin";

    @Autowired
    BeanFactory beans;

    @Autowired
    HandOvers handOvers;

    @Autowired
    WeekPlan plan;

    @Autowired
    Punctuality punctuality;

    @Autowired
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Bench bench;

    @Autowired
    Orders orders;

    @Autowired
    Complaints complaints;

    @Autowired
    Remedies remedies;

    @Autowired
    SendingWays ways;

    @Autowired
    WayAdvice advice;

    @Autowired
    Addresses addresses;

    @Autowired
    Receipts receipts;

    @Autowired
    Workshop workshop;

    @Autowired
    DataSource database;

    private PackedOrders packed;

    @BeforeEach
    void workshop() {
        CleanDatabase.now(database);
        packed = new PackedOrders(beans);
    }

    @Test
    void the_page_of_the_day_asks_no_more_for_many_parcels_than_for_few_and_says_what_each_needs() {
        List<Order> two = packed.of("Ada Reed", "Parcel", 2);
        packed.one("Bo Lind", "Collection");
        parcels.pack(List.of(two.getFirst().id()), WHO);
        int few = queries();
        for (int i = 0; i < 3; i++) {
            parcels.pack(
                    List.of(packed.one("Customer " + i, i % 2 == 0 ? "Parcel" : "Collection")
                            .id()),
                    WHO);
        }
        assertThat(queries()).isEqualTo(few);

        HandOvers.Day day = handOvers.now();
        assertThat(day.toCollect()).hasSize(2);
        HandOvers.Entry ada = entry(day.toSend(), "Ada Reed");
        assertThat(ada.together()).hasSize(1);
        assertThat(ada.to()).isEmpty();
        Money price = two.getFirst().price().gross().rounded();
        assertThat(ada.open()).contains(price);

        keepAddress(two.getFirst(), "Quay Street 4", false);
        receipts.receive(BookingKey.fresh(), two.getFirst().id(), price, Payment.Way.CASH, workshop.today(), "", WHO);
        parcels.pack(two.stream().map(Order::id).toList(), WHO);
        HandOvers.Entry both = entry(handOvers.now().toSend(), "Ada Reed");
        assertThat(both.orders()).hasSize(2);
        assertThat(both.open())
                .as("one of two is paid")
                .contains(two.getLast().price().gross().rounded());
        assertThat(both.to().orElseThrow().part(Part.TOWN)).isEqualTo("Northhaven");
        assertThat(addresses.proposed(two.getLast()).part(Part.POSTAL_CODE)).isEqualTo("24103");
    }

    @Test
    void what_only_waits_for_its_customer_is_never_late_in_the_plan() {
        Order order = packed.one("Bea Moor", "Collection");
        TestClock.set(Instant.now().plus(Duration.ofDays(40)));
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().verdict())
                .as("promised in 20 days, and nobody was told that it is ready")
                .isEqualTo(DueVerdict.LATE);
        journey.ready(parcels.pack(List.of(order.id()), WHO).id(), WHO);
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().verdict())
                .as("it stays at the bench, where it is handed over")
                .isEqualTo(DueVerdict.ON_TIME);
        assertThat(punctuality.of(orders.get(order.id())))
                .as("though its day is past")
                .isEmpty();
    }

    @Test
    void what_waits_longer_than_its_way_keeps_it_is_asked_for() {
        Order order = packed.one("Cy Moor", "Collection");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        journey.ready(parcel.id(), WHO);
        assertThat(of("Cy Moor")).isEmpty();
        TestClock.set(Instant.now().plus(Duration.ofDays(15)));
        assertThat(of("Cy Moor")).hasSize(1);
    }

    @Test
    void what_was_made_again_is_sent_like_anything_else_and_what_was_sent_before_stays_as_it_was() {
        for (String way : List.of("Parcel", "Collection")) {
            Order order = packed.one("Again by " + way, way);
            bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
            Parcel first = parcels.everOf(order.id()).getLast();
            if (!first.isCollected()) {
                parcels.tracked(first.id(), "FIRST-1", WHO);
                journey.delivered(first.id(), WHO);
            }
            long complaint = complaints.report(order.id(), new Report(Reason.CHARRED, Stage.CUT, "brown"), WHO);
            remedies.remake(BookingKey.fresh(), complaint, new Terms(PostageBy.CUSTOMER, Optional.empty(), ""), WHO);
            BenchOrders made = new BenchOrders(beans, true);
            made.holdBoard(order);
            made.bringTo(order.id(), Stage.HAND_OVER);

            HandOvers.Day day = handOvers.now();
            HandOvers.Entry again = entry(way.equals("Parcel") ? day.toSend() : day.toCollect(), "Again by " + way);
            assertThat(again.parcel()).as("the first parcel is not this one").isEmpty();
            assertThat(again.state()).isEqualTo(ParcelState.PACKED);
            assertThat(handOvers.of(orders.get(order.id())).orElseThrow().parcel())
                    .isEmpty();
            Parcel second = parcels.pack(again.ids(), WHO);
            if (way.equals("Parcel")) {
                journey.send(BookingKey.fresh(), second.id(), Optional.of("SECOND-2"), WHO, "test");
            } else {
                journey.ready(second.id(), WHO);
                journey.collected(BookingKey.fresh(), second.id(), WHO, "test");
            }
            assertThat(orders.get(order.id()).next()).isEmpty();
            assertThat(parcels.everOf(order.id())).hasSize(2);
            assertThat(parcels.get(first.id()).state().hasArrived()).isTrue();
            assertThat(parcels.get(first.id()).tracking()).isEqualTo(first.isCollected() ? "" : "FIRST-1");
            assertThat(parcels.now(orders.get(order.id())).orElseThrow().id()).isEqualTo(second.id());
        }
        assertThat(parcels.byTracking("SECOND-2").getFirst().state()).isEqualTo(ParcelState.SENT);
    }

    @Test
    void only_what_goes_the_same_way_to_the_same_place_comes_into_one_parcel() {
        List<Order> three = packed.of("Ola Berg", "Parcel", 3);
        Order here = three.getFirst();
        Order elsewhere = three.get(1);
        Order fetched = three.getLast();
        keepAddress(here, "Quay Street 4", false);
        keepAddress(elsewhere, "Mill Lane 9", true);
        Parcel own = parcels.pack(List.of(fetched.id()), WHO);
        parcels.by(own.id(), ways.orUsual(Optional.of(packed.way("Collection").id())), WHO);
        assertThat(handOvers.now().toSend().stream()
                        .filter(entry -> entry.first().customer().name().equals("Ola Berg")))
                .hasSize(2)
                .allSatisfy(entry -> assertThat(entry.together()).isEmpty());
        assertThatThrownBy(() -> parcels.pack(List.of(here.id(), elsewhere.id()), WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("other-place");
        assertThatThrownBy(() -> parcels.pack(List.of(here.id(), fetched.id()), WHO))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("other-way");

        keepAddress(elsewhere, "Quay Street 4", true);
        assertThat(handOvers.of(here).orElseThrow().to())
                .isEqualTo(handOvers.of(elsewhere).orElseThrow().to());
        Parcel both = parcels.pack(List.of(here.id(), elsewhere.id()), WHO);
        keepAddress(elsewhere, "Mill Lane 9", true);
        assertThatThrownBy(() -> journey.send(BookingKey.fresh(), both.id(), Optional.empty(), WHO, "test"))
                .as("it would go to the wrong place")
                .isInstanceOf(Refused.class)
                .hasMessageContaining("other-place");
        parcels.alone(elsewhere.id(), WHO);
        journey.send(BookingKey.fresh(), both.id(), Optional.empty(), WHO, "test");
        assertThat(orders.get(here.id()).next()).isEmpty();
        assertThat(orders.get(elsewhere.id()).next()).contains(Stage.HAND_OVER);
    }

    @Test
    void a_way_within_the_country_is_not_advised_for_a_parcel_abroad() {
        addresses.home("DE");
        SendingWay home =
                ways.orUsual(Optional.of(packed.way("Parcel").id())).reaching(new Reach(Reach.Kind.HOME, Set.of()));
        ways.save(home);
        assertThat(ways.orUsual(Optional.of(home.way().id())).reach()).isEqualTo(home.reach());
        assertThatThrownBy(() -> ways.save(home.reaching(new Reach(Reach.Kind.COUNTRIES, Set.of()))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("countries");
        Order order = packed.one("Pia Lund", "Parcel");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        Parcel weighed =
                parcels.weighed(parcel.id(), ParcelMeasure.of(900, Length.mm(300), Length.mm(200), Length.mm(50)));
        keepAddress(order, "Quay Street 4", false);
        assertThat(advice.of(order, Optional.of(weighed)).orElseThrow().best()).isPresent();
        ways.save(home.reaching(new Reach(Reach.Kind.COUNTRIES, Set.of("CH", "AT"))));
        assertThat(advice.of(order, Optional.of(weighed)).orElseThrow().best()).isEmpty();
        assertThat(advice.of(order, Optional.of(weighed)).orElseThrow().refused())
                .extracting("key")
                .contains("delivery.limit.country");
    }

    private void keepAddress(Order order, String street, boolean thisOrderOnly) {
        addresses.keep(
                order.id(),
                new PostalAddress(
                        "DE",
                        Map.of(
                                Part.NAME,
                                order.customer().name(),
                                Part.STREET,
                                street,
                                Part.POSTAL_CODE,
                                "24103",
                                Part.TOWN,
                                "Northhaven")),
                thisOrderOnly,
                WHO);
    }

    @Test
    void a_number_typed_for_a_parcel_that_cannot_be_sent_is_not_kept_with_it() {
        List<Order> two = packed.of("Ned Rowe", "Parcel", 2);
        Parcel parcel = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        bench.undo(BookingKey.fresh(), two.getLast().id(), WHO);
        assertThatThrownBy(() -> journey.send(BookingKey.fresh(), parcel.id(), Optional.of("0034043"), WHO, "test"))
                .isInstanceOf(Refused.class);
        assertThat(parcels.get(parcel.id()).tracking()).isEmpty();
    }

    private List<HandOvers.Entry> of(String customer) {
        return handOvers.notCollected().stream()
                .filter(entry -> entry.first().customer().name().equals(customer))
                .toList();
    }

    private static HandOvers.Entry entry(List<HandOvers.Entry> entries, String customer) {
        return entries.stream()
                .filter(entry -> entry.first().customer().name().equals(customer))
                .findFirst()
                .orElseThrow();
    }

    private int queries() {
        Logger log = (Logger) LoggerFactory.getLogger(JdbcTemplate.class);
        Level before = log.getLevel();
        ListAppender<ILoggingEvent> asked = new ListAppender<>();
        asked.start();
        log.addAppender(asked);
        log.setLevel(Level.DEBUG);
        try {
            handOvers.now();
        } finally {
            log.setLevel(before);
            log.detachAppender(asked);
        }
        return (int) asked.list.stream()
                .filter(line -> line.getFormattedMessage().startsWith("Executing prepared SQL statement"))
                .count();
    }
}
