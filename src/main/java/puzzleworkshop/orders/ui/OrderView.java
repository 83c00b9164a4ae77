package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.FactList;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.runtime.Broadcaster;
import puzzleworkshop.workshop.SignedIn;

/** One order on one page: its picture with the cut lines, what is made, and every room's part in it. */
@Route("orders")
@PermitAll
@StyleSheet("context://orders.css")
public class OrderView extends Div implements HasUrlParameter<String>, HasDynamicTitle {

    private final transient Orders orders;
    private final transient Broadcaster broadcaster;
    private transient Broadcaster.Listening live;
    private final transient Punctuality punctuality;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient List<OrderPanel> panels;
    private transient Order order;

    public OrderView(
            Orders orders,
            Punctuality punctuality,
            Broadcaster broadcaster,
            Formatter figures,
            SignedIn signedIn,
            List<OrderPanel> panels) {
        this.orders = orders;
        this.punctuality = punctuality;
        this.broadcaster = broadcaster;
        this.figures = figures;
        this.signedIn = signedIn;
        this.panels = panels.stream()
                .sorted(Comparator.comparingInt(OrderPanel::place))
                .toList();
        addClassNames("pw-page", "orders-page");
    }

    @Override
    public void setParameter(BeforeEvent event, String number) {
        order = orders.findByNumber(number).orElseThrow(() -> new NotFoundException(getTranslation("orders.unknown")));
        show();
    }

    @Override
    protected void onAttach(AttachEvent event) {
        live = UiPush.refresh(
                this,
                broadcaster,
                change -> order != null && change.equals(new OrderChanged(order.id())),
                this::reload);
    }

    private void reload() {
        if (live != null) {
            live.seen();
        }
        order = orders.get(order.id());
        show();
    }

    private void show() {
        removeAll();
        Div side = new Div();
        side.addClassName("orders-page-panels");
        panels.stream()
                .filter(panel -> !panel.inHead())
                .forEach(panel -> panel.show(order, this::reload).ifPresent(side::add));
        Div picture = new Div(face(), facts(), history());
        picture.addClassName("orders-page-picture");
        Div columns = new Div(picture, side);
        columns.addClassName("orders-page-columns");
        add(head(), columns);
    }

    private Component head() {
        H1 title = new H1(order.number());
        Anchor who = new Anchor(
                "customers/" + order.customer().id(), order.customer().name());
        who.addClassName("orders-who");
        Div actions = new Div();
        actions.addClassNames("pw-push", "pw-row");
        panels.stream()
                .filter(OrderPanel::inHead)
                .forEach(panel -> panel.show(order, this::reload).ifPresent(actions::add));
        if (order.approval().isEmpty() && order.picture().isPresent() && isLive()) {
            actions.add(button(
                    "orders.action.approve",
                    null,
                    () -> Feedback.unlessRefused(
                            figures,
                            "orders.action.approved",
                            () -> orders.approve(
                                    order.id(),
                                    getTranslation("orders.at-the-counter", signedIn.name()),
                                    signedIn.name()))));
        }
        if (isLive()) {
            actions.add(button("orders.action.cancel", ButtonVariant.TERTIARY, this::askForReason));
        }
        Div head = new Div(title, who, new StateVerdict(order, punctuality, figures), actions);
        head.addClassName("pw-page-head");
        return head;
    }

    private boolean isLive() {
        return order.state() == OrderState.QUOTE || order.state() == OrderState.CONFIRMED;
    }

    private Button button(String key, ButtonVariant variant, Runnable action) {
        Button button = new Button(getTranslation(key), event -> action.run());
        if (variant != null) {
            button.addThemeVariants(variant);
        }
        return button;
    }

