package puzzleworkshop.sheets.find;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.RackSettings;

/** Which sizes are useful and what they are worth, by the rack's rules and by what was asked for; and what is worth keeping by that. */
@Service
@Transactional(readOnly = true)
public class LearnedSizes {

    private final RackSettings rack;
    private final RemainderWorth worth;

    LearnedSizes(RackSettings rack, RemainderWorth worth) {
        this.rack = rack;
        this.worth = worth;
    }

    Optional<RemainderWorth.Ladder> ladder(Collection<BlankWish> wishes) {
        return worth.ladder(wishes);
    }

    /** The ladder of useful sizes in force, with learned worths as soon as enough was asked for. */
    public UsefulSizes sizes() {
        return sizes(List.of());
    }

    /** The same for boards that would do for one of the wishes. */
    public UsefulSizes sizes(Collection<BlankWish> wishes) {
        return ladder(wishes).map(RemainderWorth.Ladder::sizes).orElseGet(rack::sizes);
    }

    /**
     * What a sheet keeps of what the next weeks will ask for when these blanks are cut from it; empty while nothing is
     * learned, or when it keeps nothing that is expected.
     */
    public Optional<Sentence> keeps(Sheet sheet, List<Size> blanks, List<Placement> places) {
        return ladder(List.of(kindOf(sheet))).flatMap(learned -> {
            List<Remainder.Part> parts = new ArrayList<>(
                    Remainder.whole(sheet.outline(), learned.sizes()).parts());
            for (int i = 0; i < blanks.size(); i++) {
                Size blank = blanks.get(i);
                Placement place = places.get(i);
                Optional<Remainder.Part> from = parts.stream()
                        .filter(part -> RectanglePlaces.accepts(part.outline(), blank, place))
                        .findFirst();
                if (from.isEmpty()) {
                    return Optional.empty();
                }
                parts.remove(from.get());
                parts.addAll(Remainder.after(
                                from.get().outline(), blank, place, rack.rules().kerf(), learned.sizes())
                        .parts());
            }
            return KeptForLater.reason(learned, new Remainder(parts), Optional.empty());
        });
    }

    /** For each part of what is left of a sheet, in their order, whether it is worth keeping, what it is best sawn to, and why. */
    public List<Keeping> keeping(Sheet sheet, Remainder rest) {
        Optional<RemainderWorth.Ladder> ladder = ladder(List.of(kindOf(sheet)));
        UsefulSizes sizes = ladder.map(RemainderWorth.Ladder::sizes).orElseGet(rack::sizes);
        return rest.parts().stream()
                .map(part -> KeptForLater.keeping(ladder, part, sizes))
                .toList();
    }

    /** The wish for which boards of just this kind would do. */
    private static BlankWish kindOf(Sheet sheet) {
        BoardFacts facts = sheet.facts();
        return new BlankWish(
                sheet.outline().bounds(),
                Set.of(facts.material()),
                Set.of(facts.grade()),
                facts.thickness(),
                facts.bow(),
                BlankWish.GrainWish.ANY);
    }
}
