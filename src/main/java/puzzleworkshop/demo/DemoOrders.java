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
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** The demo workshop's customers and their orders, from a first quote to one that is paid for. */
@Component
class DemoOrders {

    /** How far an order has come. */
    private enum Reached {
        QUOTE,
        WAITS_FOR_APPROVAL,
        APPROVED,
        STAGES,
        HANDED_OVER,
        CLOSED
    }

    /** One line of the script. */
    private record Line(
            String customer,
            String contact,
            Scene scene,
            double width,
            double height,
            int pieces,
            BoardKind board,
            int quantity,
            IntendedAge age,
            int dueInDays,
            boolean workingDays,
            Reached reached,
            Optional<Stage> next) {}

    private static final List<Line> SCRIPT = List.of(
            line(
                    "Ida Norrby",
                    "ida@norrby.example",
                    Scene.LAKE,
                    300,
                    200,
                    48,
                    1,
                    IntendedAge.FROM_6,
                    9,
                    Reached.CLOSED,
                    null),
            line(
                    "Old Mill Bookshop",
                    "post@oldmill.example",
                    Scene.HARBOUR,
                    297,
                    210,
                    96,
                    1,
                    IntendedAge.GROWN_UPS,
                    2,
                    Reached.HANDED_OVER,
                    null),
            line(
                    "Beatrix Vane",
                    "0155 01 7734",
                    Scene.CAT,
                    200,
                    150,
                    24,
                    1,
                    IntendedAge.FROM_3,
                    1,
                    Reached.STAGES,
                    Stage.PACK),
            line(
                    "Oskar Lund",
                    "oskar@lund.example",
                    Scene.BALLOONS,
                    210,
                    148,
                    40,
                    1,
                    IntendedAge.FROM_6,
                    1,
                    Reached.STAGES,
                    Stage.CUT),
            line(
                    "Priya Raman",
                    "priya@raman.example",
                    Scene.MEADOW,
                    300,
                    200,
                    60,
                    1,
                    IntendedAge.GROWN_UPS,
                    3,
                    Reached.STAGES,
                    Stage.STICK),
            line(
                    "Tomasz Wilk",
                    "tomasz@wilk.example",
                    Scene.NIGHT_TRAIN,
                    300,
                    200,
                    48,
                    1,
                    IntendedAge.FROM_6,
                    5,
                    Reached.STAGES,
                    Stage.LAMINATE),
            line(
                    "Noor Haddad",
                    "noor@haddad.example",
                    Scene.HARBOUR,
                    210,
                    148,
                    35,
                    1,
                    IntendedAge.FROM_6,
                    6,
                    Reached.APPROVED,
                    null),
            line(
                    "Hazel Lane School",
                    "office@hazellane.example",
                    Scene.BALLOONS,
                    150,
                    100,
                    12,
                    6,
                    IntendedAge.FROM_3,
                    8,
                    Reached.APPROVED,
                    null),
            line(
                    "Museum of Small Trains",
                    "shop@smalltrains.example",
                    Scene.NIGHT_TRAIN,
                    297,
                    210,
                    108,
                    1,
                    IntendedAge.GROWN_UPS,
                    9,
                    Reached.WAITS_FOR_APPROVAL,
                    null),
            busy(
                    "Elin Fairweather",
                    "elin@fairweather.example",
                    Scene.LAKE,
                    300,
                    200,
                    60,
                    1,
                    IntendedAge.FROM_6,
                    1,
                    Stage.CUT),
            busy(
                    "Wren Street Library",
                    "desk@wrenstreet.example",
                    Scene.MEADOW,
                    297,
                    210,
                    96,
                    2,
                    IntendedAge.GROWN_UPS,
                    1,
                    Stage.CUT),
            busy(
                    "Ferry House Hotel",
                    "front@ferryhouse.example",
                    Scene.HARBOUR,
                    210,
                    148,
                    40,
                    6,
                    IntendedAge.FROM_6,
                    2,
                    Stage.CUT),
            busy(
                    "Marlow String Quartet",
                    "marlow@quartet.example",
                    Scene.NIGHT_TRAIN,
                    300,
                    200,
                    60,
                    4,
                    IntendedAge.GROWN_UPS,
                    2,
                    Stage.MASK),
            busy("Dora Quill", "0155 01 4410", Scene.CAT, 200, 150, 35, 1, IntendedAge.FROM_6, 2, Stage.MASK),
            busy(
                    "Saltmarsh Nursery",
                    "hello@saltmarsh.example",
                    Scene.BALLOONS,
                    150,
                    100,
                    12,
                    6,
                    IntendedAge.FROM_3,
                    3,
                    Stage.STICK),
            line(
                    "Lindqvist Bakery",
                    "hello@lindqvist.example",
                    Scene.LAKE,
                    200,
                    200,
                    49,
                    1,
                    IntendedAge.GROWN_UPS,
                    12,
                    Reached.QUOTE,
                    null),
            line("Jonah Pell", "0155 01 2290", null, 300, 200, 60, 1, IntendedAge.FROM_6, 14, Reached.QUOTE, null));

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
        return SCRIPT.size();
    }

    /** Plays one line of the script. */
    void play(int index, Map<Scene, Picture> scenes) {
        Line line = SCRIPT.get(index);
        Size size = Size.mm(line.width(), line.height());
        Optional<FramedPicture> picture = Optional.ofNullable(line.scene())
                .map(scenes::get)
                .map(taken -> new FramedPicture(taken.id(), Crop.filling(taken, size.aspect())));
        LocalDate due = line.workingDays()
                ? week.workingDay(line.dueInDays())
                : workday(workshop.today().plusDays(line.dueInDays()));
        Wish wish = new Wish(
                picture,
                size,
                line.pieces(),
                index % 5 == 4 ? CutStyle.WAVY : CutStyle.KNOBS,
                PuzzleEdge.square(),
                1000 + 37L * index,
                line.age(),
                false,
                line.quantity(),
                line.board(),
                Optional.empty(),
                Optional.of(due),
                false,
                Optional.empty(),
                Percent.ZERO,
                Money.zero(workshop.currency()),
                VatRates.STANDARD,
                "");
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
                wish.wantedBy(),
                Optional.of(due),
                false,
                Optional.empty(),
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

    private static Line line(
            String customer,
            String contact,
            Scene scene,
            double width,
            double height,
            int pieces,
            int quantity,
            IntendedAge age,
            int dueInDays,
            Reached reached,
            Stage next) {
        return new Line(
                customer,
                contact,
                scene,
                width,
                height,
                pieces,
                DemoStock.BIRCH,
                quantity,
                age,
                dueInDays,
                false,
                reached,
                Optional.ofNullable(next));
    }

    /** One of the orders that make the laser the narrow place of the week. */
    private static Line busy(
            String customer,
            String contact,
            Scene scene,
            double width,
            double height,
            int pieces,
            int quantity,
            IntendedAge age,
            int dueInWorkingDays,
            Stage next) {
        return new Line(
                customer,
                contact,
                scene,
                width,
                height,
                pieces,
                DemoStock.BIRCH,
                quantity,
                age,
                dueInWorkingDays,
                true,
                Reached.STAGES,
                Optional.of(next));
    }
}
