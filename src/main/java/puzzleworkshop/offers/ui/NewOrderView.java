package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.BeforeLeaveEvent;
import com.vaadin.flow.router.BeforeLeaveObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.OptionalParameter;
import com.vaadin.flow.router.QueryParameters;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.fields.Unsaved;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PromiseCheck;
import puzzleworkshop.offers.PromiseCheck.TooEarly;
import puzzleworkshop.offers.Quotes;
import puzzleworkshop.offers.Remembered;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrderView;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/**
 * A new order on one page, worked out anew with every keystroke: sharp enough? small parts? which sheet? what price? which
 * day? The same page changes a quote. The working out runs beside the screen; only the answer to the latest question is
 * shown.
 */
@Route("orders/new")
@PermitAll
@StyleSheet("context://orders.css")
public class NewOrderView extends Div implements HasUrlParameter<String>, HasDynamicTitle, BeforeLeaveObserver {

    private static final Duration PAUSE = Duration.ofMillis(120);
    private static final Logger LOG = LoggerFactory.getLogger(NewOrderView.class);

    /** Of the one quote that this page may keep. */
    private final transient BookingKey key = BookingKey.fresh();

    private final transient OfferDesk desk;
    private final transient Orders orders;
    private final transient Confirmations confirmations;
    private final transient Quotes quotes;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Workshop workshop;
    private final transient LatestAnswer<Offer> answers = new LatestAnswer<>(PAUSE);
    private transient Remembered remembered = new Remembered();

    private final Unsaved unsaved = new Unsaved(this);
    private final H1 title = new H1();
    private final transient OfferForm form;
    private final DraftNotice draft;
    private final Button quote;
    private final Button confirm;
    private transient Offer offer;
    private transient Order changed;

    /** Pressed while the answer was still being worked out; true when it is to be confirmed as well. */
    private transient Optional<Boolean> waiting = Optional.empty();
    /** Whether the address says with what the page begins. */
    private boolean begun;

    public NewOrderView(
            OfferDesk desk,
            Orders orders,
            Confirmations confirmations,
            Quotes quotes,
            Formatter figures,
            SignedIn signedIn,
            Workshop workshop,
            NewOrderParts parts) {
        this.desk = desk;
        this.orders = orders;
        this.confirmations = confirmations;
        this.quotes = quotes;
        this.figures = figures;
        this.signedIn = signedIn;
        this.workshop = workshop;
        addClassNames("pw-page", "neworder");

        form = new OfferForm(parts, this::pictureChanged, this::workOut);
        draft = form.draftNotice(parts);
        quote = new Button(getTranslation("offers.new.save-quote"), event -> keep(false));
        quote.setId("save-quote");
        confirm = new Button(getTranslation("offers.new.confirm"), event -> keep(true));
        confirm.setId("confirm-order");
        confirm.addThemeVariants(ButtonVariant.PRIMARY);

        Div head = new Div(title);
        head.addClassName("pw-page-head");
        add(head, draft, form.wishes(), form.columns(), form.foot(quote, confirm));
    }

    /** Without a number a new order; with one, that quote is changed. */
    @Override
    public void setParameter(BeforeEvent event, @OptionalParameter String number) {
        title.setText(getTranslation("orders.new"));
        QueryParameters asked = event.getLocation().getQueryParameters();
        asked.getSingleParameter("again").flatMap(orders::findByNumber).ifPresent(this::beginLike);
        asked.getSingleParameter("customer").ifPresent(form.who()::begin);
        begun = !asked.getParameters().isEmpty();
        if (number != null && !number.isBlank()) {
            changed = orders.findByNumber(number)
                    .orElseThrow(() -> new NotFoundException(getTranslation("orders.unknown")));
            remembered = new Remembered(changed.id());
            title.setText(getTranslation("offers.new.change", changed.number()));
            quote.setText(getTranslation("offers.new.save-change"));
            confirm.setVisible(changed.state() == OrderState.QUOTE);
            form.take(changed, orders.keptPrice(changed.id()).question());
        } else {
            PatternSketches.taken().ifPresent(form.puzzle()::take);
        }
    }

    private void pictureChanged() {
        unsaved.touch();
        draft.touch();
        workOut();
    }

