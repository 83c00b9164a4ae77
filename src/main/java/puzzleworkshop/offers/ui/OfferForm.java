package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pricing.cost.PriceQuestion;

/** The panes of New order together: one wish is read from them, one answer is shown on them. */
final class OfferForm {

    private final PicturePane picture;
    private final WhoAndWhen who;
    private final PuzzleForm puzzle;
    private final CustomerWishes wishes;
    private final BoardPane board;
    private final PricePane price;
    private final ReadyPane ready;
    private Optional<Order> changed = Optional.empty();

    /** @param edited told after anything but the picture was changed by hand */
    OfferForm(NewOrderParts parts, Runnable pictureChanged, Runnable edited) {
        picture = parts.picture(pictureChanged);
        who = parts.whoAndWhen(edited);
        puzzle = parts.puzzle(edited);
        puzzle.followEdges((place, finished) -> parts.edgeOf(place, picture.framed(finished), finished));
        picture.onTap(puzzle::tapped);
        wishes = parts.wishes();
        board = parts.board(edited);
        price = parts.price(edited);
        ready = parts.ready(edited);
    }

    DraftNotice draftNotice(NewOrderParts parts) {
        return parts.draft(who, picture);
    }

    WhoAndWhen who() {
        return who;
    }

    PuzzleForm puzzle() {
        return puzzle;
    }

    ReadyPane ready() {
        return ready;
    }

    /** What a customer asked for, above the form. */
    CustomerWishes wishes() {
        return wishes;
    }

    Div columns() {
        Div left = new Div(picture);
        left.addClassName("neworder-left");
        Div right = new Div(who, puzzle, board, price, ready);
        right.addClassName("neworder-right");
        Div columns = new Div(left, right);
        columns.addClassName("neworder-columns");
        return columns;
    }

    /** Price and day, with the buttons that keep them. */
    Div foot(Button... keep) {
        Div buttons = new Div(keep);
        buttons.addClassName("neworder-buttons");
        Div foot = new Div(price.total(), ready.day(), buttons);
        foot.addClassName("neworder-foot");
        // Price and day change while one types elsewhere; who does not see them hears them.
        foot.getElement().setAttribute("aria-live", "polite");
        return foot;
    }

    /** Fills the form with an order that is to be changed. */
    void take(Order order, PriceQuestion kept) {
        changed = Optional.of(order);
        picture.take(order);
        who.take(order);
        puzzle.take(order, picture::laid);
        board.take(order);
        price.take(kept);
        ready.take(order);
        wishes.show(order, picture::framed, puzzle);
    }

    /**
     * The same puzzle for the same customer once more: at today's price, for a day and a board of its own.
     *
     * @return whether its picture is still kept
     */
    boolean beginLike(Order past) {
        who.begin(String.valueOf(past.customer().id()));
        boolean pictured = picture.begin(past);
        puzzle.take(past, picture::laid);
        return pictured;
    }

    /** What stands on the form; empty while a field of it cannot be read. */
    Optional<Wish> read() {
        boolean priced = price.check();
        puzzle.followPicture(picture::laid);
        int design = changed.map(order -> order.puzzle().pattern().design()).orElse(PatternSpec.DESIGN);
        return puzzle.read()
                .filter(form -> priced)
                .map(form -> new Wish(
                        form.puzzle().drawnBy(design),
                        form.quantity(),
                        form.board(),
                        board.chosen(),
                        picture.framed(form.puzzle().finished()),
                        picture.softAccepted(),
                        new Wish.Day(who.wantedBy(), ready.rush(), who.way()),
                        new Wish.Terms(price.discount(), price.shipping(), price.vat())));
    }

    void show(Offer answer) {
        picture.show(answer);
        who.show(answer);
        puzzle.show(answer);
        board.show(answer);
        price.show(answer);
        ready.show(answer);
    }

    /** Nothing older than the fields stays on the page: no price, no day, no board. */
    void clearAnswer() {
        puzzle.clearAnswer();
        board.clearAnswer();
        price.clearAnswer();
        ready.clearAnswer();
    }

    /**
     * The order as it is to be kept, from an answer to what stands on the form.
     *
     * @param validUntil the last day on which the offer holds
     */
    OrderDraft draft(Offer answer, LocalDate validUntil) {
        Wish wish = answer.wish();
        return new OrderDraft(
                who.customer(),
                wish.quantity(),
                new Puzzle(
                        answer.pattern().orElseThrow().spec(),
                        wish.puzzle().age(),
                        wish.puzzle().tray(),
                        answer.pattern().orElseThrow().pieces().size()),
                wish.board(),
                wish.picture(),
                wish.softAccepted(),
                new DeliveryTerms(
                        wish.day().wantedBy(),
                        ready.promised(),
                        wish.day().rush(),
                        wish.day().way()),
                answer.laserForAll(),
                answer.price().orElseThrow(),
                validUntil,
                who.note());
    }
}
