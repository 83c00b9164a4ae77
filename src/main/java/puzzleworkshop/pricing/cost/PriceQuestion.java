package puzzleworkshop.pricing.cost;

import java.util.List;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.workshop.Stage;

/**
 * What is to be priced: one puzzle, made a number of times for one customer.
 *
 * @param quantity identical puzzles, 1 or more
 * @param finished size of one puzzle
 * @param pieces of one puzzle
 * @param boardCost what the wood under one puzzle has cost (its share of the sheet or offcut by area)
 * @param stickerArea printed area of one puzzle, overhang included; laminate and masking cover the same
 * @param cutMinutes the laser's time for one puzzle, all passes
 * @param work what each stage takes of hands and how often it fails, in the order of the bench
 * @param shippingCharge net, said to the customer beside the price; zero when collected or included
 * @param postage what sending really costs the workshop
 * @param rush whether it is done out of turn
 * @param discount on the price, 0 to below 100 %
 * @param vat which tax rates its lines carry
 */
public record PriceQuestion(
        int quantity,
        Size finished,
        int pieces,
        Money boardCost,
        Area stickerArea,
        Minutes cutMinutes,
        List<StageWork> work,
        Money shippingCharge,
        Money postage,
        boolean rush,
        Percent discount,
        VatRates vat)
        implements Confidential<PriceQuestion> {

    public PriceQuestion {
        if (quantity < 1 || pieces < 1) {
            throw new IllegalArgumentException("At least one puzzle of at least one piece");
        }
        if (discount.isNegative() || discount.compareTo(Percent.of(100)) >= 0) {
            throw new IllegalArgumentException("A discount is from 0 to below 100 %, not " + discount.hundredths());
        }
        work = List.copyOf(work);
        // Prices kept before lines had rates of their own.
        vat = vat == null ? VatRates.STANDARD : vat;
    }

    /** What is said to the customer stays; costs and discount go. */
    @Override
    public PriceQuestion withoutMoney() {
        Money nothing = Money.zero(boardCost.currency());
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                nothing,
                stickerArea,
                cutMinutes,
                work,
                shippingCharge,
                nothing,
                rush,
                Percent.ZERO,
                vat);
    }

    public PriceQuestion withQuantity(int other) {
        return new PriceQuestion(
                other,
                finished,
                pieces,
                boardCost,
                stickerArea,
                cutMinutes,
                work,
                shippingCharge,
                postage,
                rush,
                discount,
                vat);
    }

    public PriceQuestion withDiscount(Percent other) {
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                boardCost,
                stickerArea,
                cutMinutes,
                work,
                shippingCharge,
                postage,
                rush,
                other,
                vat);
    }

    public PriceQuestion withRush(boolean other) {
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                boardCost,
                stickerArea,
                cutMinutes,
                work,
                shippingCharge,
                postage,
                other,
                discount,
                vat);
    }

    public PriceQuestion withCutMinutes(Minutes other) {
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                boardCost,
                stickerArea,
                other,
                work,
                shippingCharge,
                postage,
                rush,
                discount,
                vat);
    }

    public PriceQuestion withVat(VatRates other) {
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                boardCost,
                stickerArea,
                cutMinutes,
                work,
                shippingCharge,
                postage,
                rush,
                discount,
                other);
    }

    /** The same with another share of rejects in one stage. */
    public PriceQuestion withRejects(Stage stage, Percent rejects) {
        List<StageWork> changed = work.stream()
                .map(w -> w.stage() == stage ? new StageWork(stage, w.setUp(), w.perPuzzle(), rejects) : w)
                .toList();
        return new PriceQuestion(
                quantity,
                finished,
                pieces,
                boardCost,
                stickerArea,
                cutMinutes,
                changed,
                shippingCharge,
                postage,
                rush,
                discount,
                vat);
    }
}
