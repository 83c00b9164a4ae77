package puzzleworkshop.offers;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.jobs.RunningTimes;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.time.TimeRange;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.planning.NewWork;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/**
 * A piece of an earlier order, lost by the customer or broken at the bench, made again as an order of its own: a puzzle of one
 * piece, whose line fits the hole in the old one and whose print is that part of the old picture. From there on it goes the
 * way of every order: a board, a print run, a cut, a ticket.
 */
@Service
public class PieceOrders {

    /** Of the part of an order's page where a piece is chosen: its id in the page, for whatever leads there. */
    public static final String PLACE = "piece-again";

    /** Event on that part: whoever leads there has decided already that the customer pays nothing for the piece. */
    public static final String FOR_NOTHING = "piece-for-nothing";

    /** As near to nothing as a discount may come; any price of a piece rounds to nothing with it. */
    private static final Percent FREE = Percent.of("99.999");

    private final Orders orders;
    private final Confirmations confirmations;
    private final PatternCache patterns;
    private final Pictures pictures;
    private final BlankPlanner planner;
    private final Machines machines;
    private final RunningTimes times;
    private final Settings settings;
    private final Pricing pricing;
    private final WeekPlan plan;
    private final Workshop workshop;
    private final JdbcClient jdbc;

    PieceOrders(
            Orders orders,
            Confirmations confirmations,
            PatternCache patterns,
            Pictures pictures,
            BlankPlanner planner,
            Machines machines,
            RunningTimes times,
            Settings settings,
            Pricing pricing,
            WeekPlan plan,
            Workshop workshop,
            JdbcClient jdbc) {
        this.orders = orders;
        this.confirmations = confirmations;
        this.patterns = patterns;
        this.pictures = pictures;
        this.planner = planner;
        this.machines = machines;
        this.times = times;
        this.settings = settings;
        this.pricing = pricing;
        this.plan = plan;
        this.workshop = workshop;
        this.jdbc = jdbc;
    }

    /**
     * Which piece is wanted.
     *
     * @param of the order it belongs to
     * @param piece its number there
     * @param today kerf of today and stretch of the old puzzle
     * @param free whether the customer pays nothing for it (broken here)
     */
    public record Wanted(OrderId of, int piece, LostPiece.Today today, boolean free) {}

    /**
     * What it takes.
     *
     * @param ready the day it can be ready; empty when nobody works
     */
    public record PieceOffer(
            Puzzle puzzle,
            FramedPicture picture,
            BlankPlan boards,
            Minutes laser,
            KeptPrice price,
            Optional<LocalDate> ready) {}

    /** An order of one piece and the order it belongs to. */
    public record PieceOrder(OrderId order, String number, OrderId of, String ofNumber, int piece) {}

    /**
     * Price, board and day, before anything is kept.
     *
     * @throws Refused when there is no laser, no board, or no picture any more
     */
    public PieceOffer offer(Wanted wanted) {
        Order old = orders.get(wanted.of());
        Machine machine = machines.standard().orElseThrow(() -> new Refused("offers.problem.no-machine"));
        CutPattern pattern = patterns.of(old.puzzle().pattern());
        if (old.state() == OrderState.QUOTE || old.puzzle().pattern().isOnePiece()) {
            throw new Refused("offers.piece.not-of-this", old.number());
        }
        LostPiece lost = LostPiece.of(pattern, wanted.piece(), wanted.today());
        Puzzle puzzle = puzzle(old, lost, wanted);
        FramedPicture framed = picture(old, lost, wanted.today());
        TradeNumbers numbers = workshop.tradeNumbers();
        BlankPlan boards = planner.plan(
                numbers,
                puzzle.finished(),
                1,
                old.board(),
                Optional.empty(),
                machine.bowLimit(),
                machine.bed(),
                () -> {});
        if (!boards.isComplete()) {
            throw new Refused("offers.problem.no-board", numbers.blankFor(puzzle.finished()));
        }
        CutSetting setting = settings.forBoard(machine, old.board());
        TimeRange laser = times.timeFor(puzzle.cutPaths(patterns.of(puzzle.pattern()), numbers.outlineLast()), setting);
        KeptPrice price = price(old, puzzle.finished(), boards, laser, wanted.free());
        Minutes trial = setting.isProven() ? Minutes.ZERO : PlannedTrials.TAKES;
        String same = old.board().material() + " " + old.board().grade() + " "
                + old.board().thickness().mm();
        Optional<LocalDate> ready = plan.forecast(
                        new NewWork(1, 1, laser.likely().plus(trial), same, old.deliveryWay()))
                .map(day -> day.ready());
        return new PieceOffer(puzzle, framed, boards, laser.likely(), price, ready);
    }

    private Puzzle puzzle(Order old, LostPiece lost, Wanted wanted) {
        PatternSpec was = old.puzzle().pattern();
        PatternSpec spec = new PatternSpec(
                lost.size(),
                new PieceGrid(1, 1),
                was.seed(),
                was.style(),
                PuzzleEdge.square(),
                was.thickness(),
                wanted.today().kerf(),
                List.of(new PersonalShape(wanted.piece() + " / " + old.number(), lost.line())),
                was.design());
        return new Puzzle(spec, old.puzzle().age(), false, 1);
    }

