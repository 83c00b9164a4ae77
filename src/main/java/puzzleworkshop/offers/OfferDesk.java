package puzzleworkshop.offers;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.springframework.stereotype.Service;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.cutting.jobs.RunningTimes;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.time.TimeRange;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.offers.Offer.Question;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.planning.NewWork;
import puzzleworkshop.planning.ReadyDay;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/**
 * Works out an offer for a wish: is the picture sharp enough, which pattern, are there small parts, which board, how long
 * at the laser, what price, which day. Takes up to a second for thousands of pieces; screens call it off their thread.
 */
@Service
public class OfferDesk {

    private final Workshop workshop;
    private final Pictures pictures;
    private final PatternCache shelf;
    private final PuzzleDifficulty difficulty;
    private final BlanksOfWish blanks;
    private final Machines machines;
    private final RunningTimes times;
    private final Settings settings;
    private final Pricing pricing;
    private final WeekPlan plan;
    private final Orders orders;
    private final SignedIn signedIn;

    OfferDesk(
            Workshop workshop,
            Pictures pictures,
            PatternCache shelf,
            PuzzleDifficulty difficulty,
            BlanksOfWish blanks,
            Machines machines,
            RunningTimes times,
            Settings settings,
            Pricing pricing,
            WeekPlan plan,
            Orders orders,
            SignedIn signedIn) {
        this.orders = orders;
        this.signedIn = signedIn;
        this.workshop = workshop;
        this.pictures = pictures;
        this.shelf = shelf;
        this.difficulty = difficulty;
        this.blanks = blanks;
        this.machines = machines;
        this.times = times;
        this.settings = settings;
        this.pricing = pricing;
        this.plan = plan;
    }

    public Offer workOut(Wish wish) {
        return workOut(wish, new Remembered(), () -> false);
    }

    /**
     * The same for a page on which one wish follows the other.
     *
     * @param before what was worked out on the page so far; added to
     * @param outdated whether another wish has come meanwhile; looked at between the parts and before each board
     * @throws CancellationException as soon as it is outdated
     */
    public Offer workOut(Wish wish, Remembered before, BooleanSupplier outdated) {
        return new Working(wish, before, () -> {
                    if (outdated.getAsBoolean()) {
                        throw new CancellationException("Another wish has come");
                    }
                })
                .offer();
    }

    /** One wish being worked out. */
    private final class Working {

        private final WishAtWork at;
        private final Wish wish;
        private final TradeNumbers numbers = workshop.tradeNumbers();
        private final Optional<Machine> machine = machines.standard();
        private final Map<Question, Sentence> complaints = new EnumMap<>(Question.class);
        private final Remembered before;
        private final Runnable stillWanted;

        Working(Wish wish, Remembered before, Runnable stillWanted) {
            this.wish = wish;
            this.before = before;
            this.stillWanted = stillWanted;
            this.at = new WishAtWork(wish, numbers, machine, before, complaints, stillWanted);
        }

        Offer offer() {
            at.checkWantedBy(workshop.today());
            Optional<Resolution> resolution = wish.picture().flatMap(this::resolution);
            if (!at.sizeIsPossible()) {
                return nothing(resolution);
            }
            Optional<CutPattern> pattern = at.orComplain(Question.PIECES, () -> shelf.of(at.spec()));
            stillWanted.run();
            Optional<SmallPartsVerdict> smallParts = pattern.map(this::smallParts);
            stillWanted.run();
            List<Object> rackNow = blanks.rackNow();
            Optional<BlankPlan> boards = machine.map(m -> blanks.boards(at, m, rackNow));
            stillWanted.run();
            List<Suggestion> others = wish.quantity() > 1 ? List.of() : blanks.otherSheets(at, rackNow);
            stillWanted.run();
            Optional<CutSetting> setting = machine.map(m -> settings.forBoard(m, wish.board()));
            if (machine.isEmpty()) {
                complaints.put(Question.BOARD, Sentence.of("offers.problem.no-machine"));
            }
            Optional<TimeRange> laser = pattern.flatMap(p -> setting.map(s -> times.timeFor(paths(p), s)));
            stillWanted.run();
            Optional<KeptPrice> price =
                    laser.isPresent() && boards.isPresent() && boards.get().isComplete()
                            ? at.orComplain(
                                    Question.PRICE, () -> price(pattern.orElseThrow(), boards.get(), laser.get()))
                            : Optional.empty();
            before.priced(wish, price);
            stillWanted.run();
            Optional<ReadyDay> ready = laser.flatMap(time -> ready(pattern.orElseThrow(), time, setting.orElseThrow()));
            return new Offer(
                    wish,
                    resolution,
                    pattern,
                    smallParts,
                    boards,
                    others,
                    setting,
                    laser,
                    price,
                    ready,
                    pattern.map(this::hard),
                    complaints);
        }

