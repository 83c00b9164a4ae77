package puzzleworkshop.support;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;

/** Boxes as they come into the list of supplies: of no size yet, ten in a pack, none on the shelf. */
public final class PlainBoxes {

    private PlainBoxes() {}

    public static SupplyItem named(String name, Currency currency) {
        return new SupplyItem(
                Optional.empty(),
                name,
                SupplyKind.BOX,
                UseUnit.PIECE,
                Optional.empty(),
                Optional.empty(),
                "pack of 10",
                BigDecimal.TEN,
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.NONE),
                5,
                5,
                false,
                false,
                BigDecimal.ZERO,
                Money.zero(currency));
    }
}