    private void beginLike(Order past) {
        if (!form.beginLike(past)) {
            Feedback.tell(getTranslation("offers.again.no-original", past.number()), true);
        }
    }

    @Override
    protected void onAttach(AttachEvent event) {
        unsaved.watch();
        if (changed == null) {
            draft.watch(this, !begun, this::workOut);
        }
        workOut();
    }

    @Override
    public void beforeLeave(BeforeLeaveEvent event) {
        unsaved.beforeLeave(event);
    }

    private void workOut() {
        offer = null;
        answers.forget();
        Optional<Wish> wish = form.read();
        if (wish.isEmpty()) {
            clear();
            return;
        }
        addClassName("neworder-working");
        Remembered page = remembered;
        answers.ask(outdated -> desk.workOut(wish.get(), page, outdated), this::show, fault -> {
            LOG.error("An offer could not be worked out for {}", wish.get(), fault);
            clear();
            Feedback.tell(getTranslation("offers.new.fault"), true);
        });
    }

    private void show(Offer answer) {
        offer = answer;
        removeClassName("neworder-working");
        form.show(answer);
        waiting.ifPresent(alsoConfirm -> {
            waits(Optional.empty());
            keep(alsoConfirm);
        });
    }

    /** Nothing older than the fields stays on the page: no price, no day, no board. */
    private void clear() {
        removeClassName("neworder-working");
        waits(Optional.empty());
        form.clearAnswer();
    }

    private void waits(Optional<Boolean> alsoConfirm) {
        waiting = alsoConfirm;
        boolean free = alsoConfirm.isEmpty();
        quote.setEnabled(free);
        confirm.setEnabled(free);
    }

    /** Keeps what stands on the form. While it is still being worked out, its answer is waited for. */
    private void keep(boolean alsoConfirm) {
        boolean named = form.who().check();
        boolean days = form.who().dayFits() & form.ready().dayFits();
        Optional<Wish> wish = form.read();
        if (wish.isPresent()
                && named
                && days
                && !wish.equals(Optional.ofNullable(offer).map(Offer::wish))) {
            waits(Optional.of(alsoConfirm));
            workOut();
            return;
        }
        if (wish.isEmpty() || !offer.canBeQuoted() || !named || !days) {
            refuse(getTranslation(
                    !named ? "orders.customer.no-name" : days ? "offers.new.incomplete" : "offers.new.day-unfit"));
            return;
        }
        Optional<TooEarly> harm = changed == null
                ? Optional.empty()
                : PromiseCheck.ofChange(changed, asItStands(), form.who().usualWay(), offer.ready());
        harm.ifPresentOrElse(
                found -> new TooEarlyQuestion(found, getTranslation("offers.change.leave"), figures, day -> {
                            form.ready().promise(day);
                            write(alsoConfirm);
                        })
                        .open(),
                () -> write(alsoConfirm));
    }

    private void write(boolean alsoConfirm) {
        Order kept;
        try {
            OrderDraft order = asItStands();
            kept = changed == null
                    ? quotes.quote(key, order, offer, remembered, signedIn.name())
                    : quotes.change(changed.id(), changed.version(), order, offer, remembered, signedIn.name());
        } catch (Refused refused) {
            refuse(figures.say(refused));
            return;
        }
        unsaved.kept();
        draft.saved();
        if (alsoConfirm) {
            Feedback.unlessRefused(
                    figures, "orders.action.confirmed", () -> confirmations.confirm(kept.id(), signedIn.name()));
        } else {
            Feedback.tell(getTranslation("offers.new.kept", kept.number()), false);
        }
        UI.getCurrent().navigate(OrderView.class, kept.number());
    }

    /** Says why nothing was kept, and brings the first complaint of the page to the eye. */
    private void refuse(String sentence) {
        Feedback.tell(sentence, true);
        getElement().executeJs("""
            setTimeout(() => {
              const first = [...this.querySelectorAll("[invalid], .pw-note[data-kind='bad']")].find(e => e.offsetParent);
              if (first && first.focus) first.focus();
              if (first) first.scrollIntoView({block: 'center'});
            }, 100)\
            """);
    }

    private OrderDraft asItStands() {
        return form.draft(
                offer, workshop.today().plusDays(workshop.tradeNumbers().quoteValidDays()));
    }

    @Override
    public String getPageTitle() {
        return title.getText();
    }
}
