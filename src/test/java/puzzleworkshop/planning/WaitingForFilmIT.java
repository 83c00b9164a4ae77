package puzzleworkshop.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.DatabaseTest;

/** What comes onto the shelf or off it reaches the plan by itself: nothing here tells the plan. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class WaitingForFilmIT {

    @Autowired
    WeekPlan plan;

    @Autowired
    Supplies supplies;

    @Autowired
    BeanFactory beans;

    @Test
    void when_the_film_runs_out_the_orders_beyond_it_wait_for_film_until_some_is_bought() {
        BenchOrders make = new BenchOrders(beans);
        Order first = make.confirmed("Tom Reed", plan.today().plusDays(41), 10);
        Order second = make.confirmed("Tom Reed", plan.today().plusDays(42), 10);
        long before = waitsForFilm();
        SupplyItem film = supplies.keep(new SupplyItem(
                Optional.empty(),
                "Film for the test",
                SupplyKind.LAMINATE,
                UseUnit.METRE,
                Optional.of(Length.mm(300)),
                Optional.empty(),
                "metre",
                BigDecimal.ONE,
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                4,
                3,
                true,
                false,
                BigDecimal.ZERO,
                Money.zero(supplies.currency())));
        assertThat(waitsForFilm()).as("what was never bought is not missed").isEqualTo(before);
        SupplyId id = film.id().orElseThrow();
        supplies.buy(
                BookingKey.fresh(),
                id,
                BigDecimal.ONE,
                Money.of("1.00", supplies.currency().getCurrencyCode()),
                "",
                "Robin");
        supplies.useKnowingly(id, BigDecimal.ONE, first.ref(), "for the test", "Robin");
        assertThat(waitsFor(first)).contains(Job.Wait.For.FILM);
        assertThat(waitsFor(second)).contains(Job.Wait.For.FILM);
        supplies.buy(
                BookingKey.fresh(),
                id,
                BigDecimal.TEN,
                Money.of("9.00", supplies.currency().getCurrencyCode()),
                "",
                "Robin");
        assertThat(waitsFor(first)).isEmpty();
    }

    private long waitsForFilm() {
        return plan.now().entries().stream()
                .filter(entry -> entry.outlook()
                        .waitsFor()
                        .map(waitsFor -> waitsFor.forWhat() == Job.Wait.For.FILM)
                        .orElse(false))
                .count();
    }

    private Optional<Job.Wait.For> waitsFor(Order order) {
        return plan.now().of(order.id()).orElseThrow().outlook().waitsFor().map(Job.Wait::forWhat);
    }
}
