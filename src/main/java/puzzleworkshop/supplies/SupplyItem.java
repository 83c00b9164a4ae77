package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.util.Optional;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;

/**
 * One supply as it stands.
 *
 * @param id empty while not yet kept
 * @param name as it says on the shelf, once
 * @param useUnit by which it is used up
 * @param width of a sheet or roll, when that matters
 * @param height of a sheet; empty for a roll
 * @param purchaseUnit how it is bought: roll of 50 m, pack of 100
 * @param usePerPurchase use units in one purchase unit, above zero
 * @param facts for the laser
 * @param leadDays from ordering to having it
 * @param spareDays kept beyond that
 * @param ownPoint the owner's word: stock in use units at which to buy again, zero or more; empty: by the use so far
 * @param usual whether prices are worked out with this one of its kind; one of each kind
 * @param retired no longer bought, kept for its history
 * @param stock in use units; below zero only when someone accepted that in writing
 * @param unitCost moving average for one use unit
 */
public record SupplyItem(
        Optional<SupplyId> id,
        String name,
        SupplyKind kind,
        UseUnit useUnit,
        Optional<Length> width,
        Optional<Length> height,
        String purchaseUnit,
        BigDecimal usePerPurchase,
        LaserFacts facts,
        int leadDays,
        int spareDays,
        Optional<BigDecimal> ownPoint,
        boolean usual,
        boolean retired,
        BigDecimal stock,
        Money unitCost) {

    /** One about whose buying the owner has said nothing. */
    public SupplyItem(
            Optional<SupplyId> id,
            String name,
            SupplyKind kind,
            UseUnit useUnit,
            Optional<Length> width,
            Optional<Length> height,
            String purchaseUnit,
            BigDecimal usePerPurchase,
            LaserFacts facts,
            int leadDays,
            int spareDays,
            boolean usual,
            boolean retired,
            BigDecimal stock,
            Money unitCost) {
        this(
                id,
                name,
                kind,
                useUnit,
                width,
                height,
                purchaseUnit,
                usePerPurchase,
                facts,
                leadDays,
                spareDays,
                Optional.empty(),
                usual,
                retired,
                stock,
                unitCost);
    }

    /** What one use unit covers: a sheet's area, or a metre of a roll; empty when it covers nothing. */
    public Optional<Area> areaPerUse() {
        return switch (useUnit) {
            case SHEET -> width.flatMap(w -> height.map(h -> w.times(h)));
            case METRE -> width.map(w -> w.times(Length.mm(1000)));
            case PIECE, MILLILITRE -> Optional.empty();
        };
    }

    /** Cost of a square metre; empty when it covers nothing or nothing was bought yet. */
    public Optional<Money> costPerSquareMetre() {
        return unitCost.isPositive() ? costPerSquareMetre(unitCost) : Optional.empty();
    }

    /** Cost of a square metre at a given cost of a use unit; empty when it covers nothing. */
    public Optional<Money> costPerSquareMetre(Money perUse) {
        return areaPerUse().map(area -> perUse.dividedBy(BigDecimal.valueOf(area.toSquareMetres())));
    }

    /** Why it must not be cut by laser; empty when it may, or when it never lies on the board. */
    public Optional<Sentence> forbiddenAtLaser() {
        return kind.isUnderLaser() ? facts.forbidden(name) : Optional.empty();
    }

    /** What all of it on the shelf has cost. */
    public Money stockValue() {
        return unitCost.times(stock);
    }
}
