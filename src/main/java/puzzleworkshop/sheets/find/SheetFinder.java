package puzzleworkshop.sheets.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestSheets;
import puzzleworkshop.geometry.fit.LargestRectangle;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackIndex;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetStore;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.CostSplit;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;

/** Finds the sheet, the place on it, or the new board to buy, for a blank somebody needs. Changes nothing. */
@Service
@Transactional(readOnly = true)
public class SheetFinder {

    private static final int RUNNERS_UP = 5;

    private final SheetStore sheets;
    private final RackSettings rack;
    private final SheetRules sheetRules;
    private final LearnedSizes learned;
    private final RackIndex index;

    SheetFinder(SheetStore sheets, RackSettings rack, SheetRules sheetRules, LearnedSizes learned, RackIndex index) {
        this.sheets = sheets;
        this.rack = rack;
        this.sheetRules = sheetRules;
        this.learned = learned;
        this.index = index;
    }

    /** The sheets that lose the least by giving the blank, best first, each with its best place; empty: none fits. */
    public List<Suggestion> suggest(BlankWish wish) {
        return suggest(wish, RUNNERS_UP);
    }

    public List<Suggestion> suggest(BlankWish wish, int most) {
        RackRules rules = rack.rules();
        List<SheetStore.Candidate> candidates = sheets.candidates(wish, rules.thicknessSlack());
        Optional<RemainderWorth.Ladder> ladder = learned.ladder(List.of(wish));
        UsefulSizes useful = ladder.map(RemainderWorth.Ladder::sizes).orElseGet(rack::sizes);
        List<Profile> profiles = index.profiles(candidates, useful);
        List<double[]> angles = candidates.stream()
                .map(candidate -> wish.angles(candidate.grain()))
                .collect(Collectors.toCollection(ArrayList::new));
        List<BestSheets.Ranked> ranked = BestSheets.rank(profiles, wish.size(), angles, useful, most);
        List<BestSheets.Ranked> finest = ranked.parallelStream()
                .map(answer -> BestSheets.finest(
                                profiles.get(answer.index()), wish.size(), angles.get(answer.index()), useful)
                        .orElse(answer))
                .toList();
        List<Suggestion> suggestions = new ArrayList<>();
        for (int i = 0; i < ranked.size(); i++) {
            String rank = ranked.size() == 1 ? ".only" : i == 0 ? "" : ".next";
            SheetId id = candidates.get(ranked.get(i).index()).id();
            BestSheets.Ranked answer = finest.get(i);
            sheets.find(id)
                    .map(sheet -> suggestion(sheet, wish, answer, rules, useful, rank))
                    .ifPresent(suggestions::add);
        }
        return ladder.map(known -> withWhatIsKept(suggestions, known)).orElse(suggestions);
    }

    /** The first says what it keeps that the second does not. */
    private static List<Suggestion> withWhatIsKept(List<Suggestion> suggestions, RemainderWorth.Ladder ladder) {
        List<Suggestion> said = new ArrayList<>();
        for (int i = 0; i < suggestions.size(); i++) {
            Suggestion one = suggestions.get(i);
            Optional<Remainder> next = i == 0 && suggestions.size() > 1
                    ? Optional.of(suggestions.get(1).remainder())
                    : Optional.empty();
            said.add(KeptForLater.reason(ladder, one.remainder(), next)
                    .map(one::because)
                    .orElse(one));
        }
        return said;
    }

    /** A search for many blanks of the wish's kind of board, none smaller than the wish. */
    public BlankSearch search(BlankWish smallest) {
        List<SheetStore.Candidate> candidates =
                sheets.candidates(smallest, rack.rules().thicknessSlack());
        UsefulSizes useful = learned.sizes(List.of(smallest));
        List<double[]> angles = candidates.stream()
                .map(candidate -> smallest.angles(candidate.grain()))
                .collect(Collectors.toCollection(ArrayList::new));
        return new BlankSearch(smallest, candidates, index.profiles(candidates, useful), angles, useful);
    }

    /** What was found, each with its finest place and what remains; in the same order. */
    public List<Suggestion> suggestions(BlankSearch search, List<BlankSearch.Found> found) {
        RackRules rules = rack.rules();
        UsefulSizes useful = search.useful();
        Map<SheetId, Sheet> known = sheets.all(found.stream().map(search::sheet).toList()).stream()
                .collect(Collectors.toMap(Sheet::id, sheet -> sheet));
        return found.parallelStream()
                .map(one -> suggestion(
                        known.get(search.sheet(one)), search.wish(one), search.finest(one), rules, useful, ".only"))
                .toList();
    }

    private static Suggestion suggestion(
            Sheet sheet, BlankWish wish, BestSheets.Ranked answer, RackRules rules, UsefulSizes useful, String rank) {
        Remainder rest = Remainder.after(sheet.outline(), wish.size(), answer.place(), rules.kerf(), useful);
        Money cost = CostSplit.after(sheet.cost(), sheet.outline(), wish.size(), rest, rules)
                .blank();
        Sentence reason = reason(wish.size(), sheet.outline(), rest, rank);
        return new Suggestion(sheet, wish.size(), answer.place(), rest, answer.valueLost(), cost, reason);
    }

