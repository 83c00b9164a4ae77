package puzzleworkshop.demo;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.demo.DemoScript.Line;
import puzzleworkshop.demo.DemoScript.Reached;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** The demo workshop's customers and their orders, from a first quote to one that is paid for. */
@Component
class DemoOrders {

    private static final LocalTime MORNING = LocalTime.of(9, 0);
    private static final long QUARTER = 15;

    /** Days from the order to the day on which what is collected was packed. */
    private static final int READY_AFTER = 8;

    private final List<Line> script = DemoScript.read();
    private final OfferDesk desk;
    private final Confirmations confirmations;
    private final Orders orders;
    private final DemoBench bench;
    private final DemoWeek week;
    private final Workshop workshop;
    private final Clock clock;

    DemoOrders(
            OfferDesk desk,
            Confirmations confirmations,
            Orders orders,
            DemoBench bench,
            DemoWeek week,
            Workshop workshop,
            Clock clock) {
        this.desk = desk;
        this.confirmations = confirmations;
        this.orders = orders;
        this.bench = bench;
        this.week = week;
        this.workshop = workshop;
        this.clock = clock;
    }

    int count() {
        return script.size();
    }

    /** Plays one line of the script. */
    void play(int index, DemoPictures.Drawing scenes) {
        Line line = script.get(index);
        Optional<FramedPicture> picture = line.scene()
                .map(scenes::of)
                .map(taken -> new FramedPicture(
                        taken.id(), Crop.filling(taken, line.size().aspect())));
        LocalDate due = line.workingDays()
                ? week.workingDay(line.dueIn())
                : workday(workshop.today().plusDays(line.dueIn()));
        Wish wish = new Wish(
                PuzzleWish.plain(
                        line.size(),
                        line.pieces(),
                        index % 5 == 4 ? CutStyle.WAVY : CutStyle.KNOBS,
                        PuzzleEdge.square(),
                        1000 + 37L * index,
                        line.age(),
                        false),
                line.quantity(),
                line.board(),
                Optional.empty(),
                picture,
                "",
                new Wish.Day(Optional.of(due), false, Optional.empty()),
                Wish.Terms.usual(workshop.currency()));
        Instant taken = BenchTime.orBefore(workshop.today().minusDays(line.taken()))
                .atTime(MORNING.plusMinutes(QUARTER * index))
                .atZone(workshop.zone())
                .toInstant();
        OrderId[] id = new OrderId[1];
        HouseClock.at(taken, () -> id[0] = taken(line, wish, due));
        if (line.reached().compareTo(Reached.STAGES) < 0) {
            return;
        }
        bench.work(id[0], line.next(), taken, until(line.reached(), line.taken()));
        if (line.reached() == Reached.READY) {
            bench.ready(id[0], until(line.reached(), line.taken()));
        }
        if (line.reached() == Reached.CLOSED) {
            orders.close(id[0], DemoStock.MAKER);
        }
    }

    private OrderId taken(Line line, Wish wish, LocalDate due) {
        Offer offer = desk.workOut(wish);
        if (!offer.canBeQuoted()) {
            throw new IllegalStateException("The demo's order for " + line.customer() + ": " + offer.complaints());
        }
        OrderId id = confirmations
                .quote(
                        BookingKey.fresh(),
                        draft(line, wish, offer, due),
                        offer.boards().orElseThrow(),
                        DemoStock.MAKER)
                .id();
        if (line.reached() != Reached.QUOTE) {
            confirmations.confirm(id, DemoStock.MAKER);
            if (line.reached() != Reached.WAITS_FOR_APPROVAL) {
                orders.approve(id, line.customer(), line.customer());
            }
        }
        return id;
    }

    /** When the last of what was done was done: an hour ago, or for what is finished some days before. */
    private Instant until(Reached reached, int taken) {
        LocalDate today = workshop.today();
        return switch (reached) {
            case READY ->
                BenchTime.orBefore(today.minusDays(taken - READY_AFTER))
                        .atTime(15, 0)
                        .atZone(workshop.zone())
                        .toInstant();
            case HANDED_OVER, CLOSED ->
                BenchTime.orBefore(today.minusDays(1))
                        .atTime(15, 0)
                        .atZone(workshop.zone())
                        .toInstant();
            default -> clock.instant().minus(Duration.ofHours(1));
        };
    }

    private OrderDraft draft(Line line, Wish wish, Offer offer, LocalDate due) {
        LocalDate today = workshop.today();
        return new OrderDraft(
                Customer.newcomer(line.customer(), line.contact(), ""),
                line.quantity(),
                new Puzzle(offer.pattern().orElseThrow().spec(), line.age(), false),
                line.board(),
                wish.picture(),
                "",
                new DeliveryTerms(
                        wish.day().wantedBy(),
                        Optional.of(due),
                        false,
                        line.way().map(week::way)),
                offer.laserForAll(),
                offer.price().orElseThrow(),
                today.plusDays(workshop.tradeNumbers().quoteValidDays()),
                "");
    }

    private static LocalDate workday(LocalDate day) {
        LocalDate moved = day;
        while (moved.getDayOfWeek() == DayOfWeek.SATURDAY || moved.getDayOfWeek() == DayOfWeek.SUNDAY) {
            moved = moved.plusDays(1);
        }
        return moved;
    }
}
