package puzzleworkshop.offers;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.sheets.SheetId;

/**
 * What a customer asks for, as far as it is known; the offer desk works out the rest.
 *
 * @param pieces how many are wanted; the nearest number with well-shaped pieces is made
 * @param seed chooses the variation of the cut lines
 * @param sheet the sheet the seller wants to use; absent: the one that loses least
 * @param way by which it is delivered; absent: the usual one
 * @param shipping charged to the customer, net
 * @param vat which tax rates its lines carry
 * @param softAccepted the customer's word that a soft picture will do
 * @param shapes personal pieces among the others; usually none
 * @param design which way of drawing; an order that is changed keeps the one it was made with
 * @param layout in what its pieces differ from a plain grid
 */
public record Wish(
        Optional<FramedPicture> picture,
        Size finished,
        int pieces,
        CutStyle style,
        PuzzleEdge outline,
        long seed,
        IntendedAge age,
        boolean tray,
        int quantity,
        BoardKind board,
        Optional<SheetId> sheet,
        Optional<LocalDate> wantedBy,
        boolean rush,
        Optional<Long> way,
        Percent discount,
        Money shipping,
        VatRates vat,
        String softAccepted,
        List<PersonalShape> shapes,
        int design,
        PieceLayout layout)
        implements Confidential<Wish> {

    public Wish {
        shapes = List.copyOf(shapes);
    }

    /** It is what somebody typed: whoever typed it knows it. */
    @Override
    public Wish withoutMoney() {
        return this;
    }

    /** A plain grid, by the newest way of drawing. */
    public Wish(
            Optional<FramedPicture> picture,
            Size finished,
            int pieces,
            CutStyle style,
            PuzzleEdge outline,
            long seed,
            IntendedAge age,
            boolean tray,
            int quantity,
            BoardKind board,
            Optional<SheetId> sheet,
            Optional<LocalDate> wantedBy,
            boolean rush,
            Optional<Long> way,
            Percent discount,
            Money shipping,
            VatRates vat,
            String softAccepted,
            List<PersonalShape> shapes) {
        this(
                picture,
                finished,
                pieces,
                style,
                outline,
                seed,
                age,
                tray,
                quantity,
                board,
                sheet,
                wantedBy,
                rush,
                way,
                discount,
                shipping,
                vat,
                softAccepted,
                shapes,
                PatternSpec.DESIGN,
                PieceLayout.PLAIN);
    }

    /** Without personal pieces. */
    public Wish(
            Optional<FramedPicture> picture,
            Size finished,
            int pieces,
            CutStyle style,
            PuzzleEdge outline,
            long seed,
            IntendedAge age,
            boolean tray,
            int quantity,
            BoardKind board,
            Optional<SheetId> sheet,
            Optional<LocalDate> wantedBy,
            boolean rush,
            Optional<Long> way,
            Percent discount,
            Money shipping,
            VatRates vat,
            String softAccepted) {
        this(
                picture,
                finished,
                pieces,
                style,
                outline,
                seed,
                age,
                tray,
                quantity,
                board,
                sheet,
                wantedBy,
                rush,
                way,
                discount,
                shipping,
                vat,
                softAccepted,
                List.of());
    }
}
