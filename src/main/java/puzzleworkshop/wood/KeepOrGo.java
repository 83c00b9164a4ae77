package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.ahead.SparePieces;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedRates;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.asked.Demand;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.workshop.Workshop;

/**
 * Which pieces will be missed least when the rack is too full: those from which least is cut in the half year to come, each kind of
 * board with what is asked for on it. What is not cut by then counts half of its worth by the fixed weights of the useful sizes
 * (our own choice), so that a new board does not go before a scrap.
 *
 * <p>What lies there is judged again whenever some went: of many alike pieces those that stay are missed the more.
 */
@Component
class KeepOrGo {

    private static final int ROUNDS = 8;
    private static final double LATER = 0.5;
    private static final double HUNDRED = 100;
    private static final long SEED = 283;

    private final AskedFor asked;
    private final BoardsForSale forSale;
    private final RackShapes shapes;
    private final RackSettings settings;
    private final Workshop workshop;

    KeepOrGo(AskedFor asked, BoardsForSale forSale, RackShapes shapes, RackSettings settings, Workshop workshop) {
        this.workshop = workshop;
        this.asked = asked;
        this.forSale = forSale;
        this.shapes = shapes;
        this.settings = settings;
    }

    /** What is asked for on a kind of board, and where it is bought; none: nothing is known of it. */
    private record Kind(List<LearnedWorth.Asked> asked, List<ForSale> offers) {}

    private record Piece(Sheet sheet, Optional<Wanted> size, int rung, double later, Optional<Kind> kind) {}

    private record Judged(Piece piece, double missed, double saves, double usedIn) {}

    /**
     * @param free sheets, the only ones that may go
     * @param lying how many lie in the rack in all
     */
    KeepAdvice advise(List<Sheet> free, int lying, int room) {
        int tooMany = Math.clamp(lying - room, 0, free.size());
        if (tooMany == 0) {
            return new KeepAdvice(lying, room, List.of());
        }
        UsefulSizes useful = settings.sizes();
        List<Piece> left = pieces(free, useful);
        List<Judged> gone = new ArrayList<>();
        while (gone.size() < tooMany) {
            List<Judged> judged = judged(left);
            int now = Math.min(tooMany - gone.size(), Math.max(1, (tooMany + ROUNDS - 1) / ROUNDS));
            List<Judged> going = judged.subList(0, now);
            gone.addAll(going);
            left = judged.subList(now, judged.size()).stream()
                    .map(Judged::piece)
                    .toList();
        }
        return new KeepAdvice(
                lying,
                room,
                gone.stream()
                        .map(one -> new KeepAdvice.Spare(one.piece().sheet(), why(one, useful)))
                        .toList());
    }

    private List<Piece> pieces(List<Sheet> free, UsefulSizes useful) {
        Map<BlankWish, Optional<Kind>> kinds = new HashMap<>();
        List<Optional<Size>> largest = shapes.largest(free);
        List<Piece> pieces = new ArrayList<>();
        for (int i = 0; i < free.size(); i++) {
            Sheet sheet = free.get(i);
            BlankWish wish = BlankWish.of(Size.mm(1, 1), sheet.facts().thickness());
            BlankWish alike = new BlankWish(
                    wish.size(),
                    Set.of(sheet.facts().material()),
                    Set.of(sheet.facts().grade()),
                    wish.thickness(),
                    wish.mostBow(),
                    BlankWish.GrainWish.ANY);
            Optional<Wanted> size = largest.get(i).map(AskedRates::piece);
            int rung = size.map(one -> rung(useful, one)).orElse(UsefulSizes.SCRAP);
            pieces.add(new Piece(
                    sheet,
                    size,
                    rung,
                    LATER * useful.value(sheet.outline().area().mm2(), rung),
                    sheet.facts().past().isFitForCutting()
                            ? kinds.computeIfAbsent(alike, one -> kind(one, useful))
                            : Optional.empty()));
        }
        return pieces;
    }

    private Optional<Kind> kind(BlankWish wish, UsefulSizes useful) {
        List<BoardKindAsked> kinds = asked.byKind().keySet().stream()
                .filter(one -> forSale.wouldDo(one, wish))
                .toList();
        List<LearnedWorth.Asked> rates = kinds.stream()
                .flatMap(one -> AskedRates.of(asked.sizes(one), useful.rungs()).stream())
                .toList();
        List<ForSale> offers = kinds.stream()
                .flatMap(one -> forSale.of(one).stream())
                .map(BoardsForSale::forSale)
                .distinct()
                .flatMap(board -> Collections.nCopies(3, board).stream())
                .toList();
        return rates.isEmpty() || offers.isEmpty() ? Optional.empty() : Optional.of(new Kind(rates, offers));
    }

    private static int rung(UsefulSizes useful, Wanted piece) {
        return IntStream.iterate(useful.top(), rung -> rung >= 0, rung -> rung - 1)
                .filter(rung -> AskedRates.wanted(useful.rung(rung)).fits(piece.width(), piece.height()))
                .findFirst()
                .orElse(UsefulSizes.SCRAP);
    }

    /** Those missed least come first. */
    private static List<Judged> judged(List<Piece> pieces) {
        Map<Kind, List<Piece>> kinds = new HashMap<>();
        List<Judged> judged = new ArrayList<>();
        for (Piece piece : pieces) {
            if (piece.kind().isPresent() && piece.rung() != UsefulSizes.SCRAP) {
                kinds.computeIfAbsent(piece.kind().get(), kind -> new ArrayList<>())
                        .add(piece);
            } else {
                judged.add(new Judged(piece, piece.kind().isPresent() ? piece.later() : 0, 0, 0));
            }
        }
        kinds.forEach((kind, same) -> {
            List<SparePieces.Missed> missed = SparePieces.of(
                    same.stream().map(piece -> piece.size().orElseThrow()).toList(),
                    kind.asked(),
                    kind.offers(),
                    Demand.WEEKS_TO_COME,
                    SEED);
            double unit = kind.offers().stream()
                    .mapToDouble(board -> (double) board.cost() / board.area())
                    .min()
                    .orElse(1);
            for (int i = 0; i < same.size(); i++) {
                Piece piece = same.get(i);
                double stays = (1 - missed.get(i).usedIn()) * unit * piece.later();
                judged.add(new Judged(
                        piece,
                        missed.get(i).saves() + stays,
                        missed.get(i).saves(),
                        missed.get(i).usedIn()));
            }
        });
        judged.sort(Comparator.comparingDouble(Judged::missed)
                .thenComparing(one -> one.piece().sheet().outline().area())
                .thenComparing(one -> one.piece().sheet().id().value()));
        return judged;
    }

    private Sentence why(Judged one, UsefulSizes useful) {
        Piece piece = one.piece();
        if (!piece.sheet().facts().past().isFitForCutting()) {
            return Sentence.of("wood.keep.unfit");
        }
        if (piece.rung() == UsefulSizes.SCRAP) {
            return Sentence.of("wood.keep.scrap", useful.rung(0));
        }
        Size size = useful.rung(piece.rung());
        if (piece.kind().isEmpty()) {
            return Sentence.of("wood.keep.unasked", size);
        }
        return Sentence.of(
                "wood.keep.spare",
                size,
                Long.toString(Math.round(HUNDRED * one.usedIn())),
                Demand.WEEKS_TO_COME,
                Money.of(BigDecimal.valueOf(Math.round(one.saves()), 2), workshop.currency()));
    }
}
