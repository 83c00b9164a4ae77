package puzzleworkshop.insights;

import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** What orders earned, one by one, by month and by size, and which standard minutes no longer hold. */
@Service
public class Insights {

    private final InsightStore store;
    private final EstimatedPrices prices;
    private final Workshop workshop;
    private final Clock clock;

    Insights(InsightStore store, EstimatedPrices prices, Workshop workshop, Clock clock) {
        this.store = store;
        this.prices = prices;
        this.workshop = workshop;
        this.clock = clock;
    }

    /** One order; empty for a quote. */
    @Transactional(readOnly = true)
    public Optional<Outcome> outcome(OrderId id) {
        Map<Stage, Minutes> hands =
                store.clocked(Optional.of(id), Instant.EPOCH).getOrDefault(id.value(), Map.of());
        Map<SupplyKind, Money> materials =
                store.materials(Optional.of(id), Instant.EPOCH).getOrDefault(id.value(), Map.of());
        return store.order(id)
                .filter(row -> row.state() != OrderState.QUOTE && row.state() != OrderState.CANCELLED)
                .map(row ->
                        Outcome.of(prices.of(List.of(row)).get(id.value()), took(row, hands, materials), row.sold()));
    }

    /** Handed over since the first day of a month, newest first. */
    @Transactional(readOnly = true)
    public List<FinishedOrder> finishedSince(YearMonth month) {
        Instant since = month.atDay(1).atStartOfDay(workshop.zone()).toInstant();
        Map<Long, Map<Stage, Minutes>> clocked = store.clocked(Optional.empty(), since);
        Map<Long, Map<SupplyKind, Money>> materials = store.materials(Optional.empty(), since);
        List<InsightStore.Row> rows = store.finishedSince(since);
        Map<Long, EstimatedCost> reckoned = prices.of(rows);
        return rows.stream()
                .map(row -> finished(
                        row,
                        reckoned.get(row.id().value()),
                        clocked.getOrDefault(row.id().value(), Map.of()),
                        materials.getOrDefault(row.id().value(), Map.of())))
                .toList();
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

    /** Stages whose standard minutes no longer agree with the clock, over orders finished since a month. */
    @Transactional(readOnly = true)
    public List<TimeVariance> drifts(YearMonth since) {
        Instant from = since.atDay(1).atStartOfDay(workshop.zone()).toInstant();
        Map<Stage, StageStandard> standards = workshop.stageStandards();
        Map<Long, Map<Stage, Minutes>> clocked = store.clocked(Optional.empty(), from);
        List<TimeVariance.Sample> samples = new ArrayList<>();
        for (InsightStore.Row row : store.finishedSince(from)) {
            clocked.getOrDefault(row.id().value(), Map.of())
                    .forEach((stage, minutes) -> samples.add(new TimeVariance.Sample(
                            stage, standards.get(stage).hands(row.quantity(), row.pieces()), minutes)));
        }
        return TimeVariance.in(samples, standards);
    }

    /** Makes a proposed standard the standard from now on; quotes that stand keep their costs. */
    @Transactional
    public void adopt(TimeVariance drift) {
        workshop.save(drift.proposed());
    }

    public YearMonth thisMonth() {
        return YearMonth.now(clock.withZone(workshop.zone()));
    }

    private FinishedOrder finished(
            InsightStore.Row row, EstimatedCost price, Map<Stage, Minutes> clocked, Map<SupplyKind, Money> materials) {
        Minutes hands = row.handsLost();
        for (Map.Entry<Stage, EstimatedCost.Work> work : price.stages().entrySet()) {
            hands = hands.plus(
                    clocked.getOrDefault(work.getKey(), work.getValue().minutes()));
        }
        return new FinishedOrder(
                row.id(),
                row.number(),
                row.customer(),
                row.finished().orElseThrow(),
                row.quantity(),
                row.size(),
                row.pieces(),
                Outcome.of(price, took(row, clocked, materials), row.sold()),
                hands,
                row.laser().orElseGet(price::laser),
                row.mishaps());
    }

    private static ActualCost took(
            InsightStore.Row row, Map<Stage, Minutes> clocked, Map<SupplyKind, Money> materials) {
        Map<CostPart, Money> byPart = new EnumMap<>(CostPart.class);
        materials.forEach((kind, cost) -> partOf(kind).ifPresent(part -> byPart.merge(part, cost, Money::plus)));
        return new ActualCost(
                clocked,
                row.laser(),
                byPart,
                row.materialLost(),
                row.handsLost(),
                row.finished().isPresent());
    }

    private static Optional<CostPart> partOf(SupplyKind kind) {
        return switch (kind) {
            case STICKER_PAPER, LAMINATE, INK -> Optional.of(CostPart.PRINT);
            case MASKING_TAPE, BOX, BAG, LABEL -> Optional.of(CostPart.CONSUMABLES);
            case LENS, FILTER, BLADE, OTHER -> Optional.empty();
        };
    }
}
