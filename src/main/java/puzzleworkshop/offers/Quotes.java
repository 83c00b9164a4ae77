package puzzleworkshop.offers;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.workshop.SignedIn;

/**
 * Keeps what the New order page has worked out. A maker's page has seen the price without costs and discount; what is kept
 * is the whole of it, as the offer desk worked it out.
 */
@Service
public class Quotes {

    private final Confirmations confirmations;
    private final SignedIn signedIn;

    Quotes(Confirmations confirmations, SignedIn signedIn) {
        this.confirmations = confirmations;
        this.signedIn = signedIn;
    }

    /**
     * Keeps a new quote together with the boards chosen for it.
     *
     * @param draft what was agreed, by the offer
     * @param page on which the offer was worked out
     */
    @Books
    @Transactional
    public Order quote(BookingKey key, OrderDraft draft, Offer offer, Remembered page, String who) {
        return confirmations.quote(
                key, whole(draft, offer, page), offer.boards().orElseThrow(), who);
    }

    /** Changes what was agreed, and its boards. */
    @Transactional
    public Order change(OrderId id, long version, OrderDraft draft, Offer offer, Remembered page, String who) {
        return confirmations.change(
                id, version, whole(draft, offer, page), offer.boards().orElseThrow(), who);
    }

    private OrderDraft whole(OrderDraft draft, Offer offer, Remembered page) {
        if (!signedIn.isMaker()) {
            return draft;
        }
        KeptPrice price = page.priceOf(offer.wish()).orElseThrow(() -> new Refused("offers.new.stale"));
        return draft.priced(price);
    }
}