    private void askForReason() {
        TextArea reason = new TextArea(getTranslation("orders.cancel.reason"));
        reason.setWidthFull();
        SafeQuestion dialog = new SafeQuestion(
                getTranslation("orders.cancel.title", order.number()),
                getTranslation("orders.cancel.keep"),
                getTranslation("orders.action.cancel"));
        dialog.setText(reason);
        dialog.setConfirmButtonTheme("error primary");
        dialog.addConfirmListener(event -> {
            Feedback.unlessRefused(
                    figures,
                    "orders.action.cancelled",
                    () -> orders.cancel(order.id(), reason.getValue().strip(), signedIn.name()));
            reload();
        });
        dialog.open();
    }

    private Component face() {
        return new OrderPreview(order, OrderPreview.Width.LARGE, figures);
    }

    private Component facts() {
        FactList facts = new FactList();
        facts.fact(
                getTranslation("orders.fact.size"), figures.size(order.puzzle().finished()));
        facts.fact(
                getTranslation("orders.fact.pieces"),
                figures.text(
                        "orders.pieces",
                        order.puzzle().pieces(),
                        order.puzzle().pattern().grid().columns(),
                        order.puzzle().pattern().grid().rows()));
        facts.fact(getTranslation("orders.fact.quantity"), String.valueOf(order.quantity()));
        facts.fact(
                getTranslation("orders.fact.style"),
                getTranslation(
                        "orders.style." + order.puzzle().pattern().style().name()));
        facts.fact(
                getTranslation("orders.fact.edge"),
                getTranslation("orders.edge."
                        + order.puzzle().pattern().outline().kind().name()));
        order.puzzle()
                .pattern()
                .shapes()
                .forEach(shape -> facts.fact(getTranslation("orders.fact.shape"), shape.name()));
        PieceLayout layout = order.puzzle().pattern().layout();
        if (layout.uneven()) {
            facts.fact(getTranslation("orders.fact.layout"), getTranslation("orders.layout.uneven"));
        }
        if (!layout.keptWhole().isEmpty()) {
            facts.fact(
                    getTranslation("orders.fact.layout"),
                    figures.text("orders.layout.kept", layout.keptWhole().size()));
        }
        if (order.puzzle().tray()) {
            facts.fact(
                    getTranslation("orders.fact.tray"),
                    figures.size(Tray.of(order.puzzle().pattern()).outerSize()));
        }
        facts.fact(
                getTranslation("orders.fact.seed"),
                String.valueOf(order.puzzle().pattern().seed()));
        facts.fact(
                getTranslation("orders.fact.age"),
                getTranslation("orders.age." + order.puzzle().age().name()));
        facts.fact(
                getTranslation("orders.fact.promised"),
                order.promised().map(figures::day).orElse(getTranslation("orders.no-date")));
        order.wantedBy().ifPresent(day -> facts.fact(getTranslation("orders.fact.wanted"), figures.day(day)));
        facts.fact(
                getTranslation("orders.fact.price"), figures.money(order.price().gross()));
        if (!order.customer().contact().isBlank()) {
            facts.fact(getTranslation("orders.fact.contact"), order.customer().contact());
        }
        if (!order.softAccepted().isBlank()) {
            facts.fact(getTranslation("orders.fact.soft"), order.softAccepted());
        }
        if (!order.note().isBlank()) {
            facts.fact(getTranslation("orders.fact.note"), order.note());
        }
        PageSection section = new PageSection(getTranslation("orders.facts"), facts);
        return section;
    }

    private Component history() {
        List<Markup> lines = orders.history(order.id()).stream()
                .map(line -> Markup.of(
                        "li",
                        "",
                        Markup.span(figures.say(line.what())),
                        Markup.span("pw-small", figures.moment(line.at()) + " · " + line.who())))
                .toList();
        return new PageSection(getTranslation("orders.history"), new Still(Markup.of("ul", "orders-history", lines)));
    }

    @Override
    public String getPageTitle() {
        return order == null
                ? getTranslation("orders.title")
                : order.number() + " · " + order.customer().name();
    }
}
