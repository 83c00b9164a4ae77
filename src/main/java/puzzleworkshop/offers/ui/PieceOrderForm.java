package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.offers.PieceOrders.PieceOffer;
import puzzleworkshop.offers.PieceOrders.Wanted;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.pattern.judged.LostPiece;

/** A lost or broken piece as an order of its own: its price, board and day first, then the quote or the order. */
public class PieceOrderForm extends Div {

    private final transient PieceOrders pieces;
    private final transient Confirmations confirmations;
    private final transient Formatter figures;
    private final transient Supplier<Optional<LostPiece.Today>> today;
    private final transient OrderId of;
    private final int piece;
    private final String who;
    private final Checkbox free = new Checkbox();
    private final Button ask;
    private final ProgressBar busy = new WorkingBar();
    private final Div answer = new Div();
    private final transient BookingKey key = BookingKey.fresh();
    private final transient LatestAnswer<PieceOffer> latest = new LatestAnswer<>(Duration.ZERO);

    /**
     * @param forNothing whether it was decided already that the customer pays nothing; can be changed here
     * @param today kerf and stretch as they stand on the screen when it is asked; empty while they are impossible
     */
    public PieceOrderForm(
            PieceOrders pieces,
            Confirmations confirmations,
            Formatter figures,
            String who,
            OrderId of,
            int piece,
            boolean forNothing,
            Supplier<Optional<LostPiece.Today>> today) {
        this.pieces = pieces;
        this.confirmations = confirmations;
        this.figures = figures;
        this.who = who;
        this.of = of;
        this.piece = piece;
        this.today = today;
        addClassName("pw-stack");
        free.setLabel(figures.text("offers.piece.free"));
        free.setValue(forNothing);
        free.addValueChangeListener(event -> {
            latest.forget();
            answer.removeAll();
            done();
        });
        ask = new Button(figures.text("offers.piece.ask"), event -> ask());
        busy.setIndeterminate(true);
        busy.setVisible(false);
        answer.addClassName("pw-stack");
        answer.getElement().setAttribute("aria-live", "polite");
        add(free, ask, busy, answer);
    }

    /** What stands on the screen now; empty while it is impossible. */
    private Optional<Wanted> wanted() {
        return today.get().map(now -> new Wanted(of, piece, now, free.getValue()));
    }

    private void ask() {
        answer.removeAll();
        wanted().ifPresent(wanted -> {
            busy.setVisible(true);
            ask.setEnabled(false);
            latest.ask(outdated -> pieces.offer(wanted), offer -> show(wanted, offer), this::failed);
        });
    }

    private void failed(RuntimeException wrong) {
        done();
        if (wrong instanceof Refused refused) {
            Note no = new Note(Note.Kind.BAD, figures.say(refused));
            answer.add(no);
        } else {
            throw wrong; // a fault of the screen: logged once, and said with its mark
        }
    }

    private void done() {
        busy.setVisible(false);
        ask.setEnabled(true);
    }

    private void show(Wanted wanted, PieceOffer offer) {
        done();
        answer.removeAll();
        answer.add(new Paragraph(figures.text(
                "offers.piece.offer",
                offer.price().answer().toPay(),
                offer.boards().blocks().getFirst().size(),
                board(offer),
                offer.laser())));
        answer.add(new Paragraph(offer.ready()
                .map(day -> figures.text("offers.piece.ready", day))
                .orElseGet(() -> figures.text("offers.problem.nobody-works"))));
        BookButton quote = new BookButton(figures.text("offers.piece.quote"), () -> keep(wanted, offer, false));
        BookButton order = new BookButton(figures.text("offers.piece.order"), () -> keep(wanted, offer, true));
        order.addThemeVariants(ButtonVariant.PRIMARY);
        order.setVisible(offer.ready().isPresent());
        Div buttons = new Div(order, quote);
        buttons.addClassName("pw-row");
        answer.add(buttons);
    }

    private String board(PieceOffer offer) {
        return offer.boards()
                .blocks()
                .getFirst()
                .sheet()
                .map(scrap -> figures.text(
                        "offers.piece.scrap",
                        scrap.sheet().id().value(),
                        scrap.sheet().facts().place()))
                .orElseGet(() -> figures.text("offers.piece.new-sheet"));
    }

    /** Keeps what was answered, as long as it is what stands on the screen; else asks anew. */
    private boolean keep(Wanted wanted, PieceOffer offer, boolean alsoConfirm) {
        if (!wanted().equals(Optional.of(wanted))) {
            ask();
            return false;
        }
        Optional<LocalDate> day = offer.ready();
        try {
            Order made = pieces.quote(key, wanted, who);
            if (alsoConfirm && day.isPresent()) {
                confirmations.confirm(made.id(), who);
            }
            UI.getCurrent().navigate(OrderView.class, made.number());
            return true;
        } catch (Refused refused) {
            Feedback.tell(figures.say(refused), true);
            return false;
        }
    }
}
