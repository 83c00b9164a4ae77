package puzzleworkshop.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.demo.DemoScript.Line;
import puzzleworkshop.demo.DemoScript.Reached;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.workshop.Workshop;

/** The demo workshop's customers and their orders, from a first quote to one that is paid for. */
@Component
class DemoOrders {

    private final List<Line> script = DemoScript.read();
    private final OfferDesk desk;
    private final Confirmations confirmations;
    private final Orders orders;
    private final DemoBench bench;
    private final DemoWeek week;
    private final Workshop workshop;

    DemoOrders(
            OfferDesk desk,
            Confirmations confirmations,
            Orders orders,
            DemoBench bench,
            DemoWeek week,
            Workshop workshop) {
        this.desk = desk;
        this.confirmations = confirmations;
        this.orders = orders;
        this.bench = bench;
        this.week = week;
        this.workshop = workshop;
    }

    int count() {
        return script.size();
    }

    /** Plays one line of the script. */
    void play(int index, Map<Scene, Picture> scenes) {
        Line line = script.get(index);
        Optional<FramedPicture> picture = line.scene()
                .map(scenes::get)
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
        Offer offer = desk.workOut(wish);
        if (!offer.canBeQuoted()) {
            throw new IllegalStateException("The demo's order for " + line.customer() + ": " + offer.complaints());
        }
        Order order = confirmations.quote(
                BookingKey.fresh(),
                draft(line, wish, offer, due),
                offer.boards().orElseThrow(),
                DemoStock.MAKER);
        if (line.reached() == Reached.QUOTE) {
            return;
        }
        confirmations.confirm(order.id(), DemoStock.MAKER);
        if (line.reached() == Reached.WAITS_FOR_APPROVAL) {
            return;
        }
        orders.approve(order.id(), line.customer(), line.customer());
        if (line.reached() == Reached.APPROVED) {
            return;
        }
        bench.work(order.id(), line.next());
        if (line.reached() == Reached.CLOSED) {
            orders.close(order.id(), DemoStock.MAKER);
        }
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
                new DeliveryTerms(wish.day().wantedBy(), Optional.of(due), false, Optional.empty()),
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
