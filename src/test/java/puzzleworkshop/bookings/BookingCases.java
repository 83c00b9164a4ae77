package puzzleworkshop.bookings;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.bench.PackingProofs;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutEnds;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.letters.Draft;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.offers.Quotes;
import puzzleworkshop.offers.Remembered;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.Payments;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.list.StockList;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.wood.BoardsOnTheWay;
import puzzleworkshop.wood.BuyAdvice;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** For each command that books, by class and name, a workshop in which it can be sent. */
final class BookingCases {

    /** Sends a command with a key. */
    interface Command {
        Object book(BookingKey key);
    }

    private static final String WHO = "mara";

    private final BeanFactory beans;
    private final SoldOrders sold;
    private final Map<String, Supplier<Command>> cases = new TreeMap<>();

    BookingCases(BeanFactory beans) {
        this.beans = beans;
        this.sold = new SoldOrders(beans);
    }

    Map<String, Supplier<Command>> all() {
        money();
        bench();
        stock();
        parcels();
        complaints();
        letters();
        boards();
        return cases;
    }

    private void money() {
        Invoices invoices = beans.getBean(Invoices.class);
        Receipts receipts = beans.getBean(Receipts.class);
        LocalDate today = beans.getBean(RateBook.class).today();
        Money ten = Money.of("10.00", "EUR");
        cases.put("Invoices.issue", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            return key -> invoices.issue(key, order.id(), WHO);
        });
        cases.put("Invoices.credit", () -> {
            Invoice invoice = invoices.issue(
                    BookingKey.fresh(), sold.confirmed("Ada Reed", 1).id(), WHO);
            var amounts =
                    invoice.byRate().perRate().stream().collect(Collectors.toMap(VatSum.OfRate::rate, rate -> ten));
            return key -> invoices.credit(key, invoice.id(), amounts, "a corner was charred", WHO);
        });
        cases.put("Receipts.receive", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            return key -> {
                receipts.receive(key, order.id(), ten, Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        cases.put("Receipts.receiveKnowingly", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            Money much = order.price().gross().plus(ten);
            return key -> {
                receipts.receiveKnowingly(key, order.id(), much, Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        cases.put("Receipts.refund", () -> {
            Order order = paid(receipts, ten, today);
            return key -> {
                receipts.refund(key, order.id(), Money.of("4.00", "EUR"), Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        Payments payments = beans.getBean(Payments.class);
        cases.put("Payments.book", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            Payment payment = Payment.of(order.id(), Payment.Kind.DEPOSIT, Payment.Way.CARD, ten, today, "", WHO);
            return key -> {
                payments.book(key, payment);
                return "";
            };
        });
        cases.put("Payments.takeBack", () -> {
            Order order = paid(receipts, ten, today);
            long line = payments.of(order.id()).getFirst().number();
            return key -> {
                payments.takeBack(key, order.id(), line, "typed for another order", WHO);
                return "";
            };
        });
        cases.put("Receipts.takeBack", () -> {
            Order order = paid(receipts, ten, today);
            long line = invoices.account(order.id()).payments().getFirst().number();
            return key -> {
                receipts.takeBack(key, order.id(), line, "typed for another order", WHO);
                return "";
            };
        });
    }

    private void letters() {
        Letters letters = beans.getBean(Letters.class);
        cases.put("Letters.byHand", () -> {
            Draft draft = letter(letters);
            return key -> letters.byHand(key, draft);
        });
        cases.put("Letters.send", () -> {
            beans.getBean(JdbcClient.class).sql("""
                update letter_settings set sending = true, host = 'localhost', port = 9, security = 'NONE',
                    from_address = 'post@puzzles.example'
                """).update();
            Draft draft = letter(letters);
            return key -> letters.send(key, draft);
        });
    }

    private Draft letter(Letters letters) {
        Draft draft = letters.draft(sold.confirmed("Ada Reed", 1).id(), LetterKind.ON_TIME, Map.of());
        return new Draft(
                draft.order(),
                draft.kind(),
                "ada@reed.example",
                draft.subject(),
                draft.body(),
                draft.missing(),
                draft.papers());
    }

    private void stock() {
        Supplies supplies = beans.getBean(Supplies.class);
        Money ten = Money.of("10.00", "EUR");
        cases.put("Supplies.buy", () -> {
            SupplyId roll = roll(supplies);
            return key -> supplies.buy(key, roll, BigDecimal.ONE, ten, "", WHO).number();
        });
        cases.put("Supplies.spoil", () -> {
            SupplyId roll = roll(supplies);
            return key -> supplies.spoil(key, roll, BigDecimal.ONE, Optional.empty(), "wet", WHO)
                    .number();
        });
        cases.put("Supplies.sendBack", () -> {
            SupplyId roll = roll(supplies);
            return key -> supplies.sendBack(key, roll, BigDecimal.ONE, "wrong width", WHO)
                    .number();
        });
        StockCounts counts = beans.getBean(StockCounts.class);
        cases.put("StockCounts.count", () -> {
            StockCounts.Count count = new StockCounts.Count(roll(supplies), 1, BigDecimal.TEN);
            return key -> counts.count(key, count, WHO).map(Movement::number);
        });
        cases.put("StockCounts.take", () -> {
            List<StockCounts.Count> all = List.of(new StockCounts.Count(roll(supplies), 1, BigDecimal.TEN));
            return key -> {
                counts.take(key, all, WHO);
                return "";
            };
        });
        StockList lists = beans.getBean(StockList.class);
        cases.put("StockList.takeIn", () -> {
            StockList.Table table = lists.read("""
                Width (mm);Height;Material;Thickness;Past;Place;Cost
                330;245;Birch ply;3;clean;B2;1,20
                """);
            return key -> lists.takeIn(key, lists.preview(table, table.guessed()), WHO);
        });
        BoardFacts birch = BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3));
        Outline board = Outline.rectangle(Size.mm(330, 245));
        cases.put("SheetRack.enter", () -> key -> beans.getBean(SheetRack.class).enter(key, board, birch, ten, WHO));
        cases.put(
                "MeasuredOutlines.enter",
                () -> key -> beans.getBean(MeasuredOutlines.class).enter(key, board, 0.4, birch, ten, WHO));
        cases.put("Settings.record", () -> {
            Machine machine = beans.getBean(Machines.class).save(Machine.usual("Laser", supplies.currency()));
            BoardKind kind = new BoardKind("birch-ply", "CRAFT", Length.mm(3));
            Settings settings = beans.getBean(Settings.class);
            CutParameters common = settings.forBoard(machine, kind).parameters();
            return key -> settings.record(
                    key,
                    machine,
                    kind,
                    common,
                    Trial.Finding.of(Trial.Result.THROUGH, 1),
                    Trial.Source.TRY,
                    WHO,
                    Optional.empty());
        });
        CutJobs jobs = beans.getBean(CutJobs.class);
        CutEnds ends = beans.getBean(CutEnds.class);
        Trial.Finding seen = Trial.Finding.of(Trial.Result.THROUGH, 1);
        cases.put("CutEnds.finish", () -> {
            long job = running(jobs, supplies);
            return key -> ends.finish(key, job, 1, seen, Optional.empty(), WHO).id();
        });
        cases.put("CutEnds.finishWithoutTime", () -> {
            long job = running(jobs, supplies);
            return key -> ends.finishWithoutTime(key, job, "started late", WHO).state();
        });
        cases.put("CutEnds.giveUp", () -> {
            long job = running(jobs, supplies);
            return key -> ends.giveUp(key, job, "flame at the corner", WHO).state();
        });
        cases.put("CutEnds.breakOff", () -> {
            long job = running(jobs, supplies);
            return key -> ends.breakOff(key, job, "charred black", 1, seen, Optional.empty(), WHO)
                    .id();
        });
        cases.put("Confirmations.quote", () -> {
            OrderDraft draft = sold.draft("Ada Reed", 1, false, Percent.ZERO);
            BlankPlan none = new BlankPlan(List.of(), 1);
            return key -> beans.getBean(Confirmations.class).quote(key, draft, none, WHO);
        });
        cases.put("Quotes.quote", () -> {
            OrderDraft draft = sold.draft("Ada Reed", 1, false, Percent.ZERO);
            Offer offer = new Offer(
                    null,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(new BlankPlan(List.of(), 1)),
                    List.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(draft.price()),
                    Optional.empty(),
                    Optional.empty(),
                    Map.of());
            return key -> beans.getBean(Quotes.class).quote(key, draft, offer, new Remembered(), WHO);
        });
        cases.put("PrintRoom.printed", () -> {
            LocalDate promised = LocalDate.now().plusDays(3);
            new BenchOrders(beans).confirmed("Ada Reed", promised, 20);
            long medium = beans.getBean(PrintMedia.class).all().getFirst().id().orElseThrow();
            PrintRun run = beans.getBean(GangRuns.class).propose(medium, promised.plusDays(30), WHO);
            PrintRoom room = beans.getBean(PrintRoom.class);
            room.confirm(run.id(), WHO);
            return key -> room.printed(key, run.id(), Set.of(), "", Optional.of("a new pack"), WHO)
                    .id();
        });
        cases.put("PrintRoom.spoiledSheets", () -> {
            LocalDate promised = LocalDate.now().plusDays(3);
            new BenchOrders(beans).confirmed("Ada Reed", promised, 20);
            long medium = beans.getBean(PrintMedia.class).all().getFirst().id().orElseThrow();
            PrintRun run = beans.getBean(GangRuns.class).propose(medium, promised.plusDays(30), WHO);
            return key -> {
                beans.getBean(PrintRoom.class).spoiledSheets(key, run.id(), 2, "paper jam", WHO);
                return "";
            };
        });
    }

    private long running(CutJobs jobs, Supplies supplies) {
        Machine machine = beans.getBean(Machines.class).save(Machine.usual("Laser", supplies.currency()));
        Workpiece clean = Workpiece.clean(new BoardKind("birch-ply", "CRAFT", Length.mm(3)));
        CutJob.Wish wish = new CutJob.Wish(Optional.empty(), "test cut", machine.id(), clean, Optional.empty());
        long job = jobs.prepare(wish, WHO).id();
        for (CheckItem item : CheckItem.values()) {
            jobs.check(job, item, WHO);
        }
        jobs.start(job, WHO);
        return job;
    }

    private static SupplyId roll(Supplies supplies) {
        SupplyId roll = supplies.keep(new SupplyItem(
                        Optional.empty(),
                        "Pale masking tape",
                        SupplyKind.MASKING_TAPE,
                        UseUnit.METRE,
                        Optional.of(Length.mm(300)),
                        Optional.empty(),
                        "roll of 50 m",
                        BigDecimal.valueOf(50),
                        new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                        7,
                        3,
                        true,
                        false,
                        BigDecimal.ZERO,
                        Money.zero(supplies.currency())))
                .id()
                .orElseThrow();
        supplies.buy(BookingKey.fresh(), roll, BigDecimal.ONE, Money.of("10.00", "EUR"), "", WHO);
        return roll;
    }

    private void bench() {
        Bench bench = beans.getBean(Bench.class);
        BenchOrders orders = new BenchOrders(beans);
        LocalDate promised = LocalDate.now().plusDays(20);
        cases.put("Bench.tick", () -> {
            Order one = orders.confirmed("Ada Reed", promised, 20);
            Order other = orders.confirmed("Mila Brand", promised, 20);
            return key -> bench.tick(key, List.of(one.id(), other.id()), Stage.PRINT, WHO, "phone");
        });
        cases.put("Bench.undo", () -> {
            Order order = orders.confirmed("Ada Reed", promised, 20);
            orders.bringTo(order.id(), Stage.FINISH);
            return key -> {
                bench.undo(key, order.id(), WHO);
                return "";
            };
        });
        cases.put("Bench.wentWrong", () -> {
            Order order = orders.confirmed("Ada Reed", promised, 20);
            orders.bringTo(order.id(), Stage.FINISH);
            Rework.Report report = new Rework.Report(
                    Rework.What.NOT_THROUGH, Stage.CUT, "left edge", Rework.Board.KEPT, Optional.empty());
            return key -> bench.wentWrong(key, order.id(), report, WHO);
        });
        PieceOrders pieces = beans.getBean(PieceOrders.class);
        cases.put("PieceOrders.quote", () -> {
            beans.getBean(Machines.class)
                    .save(Machine.usual("Laser", beans.getBean(Workshop.class).currency()));
            beans.getBean(SheetRack.class)
                    .add(
                            Outline.rectangle(Size.mm(140, 120)),
                            BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                            Money.of("0.40", "EUR"),
                            WHO);
            Order order = orders.confirmed("Ada Reed", promised, 20);
            LostPiece.Today today =
                    LostPiece.Today.withKerf(order.puzzle().pattern().kerf());
            PieceOrders.Wanted wanted = new PieceOrders.Wanted(order.id(), 7, today, false);
            return key -> pieces.quote(key, wanted, WHO);
        });
        PackingProofs proofs = beans.getBean(PackingProofs.class);
        cases.put("PackingProofs.keep", () -> {
            Order order = orders.confirmed("Ada Reed", promised, 20);
            PackingProofs.Taken bare = new PackingProofs.Taken(
                    new byte[] {1}, 40, 30, 0.1, new PieceCheck.LaidPieces(List.of(), false, 0, List.of()));
            return key -> proofs.keep(key, order.id(), 1, List.of(bare), WHO);
        });
    }

    private void parcels() {
        Parcels parcels = beans.getBean(Parcels.class);
        ParcelJourney journey = beans.getBean(ParcelJourney.class);
        cases.put("ParcelJourney.send", () -> {
            Parcel parcel = parcels.pack(
                    List.of(new PackedOrders(beans).one("Ada Reed", "Parcel").id()), WHO);
            return key -> {
                journey.send(key, parcel.id(), Optional.empty(), WHO, "test");
                return "";
            };
        });
        cases.put("ParcelJourney.takeBack", () -> {
            Parcel parcel = parcels.pack(
                    List.of(new PackedOrders(beans).one("Ada Reed", "Parcel").id()), WHO);
            journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test");
            return key -> {
                journey.takeBack(key, parcel.id(), WHO);
                return "";
            };
        });
        cases.put("ParcelJourney.collected", () -> {
            Parcel parcel = parcels.pack(
                    List.of(new PackedOrders(beans)
                            .one("Ada Reed", "Collection")
                            .id()),
                    WHO);
            return key -> {
                journey.collected(key, parcel.id(), WHO, "test");
                return "";
            };
        });
    }

    private void complaints() {
        Complaints complaints = beans.getBean(Complaints.class);
        Remedies remedies = beans.getBean(Remedies.class);
        Complaints.Report report = new Complaints.Report(Complaint.Reason.CHARRED, Stage.CUT, "brown edges");
        Remedies.Terms terms = new Remedies.Terms(Complaint.PostageBy.CUSTOMER, Optional.empty(), "");
        cases.put("Remedies.remake", () -> {
            long complaint = complaints.report(handedOver().id(), report, WHO);
            return key -> {
                remedies.remake(key, complaint, terms, WHO);
                return "";
            };
        });
        cases.put("Remedies.refund", () -> {
            Order order = handedOver();
            beans.getBean(Invoices.class).issue(BookingKey.fresh(), order.id(), WHO);
            long complaint = complaints.report(order.id(), report, WHO);
            return key -> {
                remedies.refund(key, complaint, Money.of("4.00", "EUR"), terms, WHO);
                return "";
            };
        });
    }

    private Order handedOver() {
        Order order = new PackedOrders(beans).one("Ada Reed", "Parcel");
        beans.getBean(Bench.class).tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
        return order;
    }

    private Order paid(Receipts receipts, Money amount, LocalDate today) {
        Order order = sold.confirmed("Ada Reed", 1);
        receipts.receive(BookingKey.fresh(), order.id(), amount, Payment.Way.CASH, today, "", WHO);
        return order;
    }

    private void boards() {
        BoardsOnTheWay boards = beans.getBean(BoardsOnTheWay.class);
        cases.put("BoardsOnTheWay.ordered", () -> {
            BuyAdvice.Line line = board();
            return key -> boards.ordered(key, line, 2, WHO);
        });
        cases.put("BoardsOnTheWay.arrived", () -> {
            long id = boards.ordered(BookingKey.fresh(), board(), 2, WHO);
            return key -> boards.arrived(key, id, "B2", WHO);
        });
        cases.put("BoardsOnTheWay.notComing", () -> {
            long id = boards.ordered(BookingKey.fresh(), board(), 2, WHO);
            return key -> boards.notComing(key, id);
        });
    }

    private BuyAdvice.Line board() {
        RackSettings settings = beans.getBean(RackSettings.class);
        settings.save(new BoardOffer(
                0,
                "birch 600 × 400",
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                Size.mm(600, 400),
                Grain.NONE,
                Money.of("6.00", "EUR"),
                true));
        return new BuyAdvice.Line(
                settings.offers().getLast(), Optional.empty(), Money.of("6.00", "EUR"), 2, 2, Optional.empty());
    }
}
