package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.pricing.KeptPrice;

/** Everything of an order that is agreed with the customer; what the New order page hands over to be kept. */
public record OrderDraft(
        Customer customer,
        int quantity,
        Puzzle puzzle,
        BoardKind board,
        Optional<FramedPicture> picture,
        String softAccepted,
        DeliveryTerms delivery,
        Minutes laser,
        KeptPrice price,
        LocalDate validUntil,
        String note) {

    /** The same at another price. */
    public OrderDraft priced(KeptPrice other) {
        return new OrderDraft(
                customer, quantity, puzzle, board, picture, softAccepted, delivery, laser, other, validUntil, note);
    }
}
