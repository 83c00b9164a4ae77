package puzzleworkshop.demo;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.papers.PaperFaces;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** The demo workshop's past year: the same commands as any day's work, each at its own moment, one transaction an order. */
@Component
class DemoYear {

    /** Papers are numbered by the day on which an order leaves, so they are written when all have left. */
    private static final double PLAYED = 0.6;

    /** So many papers are written before the bar moves again. */
    private static final int PAPERS_TOLD = 10;

    private record Left(PastOrder past, Order order) {}

    private static final int AGAIN_DAYS = 8;
    private static final LocalTime MORNING = LocalTime.of(9, 30);

    private final Orders orders;
    private final Pricing pricing;
    private final RateBook book;
    private final PastBench bench;
    private final PastMoney money;
    private final PaperFaces faces;
    private final Workshop workshop;
    private final TransactionTemplate together;

    DemoYear(
            Orders orders,
            Pricing pricing,
            RateBook book,
            PastBench bench,
            PastMoney money,
            PaperFaces faces,
            Workshop workshop,
            PlatformTransactionManager transactions) {
        this.orders = orders;
        this.pricing = pricing;
        this.book = book;
        this.bench = bench;
        this.money = money;
        this.faces = faces;
        this.workshop = workshop;
        this.together = new TransactionTemplate(transactions);
    }

    /** What is painted on an order's papers is painted beside the work on the next ones: a third of the time otherwise. */
    void play(DemoPictures.Drawing scenes, DemoWorkshop.Progress progress) {
        try (ExecutorService painter = Executors.newSingleThreadExecutor(
                Thread.ofPlatform().daemon().name("demo-faces").factory())) {
            List<Left> left = played(scenes, progress, done -> painter.submit(() -> faces.of(done)));
            settle(left, progress);
        }
    }

    private List<Left> played(DemoPictures.Drawing scenes, DemoWorkshop.Progress progress, Consumer<Order> handedOver) {
        LocalDate today = workshop.today();
        List<PastOrder> past = PastOrder.yearBefore(today);
        rates(today);
        PastBench.Rack rack = bench.openRack();
        Map<String, Customer> known = new HashMap<>();
        List<Left> left = new ArrayList<>();
        YearMonth month = null;
        for (int i = 0; i < past.size(); i++) {
            PastOrder one = past.get(i);
            if (!YearMonth.from(one.confirmed()).equals(month)) {
                month = YearMonth.from(one.confirmed());
                progress.reached(
                        PLAYED * i / past.size(), Sentence.of("demo.year.month", i + 1, past.size(), one.confirmed()));
            }
            Picture picture = scenes.of(Scene.values()[i % Scene.values().length]);
            SplittableRandom random = new SplittableRandom(i);
            Order done = together.execute(status -> play(one, known, picture, rack, random));
            handedOver.accept(done);
            left.add(new Left(one, done));
        }
        together.executeWithoutResult(status -> HouseClock.at(at(today.minusDays(3), MORNING), rack::clear));
        return left;
    }

    private void settle(List<Left> left, DemoWorkshop.Progress progress) {
        LocalDate today = workshop.today();
        left.sort(Comparator.comparing((Left one) -> one.past().handedOver()));
        for (int i = 0; i < left.size(); i++) {
            if (i % PAPERS_TOLD == 0) {
                progress.reached(
                        PLAYED + (1 - PLAYED) * i / left.size(), Sentence.of("demo.year.papers", i + 1, left.size()));
            }
            Left one = left.get(i);
            together.executeWithoutResult(status -> {
                money.settle(one.order(), one.past());
                if (one.past().comesBack(today)) {
                    madeAgain(one);
                }
            });
        }
    }

    private void madeAgain(Left one) {
        money.comesBack(one.order(), one.past());
        PastOrder again = one.past().again(one.past().complained(), AGAIN_DAYS);
        bench.again(
                orders.get(one.order().id()),
                again,
                at(one.past().complained(), LocalTime.NOON),
                new SplittableRandom(one.order().id().value()));
    }

    /** Wages rose and power became dearer in the middle of the year; since then what stands now. */
    private void rates(LocalDate today) {
        LocalDate first = today.minusMonths(13).withDayOfMonth(1);
        LocalDate middle = today.minusMonths(6).withDayOfMonth(1);
        HouseClock.at(at(first, MORNING), () -> {
            book.set(
                    RateKind.WAGE_HOUR, new BigDecimal("22.50"), first, "What an hour was worth then", DemoStock.MAKER);
            book.set(RateKind.ENERGY_TARIFF, new BigDecimal("0.27"), first, "Power bill", DemoStock.MAKER);
        });
        HouseClock.at(at(middle, MORNING), () -> {
            book.set(
                    RateKind.WAGE_HOUR,
                    new BigDecimal("24"),
                    middle,
                    "Raised in the middle of the year",
                    DemoStock.MAKER);
            book.set(RateKind.ENERGY_TARIFF, new BigDecimal("0.30"), middle, "New power bill", DemoStock.MAKER);
        });
    }

    private Order play(
            PastOrder past,
            Map<String, Customer> known,
            Picture picture,
            PastBench.Rack rack,
            SplittableRandom random) {
        Instant taken = at(past.confirmed(), MORNING.plusMinutes(random.nextInt(300)));
        Order[] order = new Order[1];
        HouseClock.at(taken, () -> {
            Order quote = orders.quote(draft(past, known, picture, random), DemoStock.MAKER);
            rack.plan(quote);
            orders.confirm(quote.id(), past.promised(), DemoStock.MAKER);
            orders.approve(quote.id(), past.customer(), past.customer());
            known.put(past.customer(), quote.customer());
            order[0] = orders.get(quote.id());
        });
        bench.work(order[0], past, rack, taken, random);
        return order[0];
    }

    private OrderDraft draft(PastOrder past, Map<String, Customer> known, Picture picture, SplittableRandom random) {
        PieceGrid grid = new PieceGrid(past.columns(), past.rows());
        PriceQuestion typical = pricing.typical(past.size(), grid.pieces());
        PriceQuestion question = new PriceQuestion(
                past.quantity(),
                past.size(),
                grid.pieces(),
                typical.boardCost(),
                typical.stickerArea(),
                typical.cutMinutes(),
                typical.work(),
                Money.zero(workshop.currency()),
                Money.zero(workshop.currency()),
                false,
                Percent.ZERO,
                VatRates.STANDARD);
        LocalDate today = workshop.today();
        return new OrderDraft(
                known.getOrDefault(past.customer(), Customer.newcomer(past.customer(), past.contact(), "")),
                past.quantity(),
                new Puzzle(
                        PatternSpec.of(past.size(), grid, 1 + random.nextInt(9000)), IntendedAge.FROM_6, past.tray()),
                past.board(),
                Optional.of(new FramedPicture(
                        picture.id(), Crop.filling(picture, past.size().aspect()))),
                "",
                new DeliveryTerms(Optional.of(past.promised()), Optional.of(past.promised()), false, Optional.empty()),
                question.cutMinutes().times(past.quantity()),
                new KeptPrice(question, pricing.quote(question)),
                today.plusDays(workshop.tradeNumbers().quoteValidDays()),
                "");
    }

    Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(workshop.zone()).toInstant();
    }
}
