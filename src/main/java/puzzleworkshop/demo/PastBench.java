package puzzleworkshop.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.springframework.stereotype.Component;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/**
 * The bench of the demo workshop's past year. Its boards are its own: what is left of them is thrown away before the week
 * begins that the demo shows, so the rack is as it always was.
 */
@Component
class PastBench {

    private static final Size BOARD = Size.mm(600, 400);
    private static final Length FLAT = Length.mm(2);
    private static final int MOST_OFFCUTS = 7;

    /** Of a board of 600 × 400 mm. */
    private static final Map<BoardKind, String> PRICES =
            Map.of(DemoStock.BIRCH, "6.90", DemoStock.POPLAR, "4.10", DemoStock.THICK_BIRCH, "8.60");

    private final Orders orders;
    private final Progress progress;
    private final OrderBoards boards;
    private final BoardCuts cuts;
    private final SheetRack sheets;
    private final SheetFinder finder;
    private final Parcels parcels;
    private final ParcelJourney journey;
    private final PastCuts lasers;
    private final Workshop workshop;

    PastBench(
            Orders orders,
            Progress progress,
            OrderBoards boards,
            BoardCuts cuts,
            SheetRack sheets,
            SheetFinder finder,
            Parcels parcels,
            ParcelJourney journey,
            PastCuts lasers,
            Workshop workshop) {
        this.orders = orders;
        this.progress = progress;
        this.boards = boards;
        this.cuts = cuts;
        this.sheets = sheets;
        this.finder = finder;
        this.parcels = parcels;
        this.journey = journey;
        this.lasers = lasers;
        this.workshop = workshop;
    }

    Rack openRack() {
        return new Rack();
    }

    /** Boards that were bought in the course of the year and what is left of them. */
    final class Rack {

        /** A piece of board, and of which kind it is. */
        private record Left(BoardKind kind, Outline outline) {}

        /** What is left of its boards, oldest first, with the outline: whether a blank fits is seen before the rack is asked. */
        private final Map<SheetId, Left> offcuts = new LinkedHashMap<>();

        private Rack() {}

        /** Each blank from the first offcut that gives it, else from a new board; frame and backing of a tray from another. */
        void plan(Order quote) {
            TradeNumbers numbers = workshop.tradeNumbers();
            Size blank = BlankPlan.blockSize(numbers, quote.puzzle().finished(), quote.quantity(), 1);
            List<BlankPlan.Block> blocks = new ArrayList<>();
            blocks.add(block(BlankPlan.Part.PUZZLE, quote.quantity(), blank, quote));
            if (quote.puzzle().tray()) {
                Size outer = Tray.of(quote.puzzle().pattern()).outerSize();
                blocks.add(block(BlankPlan.Part.TRAY, 2, BlankPlan.trayBlockSize(numbers, outer, 2, 1), quote));
            }
            take(quote, new BlankPlan(blocks, 0));
        }

        private BlankPlan.Block block(BlankPlan.Part part, int across, Size blank, Order quote) {
            return new BlankPlan.Block(part, across, 1, blank, Optional.of(from(blank, quote)), Optional.empty());
        }

        private Suggestion from(Size blank, Order quote) {
            for (Map.Entry<SheetId, Left> offcut : offcuts.entrySet()) {
                if (!offcut.getValue().kind().equals(quote.board())) {
                    continue;
                }
                Optional<Suggestion> fits =
                        at(offcut.getKey(), offcut.getValue().outline(), blank, quote);
                if (fits.isPresent()) {
                    offcuts.remove(offcut.getKey());
                    return fits.get();
                }
            }
            SheetId board = sheets.add(
                    Outline.rectangle(BOARD),
                    BoardFacts.clean(
                                    quote.board().material(),
                                    Grade.valueOf(quote.board().grade()),
                                    quote.board().thickness())
                            .at("L4"),
                    Money.of(PRICES.get(quote.board()), workshop.currency().getCurrencyCode()),
                    DemoStock.MAKER);
            return at(board, Outline.rectangle(BOARD), blank, quote).orElseThrow();
        }

        /** In the first corner where it fits: what is left of a board is L-shaped, and one of its corners is gone. */
        private Optional<Suggestion> at(SheetId sheet, Outline outline, Size blank, Order quote) {
            double width = blank.width().mm();
            double height = blank.height().mm();
            Geometry free = outline.free().buffer(Outline.TOLERANCE);
            Envelope all = free.getEnvelopeInternal();
            double left = outline.origin().xMm();
            double top = outline.origin().yMm();
            double right = left + outline.bounds().width().mm() - width;
            double bottom = top + outline.bounds().height().mm() - height;
            return Stream.of(
                            new Point(left, top),
                            new Point(right, bottom),
                            new Point(right, top),
                            new Point(left, bottom))
                    .filter(corner -> {
                        Envelope taken =
                                new Envelope(corner.xMm(), corner.xMm() + width, corner.yMm(), corner.yMm() + height);
                        return all.covers(taken)
                                && free.covers(free.getFactory().toGeometry(taken));
                    })
                    .flatMap(corner -> finder
                            .at(
                                    sheet,
                                    BlankPlanner.wish(blank, quote.board(), FLAT),
                                    new Placement(corner.xMm(), corner.yMm(), 0))
                            .stream())
                    .findFirst();
        }

