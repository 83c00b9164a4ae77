package puzzleworkshop.bench.ui.pieces;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import puzzleworkshop.bench.PiecePrint;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.offers.PieceOrders.PieceOrder;
import puzzleworkshop.offers.ui.PieceOrderForm;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** What a piece made again takes: the beam of today, its print, a scrap from the rack. */
@Component
class PieceAgainParts {

    private static final int SCRAPS_SHOWN = 3;

    private final Workshop workshop;
    private final Machines machines;
    private final SheetFinder rack;
    private final PiecePrint prints;
    private final PieceOrders pieces;
    private final Confirmations confirmations;
    private final SignedIn signedIn;
    private final Formatter figures;
    private final Positions positions;

    PieceAgainParts(
            Workshop workshop,
            Machines machines,
            SheetFinder rack,
            PiecePrint prints,
            PieceOrders pieces,
            Confirmations confirmations,
            SignedIn signedIn,
            Formatter figures,
            Positions positions) {
        this.positions = positions;
        this.pieces = pieces;
        this.confirmations = confirmations;
        this.signedIn = signedIn;
        this.figures = figures;
        this.workshop = workshop;
        this.machines = machines;
        this.rack = rack;
        this.prints = prints;
    }

    /** The same piece as an order of its own, with a price and a day. */
    PieceOrderForm order(Order order, int piece, boolean forNothing, Supplier<Optional<LostPiece.Today>> today) {
        return new PieceOrderForm(
                pieces, confirmations, figures, signedIn.name(), order.id(), piece, forNothing, today);
    }

    /** Pieces of an order that became orders of their own. */
    List<PieceOrder> ordered(Order order) {
        return pieces.of(order.id());
    }

    /** What an order is a piece of. */
    Optional<PieceOrder> pieceOf(Order order) {
        return pieces.pieceOf(order.id());
    }

    /** The beam's kerf today; the order's own where no machine is entered. */
    Length kerf(Order order) {
        return machines.standard()
                .map(machine -> machine.beam().kerf())
                .orElse(order.puzzle().pattern().kerf());
    }

    /** Where the old puzzle's print was measured when it was cut, which tells its stretch and its kerf. */
    Optional<Position> cutOf(Order order) {
        return positions.lastMeasured(order.id());
    }

    Length margin() {
        TradeNumbers numbers = workshop.tradeNumbers();
        return numbers.overhang().plus(numbers.holdDownMargin());
    }

    Size blank(LostPiece lost) {
        return lost.size().grownBy(margin());
    }

    byte[] print(Order order, FramedPicture framed, LostPiece lost) {
        return prints.pdf(
                framed, order.puzzle().finished(), lost, workshop.tradeNumbers().overhang());
    }

    /** The offcuts of the order's board that lose the least by giving the blank. */
    List<Suggestion> scraps(Order order, LostPiece lost) {
        BlankWish any = BlankWish.of(blank(lost), order.board().thickness());
        return rack.suggest(
                new BlankWish(
                        any.size(),
                        Set.of(order.board().material()),
                        Set.of(Grade.valueOf(order.board().grade())),
                        any.thickness(),
                        machines.standard().map(Machine::bowLimit).orElse(any.mostBow()),
                        BlankWish.GrainWish.ANY),
                SCRAPS_SHOWN);
    }
}
