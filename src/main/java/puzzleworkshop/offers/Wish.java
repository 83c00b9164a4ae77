package puzzleworkshop.offers;

import java.time.LocalDate;
import java.util.Currency;
import java.util.Optional;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.sheets.SheetId;

/**
 * What a customer asks for, as far as it is known; the offer desk works out the rest.
 *
 * @param sheet the sheet the seller wants to use; absent: the one that loses least
 * @param softAccepted the customer's word that a soft picture will do
 */
public record Wish(
        PuzzleWish puzzle,
        int quantity,
        BoardKind board,
        Optional<SheetId> sheet,
        Optional<FramedPicture> picture,
        String softAccepted,
        Day day,
        Terms terms)
        implements Confidential<Wish> {

    /**
     * When and how it is to reach the customer.
     *
     * @param way by which it is delivered; absent: the usual one
     */
    public record Day(Optional<LocalDate> wantedBy, boolean rush, Optional<Long> way) {

        /** No day wished for, the usual way. */
        public static final Day ANY = new Day(Optional.empty(), false, Optional.empty());
    }

    /**
     * What the seller says about the price.
     *
     * @param shipping charged to the customer, net
     * @param vat which tax rates its lines carry
     */
    public record Terms(Percent discount, Money shipping, VatRates vat) {

        /** No discount, nothing for shipping, the usual rates. */
        public static Terms usual(Currency currency) {
            return new Terms(Percent.ZERO, Money.zero(currency), VatRates.STANDARD);
        }
    }

    /** It is what somebody typed: whoever typed it knows it. */
    @Override
    public Wish withoutMoney() {
        return this;
    }
}
