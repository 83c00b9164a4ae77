package puzzleworkshop.delivery.sending;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CheapestWayTest {

    private static final Currency EUR = Currency.getInstance("EUR");
    /** A Thursday. */
    private static final LocalDateTime THURSDAY_NOON = LocalDateTime.of(2026, 12, 3, 12, 0);

    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final LocalDate MONDAY = LocalDate.of(2026, 12, 7);

    private final ParcelMeasure small = ParcelMeasure.of(900, Length.mm(350), Length.mm(250), Length.mm(50));

    @Test
    void the_cheapest_that_keeps_the_promise_is_proposed_and_the_next_one_named() {
        CheapestWay.Answer answer =
                ask(small, Optional.of(MONDAY), way("slow", 2, line(2000, "4.99")), way("fast", 1, line(2000, "9.90")));
        assertThat(answer.best().orElseThrow().way().name()).isEqualTo("slow");
        assertThat(answer.reason().key()).isEqualTo("delivery.way.cheapest");
        assertThat(answer.reason().arguments()).contains("fast");
    }

    @Test
    void a_cheaper_one_that_comes_too_late_is_named_as_such() {
        CheapestWay.Answer answer =
                ask(small, Optional.of(FRIDAY), way("slow", 2, line(2000, "4.99")), way("fast", 1, line(2000, "9.90")));
        assertThat(answer.best().orElseThrow().way().name()).isEqualTo("fast");
        assertThat(answer.reason().key()).isEqualTo("delivery.way.cheaper-late");
        assertThat(answer.reason().arguments()).contains("slow");
    }

    @Test
    void when_none_keeps_it_the_first_to_arrive_is_proposed() {
        CheapestWay.Answer answer = ask(
                small,
                Optional.of(THURSDAY_NOON.toLocalDate()),
                way("slow", 2, line(2000, "4.99")),
                way("fast", 1, line(2000, "9.90")));
        assertThat(answer.best().orElseThrow().way().name()).isEqualTo("fast");
        assertThat(answer.reason().key()).isEqualTo("delivery.way.late");
    }

    @Test
    void after_the_cut_off_hour_and_on_a_free_day_it_leaves_with_the_next_one() {
        SendingWay fast = way("fast", 1, line(2000, "9.90"));
        CheapestWay.Answer late = CheapestWay.of(
                List.of(fast),
                small,
                THURSDAY_NOON.withHour(17),
                Optional.empty(),
                FreeDays.holidays(Set.of(FRIDAY)),
                Optional.empty());
        assertThat(late.best().orElseThrow().leaves().toLocalDate()).isEqualTo(MONDAY);
        assertThat(late.best().orElseThrow().arrives()).isEqualTo(MONDAY.plusDays(1));
        assertThat(late.best().orElseThrow().journey().why().key()).isEqualTo("planning.journey");
    }

    @Test
    void one_that_is_too_long_and_thick_is_refused_by_length_and_girth() {
        SendingWay limited = new SendingWay(
                way("slow", 2).way(),
                WayKind.PARCEL,
                new SendingLimits(OptionalInt.empty(), Optional.empty(), Optional.of(Length.mm(1390))),
                OptionalInt.empty(),
                "",
                "",
                14,
                List.of(line(5000, "4.99")),
                Reach.ANYWHERE);
        // 400 + 2 · (300 + 200) = 1400 mm
        CheapestWay.Answer answer =
                ask(ParcelMeasure.of(900, Length.mm(400), Length.mm(300), Length.mm(200)), Optional.empty(), limited);
        assertThat(answer.best()).isEmpty();
        assertThat(answer.refused()).singleElement().extracting("key").isEqualTo("delivery.limit.girth");
    }

    @Test
    void where_volume_counts_the_price_is_that_of_the_volumetric_weight() {
        SendingWay byVolume = new SendingWay(
                way("air", 1).way(),
                WayKind.PARCEL,
                SendingLimits.NONE,
                OptionalInt.of(5000),
                "",
                "",
                14,
                List.of(line(2000, "10.00"), line(5000, "20.00")),
                Reach.ANYWHERE);
        // 40 × 30 × 20 cm / 5000 = 4.8 kg
        CheapestWay.Answer answer =
                ask(ParcelMeasure.of(900, Length.mm(400), Length.mm(300), Length.mm(200)), Optional.empty(), byVolume);
        assertThat(answer.best().orElseThrow().price()).contains(Money.of("20.00", "EUR"));
    }

    @Test
    void no_way_that_takes_it_and_keeps_the_promise_is_cheaper() {
        Random random = new Random(Seeds.from(1712));
        for (int round = 0; round < 300; round++) {
            List<SendingWay> ways = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                List<SendingPrice> lines = new ArrayList<>();
                for (int k = 0; k < random.nextInt(4); k++) {
                    lines.add(line(
                            500 * (1 + random.nextInt(8)),
                            BigDecimal.valueOf(300 + random.nextInt(1500), 2).toString()));
                }
                ways.add(way("w" + i, random.nextInt(5), lines.toArray(SendingPrice[]::new)));
            }
            ParcelMeasure parcel =
                    ParcelMeasure.of(100 + random.nextInt(4000), Length.mm(300), Length.mm(200), Length.mm(60));
            LocalDate promised = THURSDAY_NOON.toLocalDate().plusDays(random.nextInt(8));
            CheapestWay.Answer answer = ask(parcel, Optional.of(promised), ways.toArray(SendingWay[]::new));
            List<SendingWay> able = ways.stream()
                    .filter(way -> way.prices().stream().anyMatch(l -> parcel.grams() <= l.upToGrams()))
                    .filter(way -> !way.way()
                            .arrives(
                                    way.way()
                                            .leaves(THURSDAY_NOON, FreeDays.NONE)
                                            .toLocalDate(),
                                    FreeDays.NONE)
                            .isAfter(promised))
                    .toList();
            if (able.isEmpty()) {
                continue;
            }
            BigDecimal least = able.stream()
                    .flatMap(way -> way.prices().stream())
                    .filter(l -> parcel.grams() <= l.upToGrams())
                    .map(l -> l.price().amount())
                    .min(BigDecimal::compareTo)
                    .orElseThrow();
            assertThat(answer.best().orElseThrow().price().orElseThrow().amount())
                    .isEqualByComparingTo(least);
        }
    }

    @Test
    void a_way_within_the_country_is_not_proposed_for_a_parcel_that_leaves_it() {
        SendingWay home = way("home", 1, line(2000, "4.99")).reaching(new Reach(Reach.Kind.HOME, Set.of()));
        SendingWay near =
                way("near", 2, line(2000, "8.90")).reaching(new Reach(Reach.Kind.COUNTRIES, Set.of("AT", "CH")));
        SendingWay world = way("world", 3, line(2000, "19.90"));
        assertThat(to("DE", home, near, world).best().orElseThrow().way().name())
                .isEqualTo("home");
        CheapestWay.Answer abroad = to("CH", home, near, world);
        assertThat(abroad.best().orElseThrow().way().name()).isEqualTo("near");
        assertThat(abroad.refused()).singleElement().satisfies(why -> {
            assertThat(why.key()).isEqualTo("delivery.limit.country");
            assertThat(why.arguments()).containsExactly("home", "Switzerland");
        });
        assertThat(to("JP", home, near, world).best().orElseThrow().way().name())
                .isEqualTo("world");
        assertThat(to("JP", home, near).best()).isEmpty();
    }

    private CheapestWay.Answer to(String country, SendingWay... ways) {
        return CheapestWay.of(
                List.of(ways),
                small,
                THURSDAY_NOON,
                Optional.empty(),
                FreeDays.NONE,
                Optional.of(new Reach.Destination(country, "DE")));
    }

    @Test
    void a_tracking_number_becomes_a_link_of_the_owners_pattern() {
        SendingWay way = new SendingWay(
                way("slow", 2).way(),
                WayKind.PARCEL,
                SendingLimits.NONE,
                OptionalInt.empty(),
                "https://parcels.example/follow?no={code}&lang=en",
                "",
                14,
                List.of(),
                Reach.ANYWHERE);
        assertThat(way.link("AB 1/2")).contains("https://parcels.example/follow?no=AB+1%2F2&lang=en");
        assertThat(way.link("")).isEmpty();
    }

    private static CheapestWay.Answer ask(ParcelMeasure parcel, Optional<LocalDate> promised, SendingWay... ways) {
        return CheapestWay.of(List.of(ways), parcel, THURSDAY_NOON, promised, FreeDays.NONE, Optional.empty());
    }

    private static SendingPrice line(int grams, String price) {
        return new SendingPrice(
                grams,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Money.of(new BigDecimal(price), EUR));
    }

    private static SendingWay way(String name, int days, SendingPrice... lines) {
        return new SendingWay(
                new DeliveryWay(
                        1,
                        name,
                        EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
                        LocalTime.of(16, 0),
                        days,
                        EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY)),
                WayKind.PARCEL,
                SendingLimits.NONE,
                OptionalInt.empty(),
                "",
                "",
                14,
                List.of(lines),
                Reach.ANYWHERE);
    }
}
