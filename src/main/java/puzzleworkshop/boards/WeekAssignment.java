package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.assign.BoardAssignment;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.LearnedSizes;
import puzzleworkshop.sheets.find.SheetFinder;

/** Gives all waiting blanks their sheets together, so that least new board is bought and least value lost. */
@Service
public class WeekAssignment {

    /**
     * A blank's sheet in the plan.
     *
     * @param sheet in the rack; empty: on a new board
     * @param newBoard which of the new boards, when on one
     * @param why what the sheet keeps for the next weeks when all its blanks are cut
     */
    public record Given(
            WaitingBlank blank, Optional<SheetId> sheet, int newBoard, Placement place, Optional<Sentence> why) {}

    /** One new board to buy. */
    public record Bought(BoardOffer offer, int number) {}

    /** A plan for the week and what it costs the rack. */
    public record WeekPlan(
            List<Given> given, List<WaitingBlank> without, List<Bought> bought, Area newArea, Area valueLost) {}

    /**
     * The plan, and what first come, first served would have done.
     *
     * @param leastNewArea no plan buys less
     * @param leastValueLost no plan that buys as many new boards loses less
     */
    public record Compared(WeekPlan together, WeekPlan firstCome, Area leastNewArea, Area leastValueLost) {}

    /** Of the time given, so many milliseconds are left for what each sheet keeps. */
    private static final long FOR_WORDS = 200;

    private final SheetRack rack;
    private final RackSettings settings;
    private final SheetFinder finder;
    private final LearnedSizes learned;
    private final BlanksWaiting blanks;
    private final OrderBoards boards;
    private final HouseUnits house;

    WeekAssignment(
            SheetRack rack,
            RackSettings settings,
            SheetFinder finder,
            LearnedSizes learned,
            BlanksWaiting blanks,
            OrderBoards boards,
            HouseUnits house) {
        this.house = house;
        this.rack = rack;
        this.settings = settings;
        this.finder = finder;
        this.learned = learned;
        this.blanks = blanks;
        this.boards = boards;
    }

    public List<WaitingBlank> waiting() {
        return blanks.waiting();
    }

    /** Works for about so long; call it off the screen's thread. */
    public Compared assign(List<WaitingBlank> waiting, long millis, long seed) {
        return new Week(waiting).assign(millis, seed);
    }

    /** Holds the sheet that the plan gives to a blank, and lets further blanks on it follow: all or nothing. */
    public void hold(Given first, List<Given> next, String who) {
        boards.holdWithFollowers(
                place(first), next.stream().map(WeekAssignment::place).toList(), who);
    }

    private static OrderBoards.Place place(Given given) {
        return new OrderBoards.Place(
                given.blank().order().id(),
                given.blank().position(),
                given.sheet().orElseThrow(),
                given.place());
    }

    private final class Week {

        private final List<WaitingBlank> waiting;
        private final List<Sheet> stock;
        private final List<BoardOffer> offers;
        private final RackRules rules;
        private final UsefulSizes sizes;

        Week(List<WaitingBlank> waiting) {
            this.waiting = waiting;
            RackFilter free = new RackFilter(
                    "", Optional.empty(), Optional.empty(), Optional.empty(), java.util.Set.of(SheetState.FREE));
            this.stock = rack.list(free, 0, 5000);
            // amounts of several currencies cannot be compared, and another is not what the workshop buys in
            this.offers = settings.offers().stream()
                    .filter(offer -> offer.price().currency().equals(house.currency()))
                    .toList();
            this.rules = settings.rules();
            this.sizes = learned.sizes(waiting.stream().map(WaitingBlank::wish).toList());
        }

        Compared assign(long millis, long seed) {
            long start = System.nanoTime();
            List<Profile> boards = finder.profiles(stock, sizes);
            List<Profile> kinds = offers.stream()
                    .map(offer -> Profile.of(Outline.rectangle(offer.size()), sizes))
                    .toList();
            List<Size> blanks = waiting.stream().map(w -> w.wish().size()).toList();
            BoardAssignment assignment = new BoardAssignment(boards, kinds, blanks, sizes, rules.kerf(), this::angles);
            BoardAssignment.Plan firstCome = assignment.firstCome();
            BoardAssignment.Plan together =
                    assignment.together(millis - FOR_WORDS - (System.nanoTime() - start) / 1_000_000, seed);
            return new Compared(
                    plan(together, true),
                    plan(firstCome, false),
                    assignment.leastNewArea(),
                    assignment.leastValueLost(together));
        }

        /** For each sheet of the plan what it keeps. */
        private Map<Integer, Optional<Sentence>> why(BoardAssignment.Plan plan) {
            return plan.placed().stream()
                    .filter(placed -> placed.board() < stock.size())
                    .collect(Collectors.groupingBy(BoardAssignment.Placed::board))
                    .entrySet()
                    .stream()
                    .collect(Collectors.toMap(
                            Map.Entry::getKey,
                            sheet -> learned.keeps(
                                    stock.get(sheet.getKey()),
                                    sheet.getValue().stream()
                                            .map(placed -> waiting.get(placed.blank())
                                                    .wish()
                                                    .size())
                                            .toList(),
                                    sheet.getValue().stream()
                                            .map(BoardAssignment.Placed::place)
                                            .toList())));
        }

        private double[] angles(int blank, int board) {
            BlankWish wish = waiting.get(blank).wish();
            if (board >= stock.size()) {
                BoardOffer offer = offers.get(board - stock.size());
                boolean allowed =
                        wish.allows(offer.material(), offer.grade(), offer.thickness(), rules.thicknessSlack());
                return allowed ? wish.angles(offer.grain()) : new double[0];
            }
            BoardFacts facts = stock.get(board).facts();
            boolean allowed = facts.past().isFitForCutting()
                    && facts.bow().compareTo(wish.mostBow()) <= 0
                    && wish.allows(facts.material(), facts.grade(), facts.thickness(), rules.thicknessSlack());
            return allowed ? wish.angles(facts.grain()) : new double[0];
        }

        private WeekPlan plan(BoardAssignment.Plan plan, boolean withWords) {
            List<Given> given = new ArrayList<>();
            Map<Integer, Optional<Sentence>> why = withWords ? why(plan) : Map.of();
            for (BoardAssignment.Placed placed : plan.placed()) {
                boolean inRack = placed.board() < stock.size();
                given.add(new Given(
                        waiting.get(placed.blank()),
                        inRack ? Optional.of(stock.get(placed.board()).id()) : Optional.empty(),
                        inRack ? -1 : placed.board() - stock.size(),
                        placed.place(),
                        why.getOrDefault(placed.board(), Optional.empty())));
            }
            List<Bought> bought = new ArrayList<>();
            for (int i = 0; i < plan.newBoards().size(); i++) {
                bought.add(new Bought(offers.get(plan.newBoards().get(i)), i));
            }
            return new WeekPlan(
                    given,
                    plan.unplaced().stream().map(waiting::get).toList(),
                    bought,
                    plan.newArea(),
                    plan.valueLost());
        }
    }
}
