package puzzleworkshop.sheets;

import java.util.Optional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** Somebody else was quicker: the sheet is held for another order, or gone. */
public final class SheetTaken extends Refused {

    SheetTaken(SheetId id, Optional<String> order) {
        super(order.map(number -> Sentence.of("sheets.taken.by", id.toString(), number))
                .orElse(Sentence.of("sheets.taken", id.toString())));
    }
}
