package puzzleworkshop.supplies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.supplies.StockCounts.Count;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

@DatabaseTest
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SuppliesIT {

    private static final OrderRef ORDER = new OrderRef(new OrderId(17), "2026-9017");

    @Autowired
    Supplies supplies;

    @Autowired
    StockCounts counts;

    @Autowired
    ShoppingList shopping;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    @BeforeEach
    void clean() {
        CleanDatabase.now(dataSource);
        PlainOrders.withIds(dataSource, ORDER.id().value());
    }

    @Test
    void a_roll_bought_by_the_roll_is_used_by_the_metre_at_its_average_cost() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("2"), Money.of("20", "EUR"), "North Bay Packaging", "mara");
        supplies.use(roll, n("12.5"), ORDER, "mara");
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("16", "EUR"), "North Bay Packaging", "mara");
        // 100 m at 0.20; 12.5 m used; 87.5 m at 0.20 and 50 m at 0.32 are 137.5 m at 0.243636
        SupplyItem item = supplies.find(roll).orElseThrow();
        assertThat(item.stock()).isEqualByComparingTo("137.5");
        assertThat(item.unitCost().amount()).isEqualByComparingTo("0.243636");
        assertThat(supplies.usedFor(ORDER.id())).singleElement().satisfies(used -> {
            assertThat(used.cost().amount()).isEqualByComparingTo("2.5");
            assertThat(used.stockAfter()).isEqualByComparingTo("87.5");
        });
        assertThat(supplies.purchases(roll)).hasSize(2);
        assertThat(supplies.unitCost(roll, Instant.now()))
                .hasValueSatisfying(cost -> assertThat(cost.amount()).isEqualByComparingTo("0.243636"));
    }

    @Test
    void stock_does_not_go_below_zero_unless_someone_says_why() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("10", "EUR"), "", "mara");
        assertThatThrownBy(() -> supplies.use(roll, n("51"), ORDER, "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("supplies.not-enough");
        assertThatThrownBy(() -> supplies.useKnowingly(roll, n("51"), ORDER, " ", "mara"))
                .isInstanceOf(Refused.class);
        supplies.useKnowingly(roll, n("51"), ORDER, "a second roll lay behind the press", "mara");
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("-1");
    }

    @Test
    void the_database_itself_refuses_a_silent_negative_and_a_rewritten_line() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("10", "EUR"), "", "mara");
        assertThatThrownBy(() -> jdbc.sql("""
            insert into supply_movement (item_id, number, kind, quantity, unit_cost, stock_after, average_after, who, at)
            values (:item, 2, 'USED', -60, 0.2, -10, 0.2, 'x', now())
            """).param("item", roll.value()).update())
                .hasMessageContaining("supply_never_silently_below_zero");
        assertThatThrownBy(() -> jdbc.sql("delete from supply_movement").update())
                .hasMessageContaining("never changed");
    }

    @Test
    void the_database_refuses_use_for_an_order_that_is_not_kept() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("10", "EUR"), "", "mara");
        assertThatThrownBy(() -> supplies.use(roll, n("1"), new OrderRef(new OrderId(18), ""), "mara"))
                .hasMessageContaining("supply_movement_order");
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("50");
    }

    @Test
    void the_currency_stays_once_something_has_a_price() {
        WorkshopProfile euros =
                WorkshopProfile.named("Birch", Currency.getInstance("EUR"), UnitSystem.MILLIMETRES, ZoneId.of("UTC"));
        workshop.save(euros);
        tape();
        WorkshopProfile yen =
                WorkshopProfile.named("Birch", Currency.getInstance("JPY"), UnitSystem.MILLIMETRES, ZoneId.of("UTC"));
        assertThatThrownBy(() -> workshop.save(yen))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("workshop.currency.fixed");
        assertThat(workshop.currency()).isEqualTo(Currency.getInstance("EUR"));
        workshop.save(
                WorkshopProfile.named("Birch & Beam", euros.currency(), UnitSystem.MILLIMETRES, ZoneId.of("UTC")));
        assertThat(workshop.profile().name()).isEqualTo("Birch & Beam");
    }

    @Test
    void many_hands_at_once_never_use_the_same_last_metre() throws Exception {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("10", "EUR"), "", "mara");
        List<Callable<Boolean>> hands = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            hands.add(() -> {
                try {
                    supplies.use(roll, n("4"), ORDER, "hand");
                    return true;
                } catch (Refused none) {
                    return false;
                }
            });
        }
        int served = 0;
        try (ExecutorService bench = Executors.newFixedThreadPool(8)) {
            for (Future<Boolean> hand : bench.invokeAll(hands)) {
                served += hand.get() ? 1 : 0;
            }
        }
        assertThat(served).isEqualTo(12);
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("2");
        assertThat(supplies.countMovements(roll)).isEqualTo(13);
    }

    @Test
    void taking_stock_books_the_difference_only() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("1"), Money.of("10", "EUR"), "", "mara");
        assertThat(count(roll, "50")).isEmpty();
        assertThat(count(roll, "47.5"))
                .hasValueSatisfying(found -> assertThat(found.quantity()).isEqualByComparingTo("-2.5"));
    }

    @Test
    void what_is_used_while_somebody_counts_is_not_booked_a_second_time() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("0.2"), Money.of("10", "EUR"), "", "mara");
        Count agrees = new Count(roll, supplies.countMovements(roll), n("10"));
        Count finds = new Count(roll, supplies.countMovements(roll), n("9"));
        supplies.use(roll, n("2"), ORDER, "kim");
        assertThat(counts.count(agrees.key(), agrees, "mara"))
                .as("10 lay there, and 10 were counted")
                .isEmpty();
        assertThat(stock(roll)).isEqualByComparingTo("8");
        assertThat(counts.count(finds.key(), finds, "mara"))
                .hasValueSatisfying(found -> assertThat(found.quantity()).isEqualByComparingTo("-1"));
        assertThat(stock(roll)).isEqualByComparingTo("7");
    }

    @Test
    void two_windows_that_saw_the_same_shelf_count_it_once() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("0.2"), Money.of("10", "EUR"), "", "mara");
        List<Count> counted = List.of(new Count(roll, counts.seen().get(roll), n("9")));
        counts.take(BookingKey.fresh(), counted, "mara");
        counts.take(BookingKey.fresh(), counted, "mara");
        assertThat(stock(roll)).isEqualByComparingTo("9");
    }

    @Test
    void more_used_since_than_was_counted_asks_for_another_count() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("0.2"), Money.of("10", "EUR"), "", "mara");
        Count few = new Count(roll, supplies.countMovements(roll), n("3"));
        supplies.use(roll, n("5"), ORDER, "kim");
        assertThatThrownBy(() -> counts.count(few.key(), few, "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("supplies.count.overtaken");
        assertThat(stock(roll)).isEqualByComparingTo("5");
    }

    private Optional<Movement> count(SupplyId supply, String counted) {
        Count count = new Count(supply, supplies.countMovements(supply), n(counted));
        return counts.count(count.key(), count, "mara");
    }

    private BigDecimal stock(SupplyId supply) {
        return supplies.find(supply).orElseThrow().stock();
    }

    @Test
    void one_day_of_use_is_no_rate_and_what_has_run_out_stands_on_the_shopping_list() {
        SupplyId roll = tape();
        supplies.buy(BookingKey.fresh(), roll, n("2"), Money.of("20", "EUR"), "North Bay Packaging", "mara");
        assertThat(shopping.due()).isEmpty();
        supplies.use(roll, n("90"), ORDER, "mara");
        assertThat(shopping.due()).isEmpty();
        assertThat(shopping.all()).allMatch(item -> !item.item().id().equals(Optional.of(roll)) || item.isTooEarly());
        supplies.use(roll, n("10"), ORDER, "mara");
        assertThat(shopping.due()).singleElement().satisfies(due -> {
            assertThat(due.item().name()).isEqualTo("Pale masking tape");
            assertThat(due.toBuy()).isEqualTo(1);
            assertThat(due.lastSupplier())
                    .hasValueSatisfying(s -> assertThat(s.name()).isEqualTo("North Bay Packaging"));
        });
    }

    @Test
    void vinyl_and_unknown_film_are_named_as_forbidden_at_the_laser() {
        SupplyId good = sticker("Matt paper sticker", LaserFacts.Pvc.FREE);
        SupplyId vinyl = sticker("Outdoor sticker", LaserFacts.Pvc.PVC);
        SupplyId unknown = sticker("Gift from a friend", LaserFacts.Pvc.UNKNOWN);
        assertThat(supplies.forbiddenAtLaser(List.of(good))).isEmpty();
        assertThat(supplies.forbiddenAtLaser(List.of(good, vinyl, unknown)))
                .extracting(sentence -> sentence.key())
                .containsExactly("supplies.forbidden.pvc-PVC", "supplies.forbidden.pvc-UNKNOWN");
    }

    @Test
    void one_of_each_kind_is_the_usual_and_names_stand_once() {
        SupplyId first = sticker("Matt paper sticker", LaserFacts.Pvc.FREE);
        SupplyId second = sticker("Satin paper sticker", LaserFacts.Pvc.FREE);
        assertThat(supplies.usual(SupplyKind.STICKER_PAPER))
                .flatMap(SupplyItem::id)
                .hasValue(second);
        assertThat(supplies.find(first).orElseThrow().usual()).isFalse();
        assertThatThrownBy(() -> sticker("Matt paper sticker", LaserFacts.Pvc.FREE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("supplies.name-twice");
    }

    private SupplyId tape() {
        return supplies.keep(new SupplyItem(
                        Optional.empty(),
                        "Pale masking tape",
                        SupplyKind.MASKING_TAPE,
                        UseUnit.METRE,
                        Optional.of(Length.mm(300)),
                        Optional.empty(),
                        "roll of 50 m",
                        n("50"),
                        new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                        7,
                        3,
                        true,
                        false,
                        BigDecimal.ZERO,
                        Money.of("0", "EUR")))
                .id()
                .orElseThrow();
    }

    private SupplyId sticker(String name, LaserFacts.Pvc pvc) {
        return supplies.keep(new SupplyItem(
                        Optional.empty(),
                        name,
                        SupplyKind.STICKER_PAPER,
                        UseUnit.SHEET,
                        Optional.of(Length.mm(297)),
                        Optional.of(Length.mm(420)),
                        "pack of 50",
                        n("50"),
                        new LaserFacts(pvc, LaserFacts.Adhesive.DRY),
                        7,
                        3,
                        true,
                        false,
                        BigDecimal.ZERO,
                        Money.of("0", "EUR")))
                .id()
                .orElseThrow();
    }

    private static BigDecimal n(String value) {
        return new BigDecimal(value);
    }
}