        private void take(Order order, BlankPlan plan) {
            if (order.state() == OrderState.QUOTE) {
                boards.plan(order.id(), plan);
            } else {
                boards.replace(order.id(), plan, DemoStock.MAKER);
            }
        }

        private void keep(BoardKind kind, List<SheetId> left) {
            left.forEach(sheet -> offcuts.put(
                    sheet, new Left(kind, sheets.find(sheet).orElseThrow().outline())));
            while (offcuts.size() > MOST_OFFCUTS) {
                SheetId oldest = offcuts.keySet().iterator().next();
                offcuts.remove(oldest);
                sheets.scrap(oldest, "too small to keep", DemoStock.MAKER);
            }
        }

        /** The shelf is cleared. */
        void clear() {
            offcuts.keySet().forEach(sheet -> sheets.scrap(sheet, "cleared out", DemoStock.MAKER));
            offcuts.clear();
        }
    }

    /** Takes an order through its stages between the day it was taken and the day it was handed over. */
    void work(Order order, PastOrder past, Rack rack, Instant taken, SplittableRandom random) {
        HouseClock.at(taken, () -> boards.hold(order.id(), DemoStock.MAKER));
        stages(order, past, rack, taken, random);
    }

    /** Made again after it came back, from another board, and handed over on the day that the script says. */
    void again(Order order, PastOrder past, Instant decided, SplittableRandom random) {
        Rack rack = openRack();
        HouseClock.at(decided, () -> rack.plan(order));
        stages(order, past, rack, decided, random);
        HouseClock.at(past.handedOver().atTime(16, 0).atZone(workshop.zone()).toInstant(), rack::clear);
    }

    private void stages(Order order, PastOrder past, Rack rack, Instant taken, SplittableRandom random) {
        Instant until = past.handedOver().atTime(15, 0).atZone(workshop.zone()).toInstant();
        Duration step = BenchTime.between(taken, until, workshop.zone())
                .dividedBy(Stage.values().length + (past.failed().isPresent() ? 4 : 0));
        Map<Stage, StageStandard> standards = workshop.stageStandards();
        Instant[] at = {taken};
        boolean failedAlready = past.failed().isEmpty();
        for (int i = 0; i < Stage.values().length; i++) {
            Stage stage = Stage.values()[i];
            boolean last = stage == Stage.HAND_OVER;
            at[0] = last ? until : BenchTime.after(at[0], step, workshop.zone());
            Minutes hands = standards
                    .get(stage)
                    .hands(order.quantity(), order.puzzle().pieces())
                    .times(0.8 + random.nextDouble(0.55));
            if (stage == Stage.CUT && !failedAlready) {
                failedAlready = true;
                HouseClock.at(at[0], () -> fail(order, past.failed().orElseThrow(), hands, at[0]));
                i = Stage.STICK.ordinal() - 1;
                continue;
            }
            if (stage == Stage.CUT) {
                lasers.cut(order, at[0], 0.85 + random.nextDouble(0.3));
            }
            HouseClock.at(at[0], () -> {
                if (stage == Stage.CUT) {
                    List<Cut> done = cuts.cut(order.id(), Instant.EPOCH, DemoStock.MAKER);
                    rack.keep(
                            order.board(),
                            done.stream().flatMap(cut -> cut.offcuts().stream()).toList());
                }
                progress.insertTick(order.id(), stage, DemoStock.MAKER, "", Optional.of(hands), at[0]);
                orders.completeStage(order.id(), stage, DemoStock.MAKER);
            });
        }
        arrives(order, until.plus(Duration.ofHours(22)));
    }

    /** Two days on the way, or the customer came for it. */
    private void arrives(Order order, Instant at) {
        parcels.everOf(order.id()).stream()
                .filter(parcel -> parcel.state() == ParcelState.SENT)
                .forEach(parcel -> HouseClock.at(at, () -> journey.delivered(parcel.id(), DemoStock.MAKER)));
    }

    /** Seen before the cut; the stickers and the work on them are lost, the board is kept. */
    private void fail(Order order, Rework.What what, Minutes hands, Instant at) {
        progress.insert(new Rework(
                0,
                order.id(),
                Stage.CUT,
                Stage.STICK,
                what,
                "",
                false,
                hands.times(3),
                Minutes.ZERO,
                Money.of("1.80", workshop.currency().getCurrencyCode()),
                at,
                DemoStock.MAKER));
        orders.sendBack(
                order.id(), Stage.STICK, Sentence.of("demo.year.again", Sentence.of(what.textKey())), DemoStock.MAKER);
    }
}
