package puzzleworkshop.pricing.cost;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.Source;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;

/** What the usual supply of each kind has cost on average; kinds without a purchase leave the word to the rate table. */
@Component
class ShelfPrices implements MaterialPrices {

    private static final Map<RateKind, SupplyKind> KINDS = Map.of(
            RateKind.STICKER_M2, SupplyKind.STICKER_PAPER,
            RateKind.LAMINATE_M2, SupplyKind.LAMINATE,
            RateKind.TAPE_M2, SupplyKind.MASKING_TAPE,
            RateKind.INK_ML, SupplyKind.INK,
            RateKind.BOX, SupplyKind.BOX,
            RateKind.BAG, SupplyKind.BAG,
            RateKind.LABEL, SupplyKind.LABEL);

    private final Supplies supplies;
    private final HouseUnits house;

    ShelfPrices(Supplies supplies, HouseUnits house) {
        this.supplies = supplies;
        this.house = house;
    }

    private static Optional<Size> sheetOf(SupplyItem item) {
        return item.useUnit() == UseUnit.SHEET
                ? item.width().flatMap(width -> item.height().map(height -> new Size(width, height)))
                : Optional.empty();
    }

    @Override
    public Optional<Known> of(RateKind kind, LocalDate day) {
        return Optional.ofNullable(KINDS.get(kind)).flatMap(supplies::usual).flatMap(item -> known(kind, item, day));
    }

    private Optional<Known> known(RateKind kind, SupplyItem item, LocalDate day) {
        LocalDate today = house.today();
        Optional<Money> perUse = day.isBefore(today)
                ? supplies.unitCost(
                        item.id().orElseThrow(),
                        day.plusDays(1).atStartOfDay(house.zone()).toInstant())
                : Optional.of(item.unitCost());
        boolean byArea = kind == RateKind.STICKER_M2 || kind == RateKind.LAMINATE_M2 || kind == RateKind.TAPE_M2;
        return perUse.filter(Money::isPositive)
                .flatMap(cost -> byArea ? item.costPerSquareMetre(cost) : Optional.of(cost))
                .map(cost -> new Known(cost, Source.of(day, "pricing.source.supplies", item.name()), sheetOf(item)));
    }
}
