package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.delivery.HandOvers;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.Broadcaster;

/** The day's hand-overs on one page, made for one thumb: what is packed, for whom, which way, what is still to be paid. */
@Route("hand-overs")
@Menu(title = "delivery.title", order = 35)
@PermitAll
@StyleSheet("context://delivery.css")
public class HandOversView extends Div implements HasDynamicTitle {

    private final transient HandOvers handOvers;
    private final transient Parcels parcels;
    private final transient HandOverParts parts;
    private final transient Orders orders;
    private final transient Broadcaster broadcaster;
    private transient Broadcaster.Listening live;
    private final TextField scan = new TextField();
    private final LastHandOvers undo;
    private final Div lists = new Div();

    public HandOversView(
            HandOvers handOvers,
            Parcels parcels,
            HandOverParts parts,
            Bench bench,
            Orders orders,
            Broadcaster broadcaster) {
        this.handOvers = handOvers;
        this.parcels = parcels;
        this.parts = parts;
        this.orders = orders;
        this.broadcaster = broadcaster;
        addClassNames("pw-page", "delivery-page");
        scan.setPlaceholder(getTranslation("delivery.scan"));
        scan.setAriaLabel(getTranslation("delivery.scan.label"));
        scan.setClearButtonVisible(true);
        scan.addKeyDownListener(Key.ENTER, e -> find());
        scan.addClassName("delivery-scan");
        undo = new LastHandOvers(bench, orders, parts, this::show);
        lists.addClassName("delivery-lists");
        PageHead head = new PageHead(getTranslation("delivery.title"), scan);
        add(head, undo, lists);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("delivery.title");
    }

    @Override
    protected void onAttach(AttachEvent event) {
        show();
        live = UiPush.refresh(this, broadcaster, HandOvers::restsOn, this::show);
    }

    private void show() {
        if (live != null) {
            live.seen();
        }
        HandOvers.Day day = handOvers.now();
        undo.show();
        lists.removeAll();
        if (day.toSend().isEmpty()
                && day.toCollect().isEmpty()
                && day.onTheWay().isEmpty()) {
            EmptyState empty = new EmptyState(getTranslation("delivery.empty"), getTranslation("delivery.empty.next"));
            lists.add(empty);
            return;
        }
        list("delivery.to-send", day.toSend());
        list("delivery.to-collect", day.toCollect());
        list("delivery.on-the-way", day.onTheWay());
    }

    private void list(String key, List<Entry> entries) {
        if (entries.isEmpty()) {
            return;
        }
        Span number = new Span(Integer.toString(entries.size()));
        number.addClassName("pw-soft");
        Div list = new Div(new H2(new Span(getTranslation(key) + " "), number));
        list.addClassName("delivery-list");
        entries.forEach(entry -> list.add(new HandOverCard(entry, parts, this::show)));
        lists.add(list);
    }

    /** A code on a box holds the order's number, one on a parcel the carrier's. */
    private void find() {
        String code = scan.getValue().strip();
        Optional<OrderId> wanted = orders.findByNumber(code)
                .map(Order::id)
                .or(() -> parcels.byTracking(code).stream()
                        .flatMap(parcel -> parcel.orderIds().stream())
                        .findFirst());
        Optional<Component> card = lists.getChildren()
                .flatMap(Component::getChildren)
                .filter(HandOverCard.class::isInstance)
                .filter(one -> wanted.filter(((HandOverCard) one)::holds).isPresent())
                .findFirst();
        if (card.isPresent()) {
            card.get().scrollIntoView();
            ((HandOverCard) card.get()).mark();
            scan.clear();
        } else {
            Feedback.refusal(getTranslation("delivery.scan.none", code));
        }
    }
}