    private static Sentence reason(Size blank, Outline outline, Remainder rest, String rank) {
        Optional<LargestRectangle> largest = rest.largest();
        if (largest.isEmpty()) {
            Area waste = outline.area().minus(blank.area());
            return Sentence.of("sheets.reason.snug" + rank, waste);
        }
        return Sentence.of("sheets.reason.leaves" + rank, largest.get().size());
    }

    /** The suggestion for one sheet with the blank where the user put it. */
    public Optional<Suggestion> at(SheetId id, BlankWish wish, Placement place) {
        RackRules rules = rack.rules();
        UsefulSizes useful = learned.sizes(List.of(wish));
        return sheets.find(id)
                .filter(sheet -> RectanglePlaces.accepts(sheet.outline(), wish.size(), place))
                .flatMap(sheet -> {
                    Remainder rest = Remainder.after(sheet.outline(), wish.size(), place, rules.kerf(), useful);
                    Area before = Profile.of(sheet.outline(), useful).value();
                    Area lost = Area.mm2(Math.max(0, before.mm2() - rest.value().mm2()));
                    return Optional.of(new Suggestion(
                            sheet,
                            wish.size(),
                            place,
                            rest,
                            lost,
                            CostSplit.after(sheet.cost(), sheet.outline(), wish.size(), rest, rules)
                                    .blank(),
                            reason(wish.size(), sheet.outline(), rest, ".only")));
                });
    }

    /** The best place on one sheet, if the blank fits there and the rules allow it. */
    public Optional<Suggestion> on(SheetId id, BlankWish wish) {
        RackRules rules = rack.rules();
        UsefulSizes useful = learned.sizes(List.of(wish));
        return sheets.find(id)
                .filter(sheet -> sheetRules.against(sheet, wish).isEmpty())
                .flatMap(sheet -> BestSheets.finest(
                                Profile.of(sheet.outline(), useful),
                                wish.size(),
                                wish.angles(sheet.facts().grain()),
                                useful)
                        .map(answer -> suggestion(sheet, wish, answer, rules, useful, ".only")));
    }

    /** Why a sheet was not suggested, or that it could be, in one sentence. */
    public Sentence whyNot(SheetId id, BlankWish wish) {
        Sheet sheet = sheets.find(id).orElseThrow(() -> new Refused("sheets.unknown", id.toString()));
        Optional<Sentence> rule = sheetRules.against(sheet, wish);
        if (rule.isPresent()) {
            return rule.get();
        }
        UsefulSizes useful = learned.sizes(List.of(wish));
        Optional<BestSheets.Ranked> answer = BestSheets.finest(
                Profile.of(sheet.outline(), useful),
                wish.size(),
                wish.angles(sheet.facts().grain()),
                useful);
        if (answer.isEmpty()) {
            boolean turned = RectanglePlaces.fits(sheet.outline(), wish.size());
            return LargestRectangle.in(sheet.outline())
                    .map(largest -> turned
                            ? Sentence.of("sheets.whynot.grain", wish.size())
                            : Sentence.of("sheets.whynot.shape", wish.size(), largest.size()))
                    .orElse(Sentence.of("sheets.whynot.narrow", wish.size()));
        }
        List<Suggestion> best = suggest(wish, 1);
        if (best.isEmpty() || best.getFirst().sheet().id().equals(id)) {
            return Sentence.of("sheets.whynot.best");
        }
        Area more = Area.mm2(Math.max(
                0, answer.get().valueLost().mm2() - best.getFirst().valueLost().mm2()));
        return Sentence.of(
                "sheets.whynot.loses", more, best.getFirst().sheet().id().toString());
    }

    /** The board to buy when no sheet gives the blank: the one that adds least to its cost; empty: none is large enough. */
    public Optional<NewSheet> newSheetFor(BlankWish wish) {
        RackRules rules = rack.rules();
        UsefulSizes useful = learned.sizes(List.of(wish));
        NewSheet best = null;
        for (BoardOffer offer : rack.offers()) {
            if (!sheetRules.meets(offer, wish)) {
                continue;
            }
            Outline board = Outline.rectangle(offer.size());
            Optional<BestSheets.Ranked> answer =
                    BestSheets.finest(Profile.of(board, useful), wish.size(), wish.angles(offer.grain()), useful);
            if (answer.isEmpty()) {
                continue;
            }
            Remainder rest = Remainder.after(board, wish.size(), answer.get().place(), rules.kerf(), useful);
            Money cost = CostSplit.after(offer.price().rounded(), board, wish.size(), rest, rules)
                    .blank();
            if (best == null || cost.compareTo(best.blankCost()) < 0) {
                best = new NewSheet(
                        offer,
                        answer.get().place(),
                        rest,
                        cost,
                        Sentence.of("sheets.new.reason", offer.name(), offer.price()));
            }
        }
        return Optional.ofNullable(best);
    }

    /** What is known about the shapes of these sheets, worked out once for each. */
    public List<Profile> profiles(List<Sheet> stock, UsefulSizes sizes) {
        return index.profiles(
                stock.stream()
                        .map(sheet -> new SheetStore.Candidate(
                                sheet.id(),
                                OutlineText.write(sheet.outline()),
                                sheet.facts().grain()))
                        .toList(),
                sizes);
    }
}
