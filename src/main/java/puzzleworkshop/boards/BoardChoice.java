package puzzleworkshop.boards;

import java.util.List;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** The kinds of board that a puzzle can be made from. */
@Service
public class BoardChoice {

    private final SheetRack rack;
    private final RackSettings settings;
    private final Workshop workshop;

    BoardChoice(SheetRack rack, RackSettings settings, Workshop workshop) {
        this.rack = rack;
        this.settings = settings;
        this.workshop = workshop;
    }

    /**
     * What lies in the rack first, the kind with most free sheets at the head: offcuts that are there are to be used before
     * anything is bought. Then what can be bought, and every material in the usual thickness.
     */
    public List<BoardKind> kinds() {
        Length usual = workshop.tradeNumbers().boardThickness();
        return Stream.of(
                        rack.kinds().stream()
                                .map(k -> new BoardKind(k.material(), k.grade().name(), k.nominal())),
                        settings.offers().stream()
                                .filter(BoardOffer::offered)
                                .map(offer -> new BoardKind(
                                        offer.material(), offer.grade().name(), offer.thickness())),
                        settings.materials().stream().map(m -> new BoardKind(m.id(), Grade.CRAFT.name(), usual)))
                .flatMap(kinds -> kinds)
                .distinct()
                .toList();
    }
}
