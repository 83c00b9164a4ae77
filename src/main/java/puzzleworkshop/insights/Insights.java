package puzzleworkshop.insights;

import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** What orders earned, one by one, by month and by size, and which standard minutes no longer hold. */
@Service
public class Insights {

    private final InsightStore store;
    private final OrderResults results;
    private final Workshop workshop;
    private final Clock clock;

    Insights(InsightStore store, OrderResults results, Workshop workshop, Clock clock) {
        this.store = store;
        this.results = results;
        this.workshop = workshop;
        this.clock = clock;
    }

    /** One order; empty for a quote. What pieces of it made again for nothing cost is in it. */
    @Transactional(readOnly = true)
    public Optional<Outcome> outcome(OrderId id) {
        return store.orders(List.of(id)).stream()
                .filter(row -> row.state() != OrderState.QUOTE && row.state() != OrderState.CANCELLED)
                .findFirst()
                .map(row -> results.of(List.of(row)).getFirst().outcome());
    }

    /** The order that bears what an order of one piece costs; empty for all others and for a piece that was paid for. */
    @Transactional(readOnly = true)
    public Optional<OrderRef> bornBy(OrderId piece) {
        return store.bornBy(piece);
    }

    /**
     * What was handed over in a time, and what it says of the standards.
     *
     * @param finished newest first. An order stays in the month in which it was first handed over, though it be made again; a
     *     piece made for nothing counts with the order it belongs to, not by itself
     * @param drifts stages whose standard minutes no longer agree with the clock
     */
    public record Since(List<FinishedOrder> finished, List<TimeVariance> drifts) {}

    /** Handed over since the first day of a month. */
    @Transactional(readOnly = true)
    public Since since(YearMonth month) {
        Instant since = month.atDay(1).atStartOfDay(workshop.zone()).toInstant();
        List<OrderResults.Result> each = results.of(store.finishedSince(since));
        return new Since(each.stream().map(OrderResults.Result::finished).toList(), drifts(each));
    }

    private List<TimeVariance> drifts(List<OrderResults.Result> each) {
        Map<Stage, StageStandard> standards = workshop.stageStandards();
        List<TimeVariance.Sample> samples = new ArrayList<>();
        each.forEach(order -> order.clocked()
                .forEach((stage, minutes) -> samples.add(new TimeVariance.Sample(
                        stage,
                        standards
                                .get(stage)
                                .hands(order.row().quantity(), order.row().pieces()),
                        minutes))));
        return TimeVariance.in(samples, standards);
    }

    /** By month, oldest first; months without a finished order are there with zeros. */
    public List<PeriodFigures<YearMonth>> byMonth(List<FinishedOrder> orders, YearMonth first) {
        List<PeriodFigures<YearMonth>> months = new ArrayList<>();
        for (YearMonth month = first; !month.isAfter(thisMonth()); month = month.plusMonths(1)) {
            YearMonth which = month;
            List<FinishedOrder> of = orders.stream()
                    .filter(order -> YearMonth.from(order.finished().atZone(workshop.zone()))
                            .equals(which))
                    .toList();
            months.add(PeriodFigures.of(month, of, Money.zero(workshop.currency())));
        }
        return months;
    }

    /** By finished size, what earned most first. */
    public List<PeriodFigures<Size>> bySize(List<FinishedOrder> orders) {
        Map<Size, List<FinishedOrder>> bySize = new LinkedHashMap<>();
        orders.forEach(order ->
                bySize.computeIfAbsent(order.size(), size -> new ArrayList<>()).add(order));
        return bySize.entrySet().stream()
                .map(entry -> PeriodFigures.of(entry.getKey(), entry.getValue(), Money.zero(workshop.currency())))
                .sorted(Comparator.comparing((PeriodFigures<Size> figures) -> figures.earned())
                        .reversed())
                .toList();
    }

    /** Makes a proposed standard the standard from now on; quotes that stand keep their costs. */
    @Transactional
    public void adopt(TimeVariance drift) {
        workshop.save(drift.proposed());
    }

    public YearMonth thisMonth() {
        return YearMonth.now(clock.withZone(workshop.zone()));
    }
}