        private Offer nothing(Optional<Resolution> resolution) {
            return new Offer(
                    wish,
                    resolution,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    complaints);
        }

        private Optional<Resolution> resolution(FramedPicture framed) {
            Picture picture = pictures.get(framed.picture());
            PrintLimits limits = new PrintLimits(numbers.sharpPpi(), numbers.goodPpi(), numbers.softPpi());
            Resolution judged =
                    Resolution.judge(picture, framed.crop(), wish.puzzle().finished(), numbers.overhang(), limits);
            if (judged.verdict() == Resolution.Verdict.REFUSE
                    && wish.softAccepted().isBlank()) {
                complaints.put(
                        Question.PICTURE,
                        Sentence.of(
                                "offers.problem.too-soft",
                                Math.round(judged.ppi()),
                                numbers.softPpi(),
                                judged.sharpUpTo()));
            }
            return Optional.of(judged);
        }

        private Offer.HowHard hard(CutPattern pattern) {
            double alikeness = difficulty.alikeness(pattern.spec(), wish.picture());
            return new Offer.HowHard(Difficulty.of(pattern, alikeness), alikeness);
        }

        private SmallPartsVerdict smallParts(CutPattern pattern) {
            SmallPartsVerdict verdict = before.of(
                    Remembered.Part.SMALL_PARTS,
                    List.of(pattern.spec(), wish.puzzle().age()),
                    () -> SmallParts.judge(pattern, wish.puzzle().age()));
            if (!verdict.saleable()) {
                complaints.put(Question.AGE, verdict.headline());
            }
            return verdict;
        }

        private List<CurvePath> paths(CutPattern pattern) {
            return new Puzzle(
                            pattern.spec(),
                            wish.puzzle().age(),
                            wish.puzzle().tray(),
                            pattern.pieces().size())
                    .cutPaths(pattern, numbers.outlineLast());
        }

        private KeptPrice price(CutPattern pattern, BlankPlan boards, TimeRange laser) {
            Money board = Money.sum(
                    boards.blocks().stream().map(BlankPlan.Block::cost).toList(), workshop.currency());
            int pieces = pattern.pieces().size();
            PriceQuestion question = new PriceQuestion(
                    wish.quantity(),
                    wish.puzzle().finished(),
                    pieces,
                    board.dividedBy(wish.quantity()),
                    numbers.stickerFor(wish.puzzle().finished()).area(),
                    laser.likely(),
                    pricing.stageWork(pieces),
                    wish.terms().shipping(),
                    wish.terms().shipping(),
                    wish.day().rush(),
                    discount(),
                    wish.terms().vat());
            return new KeptPrice(question, pricing.quote(question));
        }

        /** A discount is an owner's to give. Whoever is none leaves what was agreed as it is, without seeing it. */
        private Percent discount() {
            if (!signedIn.isMaker()) {
                return wish.terms().discount();
            }
            return before.changed()
                    .map(order -> orders.keptPrice(order).question().discount())
                    .orElse(Percent.ZERO);
        }

        private Optional<ReadyDay> ready(CutPattern pattern, TimeRange laser, CutSetting setting) {
            String same = wish.board().material() + " " + wish.board().grade() + " "
                    + wish.board().thickness().mm();
            Minutes trial = setting.isProven() ? Minutes.ZERO : PlannedTrials.TAKES;
            NewWork work = new NewWork(
                    wish.quantity(),
                    pattern.pieces().size(),
                    laser.likely().times(wish.quantity()).plus(trial),
                    same,
                    wish.day().way());
            // an order that is changed stands in the plan with its old work; it does not wait for itself
            Optional<ReadyDay> forecast = before.changed()
                    .map(order -> plan.forecastInstead(order, work))
                    .orElseGet(() -> plan.forecast(work));
            if (forecast.isEmpty()) {
                complaints.put(Question.READY, Sentence.of("offers.problem.nobody-works"));
            }
            return forecast;
        }
    }
}