    /** That part of the old picture which the piece shows, as large as it was printed then. */
    private FramedPicture picture(Order old, LostPiece lost, LostPiece.Today today) {
        FramedPicture framed = old.picture().orElseThrow(() -> new Refused("orders.approve.no-picture", old.number()));
        if (!pictures.hasOriginal(framed.picture())) {
            throw new Refused("offers.piece.picture-gone", old.number());
        }
        Crop whole = framed.crop();
        Size size = old.puzzle().finished();
        double width = whole.width()
                * lost.size().width().mm()
                / today.acrossStretch()
                / size.width().mm();
        double height = whole.height()
                * lost.size().height().mm()
                / today.downStretch()
                / size.height().mm();
        double left = whole.left()
                + whole.width()
                        * middle(
                                lost.inPuzzle().minX(),
                                lost.inPuzzle().maxX(),
                                size.width().mm())
                - width / 2;
        double top = whole.top()
                + whole.height()
                        * middle(
                                lost.inPuzzle().minY(),
                                lost.inPuzzle().maxY(),
                                size.height().mm())
                - height / 2;
        if (whole.fit() == Crop.Fit.FILL) {
            // a line moved outwards may reach a hundredth of a millimetre beyond the picture
            left = Math.clamp(left, 0, Math.max(0, 1 - width));
            top = Math.clamp(top, 0, Math.max(0, 1 - height));
        }
        return new FramedPicture(
                framed.picture(),
                new Crop(
                        left,
                        top,
                        width,
                        height,
                        whole.quarterTurns(),
                        whole.fit(),
                        whole.borderColour(),
                        whole.edge()));
    }

    private static double middle(double from, double to, double whole) {
        return (from + to) / 2 / whole;
    }

    /**
     * It goes the way that the old order went: sending costs as much again, and is charged as then unless the piece costs
     * the customer nothing.
     */
    private KeptPrice price(Order old, Size finished, BlankPlan boards, TimeRange laser, boolean free) {
        PriceQuestion then = orders.keptPrice(old.id()).question();
        Money wood =
                Money.sum(boards.blocks().stream().map(BlankPlan.Block::cost).toList(), workshop.currency());
        PriceQuestion question = new PriceQuestion(
                1,
                finished,
                1,
                wood,
                workshop.tradeNumbers().stickerFor(finished).area(),
                laser.likely(),
                pricing.stageWork(1),
                free ? Money.zero(workshop.currency()) : then.shippingCharge(),
                then.postage(),
                false,
                free ? FREE : Percent.ZERO,
                VatRates.STANDARD);
        return new KeptPrice(question, pricing.quote(question));
    }

    /**
     * Keeps it as a quote of its own, its board chosen; the customer approved this picture with the old order.
     *
     * @throws Refused as {@link #offer}
     */
    @Books
    @Transactional
    public Order quote(BookingKey key, Wanted wanted, String who) {
        Order old = orders.get(wanted.of());
        PieceOffer offer = offer(wanted);
        Order order = confirmations.quote(
                key,
                new OrderDraft(
                        old.customer(),
                        1,
                        offer.puzzle(),
                        old.board(),
                        Optional.of(offer.picture()),
                        old.softAccepted(),
                        new DeliveryTerms(Optional.empty(), offer.ready(), false, old.deliveryWay()),
                        offer.laser(),
                        offer.price(),
                        workshop.today().plusDays(workshop.tradeNumbers().quoteValidDays()),
                        ""),
                offer.boards(),
                who);
        int added = jdbc.sql("""
            insert into piece_again (order_id, of_order, piece) values (:order, :of, :piece)
            on conflict (order_id) do nothing
            """)
                .param("order", order.id().value())
                .param("of", old.id().value())
                .param("piece", wanted.piece())
                .update();
        if (added > 0) {
            old.approval().ifPresent(approval -> orders.approve(order.id(), approval.by(), who));
            orders.note(old.id(), Sentence.of("offers.piece.history", wanted.piece(), order.number()), who);
        }
        return orders.get(order.id());
    }

    /** Orders of single pieces that belong to an order, newest last. */
    @Transactional(readOnly = true)
    public List<PieceOrder> of(OrderId order) {
        return rows("p.of_order = :id", order);
    }

    /** What an order is a piece of; empty for ordinary ones. */
    @Transactional(readOnly = true)
    public Optional<PieceOrder> pieceOf(OrderId order) {
        return rows("p.order_id = :id", order).stream().findFirst();
    }

    private List<PieceOrder> rows(String where, OrderId id) {
        return jdbc.sql("""
            select p.order_id, mine.number as mine, p.of_order, whole.number as whole, p.piece
            from piece_again p
            join order_ref mine on mine.id = p.order_id
            join order_ref whole on whole.id = p.of_order
            where
            """ + where + " order by p.order_id")
                .param("id", id.value())
                .query((row, n) -> new PieceOrder(
                        new OrderId(row.getLong("order_id")),
                        row.getString("mine"),
                        new OrderId(row.getLong("of_order")),
                        row.getString("whole"),
                        row.getInt("piece")))
                .list();
    }
}
