package puzzleworkshop.insights.work;

import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Figures of the work over a period, each a query or two whatever the number of orders, and the orders behind each of them. */
@Service
public class WorkFigures {

    private final DeliveryFigures deliveries;
    private final BenchFigures bench;
    private final WoodFigures wood;
    private final ComplaintFigures complaints;
    private final Workshop workshop;
    private final SignedIn signedIn;

    WorkFigures(
            DeliveryFigures deliveries,
            BenchFigures bench,
            WoodFigures wood,
            ComplaintFigures complaints,
            Workshop workshop,
            SignedIn signedIn) {
        this.deliveries = deliveries;
        this.bench = bench;
        this.wood = wood;
        this.complaints = complaints;
        this.workshop = workshop;
        this.signedIn = signedIn;
    }

    /** @throws Refused when the signed-in person is no owner */
    @Transactional(readOnly = true)
    public FigureRows of(Topic topic, Period period) {
        ownerOnly();
        return switch (topic) {
            case ON_TIME -> deliveries.onTime(period);
            case LEAD_TIME -> bench.leadTimes(period);
            case HOURS -> bench.hours(period);
            case REJECTS -> bench.rejects(period);
            case COMPLAINTS -> complaints.inCommon(period);
            case OFFCUTS -> wood.offcuts(period);
            case WOOD -> wood.balance(period);
            case STOCK -> wood.stock(period);
            case CUSTOMERS -> deliveries.customers(period);
            case MONTHS -> deliveries.months(period.to());
        };
    }

    /** The orders behind a row, those that weigh most first. */
    @Transactional(readOnly = true)
    public List<Behind> behind(Topic topic, Period period, String key) {
        ownerOnly();
        if (key.isEmpty()) {
            return List.of();
        }
        return switch (topic) {
            case ON_TIME -> deliveries.behindWeek(period, key);
            case LEAD_TIME -> bench.behindLeadTime(period, key);
            case HOURS -> bench.behindHours(period, key);
            case REJECTS -> bench.behindReject(period, key);
            case COMPLAINTS -> complaints.behind(period, key);
            case OFFCUTS, WOOD -> wood.behindMonth(period, key);
            case STOCK -> List.of();
            case CUSTOMERS -> deliveries.behindCustomer(period, Long.parseLong(key));
            case MONTHS -> deliveries.behindMonth(Integer.parseInt(key));
        };
    }

    /** The year of the first order that was handed over; this year when there is none. */
    @Transactional(readOnly = true)
    public int firstYear() {
        return deliveries
                .firstDay()
                .map(LocalDate::getYear)
                .orElse(workshop.today().getYear());
    }

    private void ownerOnly() {
        if (!signedIn.isOwner()) {
            throw new Refused("insights.work.owner-only");
        }
    }
}
