package puzzleworkshop.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
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
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Addresses addresses;

    @Autowired
    Invoices invoices;

    @Autowired
    Workshop workshop;

    private PackedOrders packed;

    @BeforeEach
    void workshop() {
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

        addresses.keep(
                two.getFirst().id(),
                new PostalAddress(
                        "DE",
                        Map.of(
                                Part.NAME,
                                "Ada Reed",
                                Part.STREET,
                                "Quay Street 4",
                                Part.POSTAL_CODE,
                                "24103",
                                Part.TOWN,
                                "Northhaven")),
                false,
                WHO);
        invoices.receive(BookingKey.fresh(), two.getFirst().id(), price, Payment.Way.CASH, workshop.today(), "", WHO);
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
    void what_waits_longer_than_its_way_keeps_it_is_asked_for() {
        Order order = packed.one("Cy Moor", "Collection");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        journey.ready(parcel.id(), WHO);
        assertThat(of("Cy Moor")).isEmpty();
        TestClock.set(Instant.now().plus(Duration.ofDays(15)));
        assertThat(of("Cy Moor")).hasSize(1);
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
