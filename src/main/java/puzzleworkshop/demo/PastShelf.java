package puzzleworkshop.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Workshop;

/**
 * The demo workshop's shelf in its past year: bought every other month, used until little is left, which a count says. What
 * stands there now was bought four weeks ago, when the shelf was empty, so that its cost is what was paid then.
 */
@Component
class PastShelf {

    private static final int CYCLES = 6;
    private static final int DAYS = 61;
    private static final int LAST_BOUGHT_DAYS_AGO = 28;

    /** Parts of a machine lie there until one breaks. */
    private static final Set<SupplyKind> NOT_USED_UP =
            Set.of(SupplyKind.LENS, SupplyKind.FILTER, SupplyKind.BLADE, SupplyKind.OTHER);

    /** Shares that were left when it was time to buy again, one after the other. */
    private static final double[] LEFT = {0.2, 0.34, 0.12, 0.27, 0.16};

    /** Prices of the first half of the year against those of today. */
    private static final BigDecimal EARLIER = new BigDecimal("0.96");

    private final Supplies supplies;
    private final StockCounts counts;
    private final Workshop workshop;

    PastShelf(Supplies supplies, StockCounts counts, Workshop workshop) {
        this.supplies = supplies;
        this.counts = counts;
        this.workshop = workshop;
    }

    /**
     * @param price of one purchase unit today
     * @param bought purchase units that are bought each time
     */
    void fill(SupplyItem item, Money price, int bought) {
        SupplyId id = item.id().orElseThrow();
        LocalDate last = workshop.today().minusDays(LAST_BOUGHT_DAYS_AGO);
        if (!NOT_USED_UP.contains(item.kind())) {
            for (int cycle = CYCLES; cycle >= 1; cycle--) {
                Money then = cycle > CYCLES / 2 ? price.times(EARLIER).rounded() : price;
                buy(id, last.minusDays((long) cycle * DAYS), then, bought);
                double share = cycle == 1 ? 0 : LEFT[(cycle + (int) id.value()) % LEFT.length];
                count(item, last.minusDays((long) (cycle - 1) * DAYS), share);
            }
        }
        buy(id, last, price, bought);
    }

    private void buy(SupplyId id, LocalDate day, Money price, int bought) {
        at(
                day,
                LocalTime.of(9, 30),
                () -> supplies.buy(
                        BookingKey.fresh(),
                        id,
                        BigDecimal.valueOf(bought),
                        price.times(bought),
                        "Paper & Film Supply",
                        DemoStock.MAKER));
    }

    private void count(SupplyItem item, LocalDate day, double share) {
        SupplyId id = item.id().orElseThrow();
        BigDecimal there = supplies.find(id).orElseThrow().stock();
        BigDecimal left = there.multiply(BigDecimal.valueOf(share)).setScale(0, RoundingMode.HALF_UP);
        at(day, LocalTime.of(8, 45), () -> {
            StockCounts.Count count = new StockCounts.Count(id, counts.seen().getOrDefault(id, 0), left);
            counts.count(count.key(), count, DemoStock.MAKER);
        });
    }

    private void at(LocalDate day, LocalTime time, Runnable work) {
        HouseClock.at(
                BenchTime.orAfter(day).atTime(time).atZone(workshop.zone()).toInstant(), work);
    }
}
