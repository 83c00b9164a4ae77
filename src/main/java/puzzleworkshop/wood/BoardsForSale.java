package puzzleworkshop.wood;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.workshop.Workshop;

/** Which boards of a kind can be bought, and which boards in the rack are of it. */
@Component
class BoardsForSale {

    private static final int MOST = 3;

    private final RackSettings settings;
    private final Workshop workshop;

    BoardsForSale(RackSettings settings, Workshop workshop) {
        this.settings = settings;
        this.workshop = workshop;
    }

    /** The cheapest few by area, the largest among them; in the workshop's currency. */
    List<BoardOffer> of(BoardKindAsked kind) {
        List<BoardOffer> cheapest = settings.offers().stream()
                .filter(offer -> offer.offered()
                        && offer.material().equals(kind.material())
                        && offer.grade().name().equals(kind.grade())
                        && near(offer.thickness().mm(), kind.thickness().mm())
                        && offer.price().currency().equals(workshop.currency()))
                .sorted(Comparator.comparingDouble(BoardsForSale::unit).thenComparing(BoardOffer::id))
                .toList();
        if (cheapest.size() <= MOST) {
            return cheapest;
        }
        List<BoardOffer> few = new ArrayList<>(cheapest.subList(0, MOST));
        BoardOffer largest = cheapest.stream()
                .max(Comparator.comparing((BoardOffer offer) -> offer.size().area()))
                .orElseThrow();
        if (!few.contains(largest)) {
            few.set(MOST - 1, largest);
        }
        return few;
    }

    private static double unit(BoardOffer offer) {
        return offer.price().amount().doubleValue() / offer.size().area().mm2();
    }

    /** Cost in hundredths of the currency's unit. */
    static ForSale forSale(BoardOffer offer) {
        return new ForSale(
                (int) Math.floor(offer.size().longerSide().mm()),
                (int) Math.floor(offer.size().shorterSide().mm()),
                Math.max(1, Math.round(offer.price().amount().doubleValue() * 100)));
    }

    /** What any board of the kind would do for. */
    BlankWish wish(BoardKindAsked kind) {
        return new BlankWish(
                Size.mm(1, 1),
                Set.of(kind.material()),
                Set.of(Grade.valueOf(kind.grade())),
                kind.thickness(),
                settings.rules().mostBow(),
                BlankWish.GrainWish.ANY);
    }

    /** Whether boards of the kind would do for the wish but for their size. */
    boolean wouldDo(BoardKindAsked kind, BlankWish wish) {
        return (wish.materials().isEmpty() || wish.materials().contains(kind.material()))
                && (wish.grades().isEmpty()
                        || wish.grades().stream().anyMatch(grade -> grade.name().equals(kind.grade())))
                && near(wish.thickness().mm(), kind.thickness().mm());
    }

    private boolean near(double one, double other) {
        return Math.abs(one - other) <= settings.rules().thicknessSlack().mm() + 1e-9;
    }
}
