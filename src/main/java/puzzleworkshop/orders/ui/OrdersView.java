package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.tabs.Tab;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.virtuallist.VirtualList;
import com.vaadin.flow.data.provider.CallbackDataProvider;
import com.vaadin.flow.data.provider.DataProvider;
import com.vaadin.flow.data.renderer.ComponentRenderer;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.TabRow;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;

/** All orders, newest first, each with its picture; found by number or customer, filtered by where they stand. */
@Route("orders")
@Menu(title = "orders.title", order = 20)
@PermitAll
@StyleSheet("context://orders.css")
public class OrdersView extends Div implements HasDynamicTitle {

    private final transient Orders orders;
    private final transient Punctuality punctuality;
    private final transient Formatter figures;
    private final TextField search = new TextField();
    private final Map<Tab, Set<OrderState>> tabs = new LinkedHashMap<>();
    private final TabRow states = new TabRow();
    private final VirtualList<Order> list = new VirtualList<>();
    private final Div empty = new Div();
    private final CallbackDataProvider<Order, Void> found;

    public OrdersView(Orders orders, Punctuality punctuality, Formatter figures) {
        this.punctuality = punctuality;
        this.orders = orders;
        this.figures = figures;
        addClassNames("pw-page", "orders-list");
        found = DataProvider.fromCallbacks(
                query -> orders.list(filter(), query.getOffset(), query.getLimit()).stream(),
                query -> orders.count(filter()));
        list.setDataProvider(found);
        list.setRenderer(new ComponentRenderer<>(this::row));
        empty.addClassName("pw-empty");
        add(head(), filters(), list, empty);
        refresh();
    }

    private Component head() {
        Anchor fresh = new Anchor("orders/new", getTranslation("orders.new"));
        fresh.addClassNames("orders-new", "pw-push");
        Div head = new Div(new H1(getTranslation("orders.title")), fresh);
        head.addClassName("pw-page-head");
        return head;
    }

    private Component filters() {
        search.setPlaceholder(getTranslation("orders.search"));
        search.setAriaLabel(getTranslation("orders.search"));
        search.setClearButtonVisible(true);
        search.setValueChangeMode(ValueChangeMode.LAZY);
        search.addValueChangeListener(event -> refresh());
        tab("orders.tab.open", Set.of(OrderState.CONFIRMED));
        tab("orders.tab.quotes", Set.of(OrderState.QUOTE));
        tab("orders.tab.to-pay", Set.of(OrderState.HANDED_OVER));
        tab("orders.tab.all", Set.of());
        states.addSelectedChangeListener(event -> refresh());
        Div filters = new Div(states, search);
        filters.addClassName("orders-filters");
        return filters;
    }

    private void tab(String key, Set<OrderState> which) {
        Tab tab = new Tab(getTranslation(key));
        tabs.put(tab, which);
        states.add(tab);
    }

    private OrderFilter filter() {
        return new OrderFilter(
                search.getValue(), tabs.getOrDefault(states.getSelectedTab(), Set.of()), Optional.empty());
    }

    private void refresh() {
        found.refreshAll();
        boolean none = orders.count(filter()) == 0;
        list.setVisible(!none);
        empty.setVisible(none);
        empty.removeAll();
        if (none && search.getValue().isBlank()) {
            empty.add(
                    new H2(getTranslation("orders.empty")),
                    new Paragraph(getTranslation("orders.empty.next")),
                    new Anchor("orders/new", getTranslation("orders.new")));
        } else if (none) {
            Button all = new Button(getTranslation("orders.search.clear"), event -> search.clear());
            all.addThemeVariants(ButtonVariant.TERTIARY);
            empty.add(new H2(getTranslation("orders.search.none", search.getValue())), all);
        }
    }

    private Component row(Order order) {
        Span who = new Span(order.customer().name());
        who.addClassName("orders-row-who");
        Span what = new Span(figures.text(
                "orders.what", order.puzzle().finished(), order.puzzle().pieces(), order.quantity()));
        what.addClassName("pw-small");
        Div words = new Div(new Span(order.number()), who, what);
        words.addClassName("orders-row-words");
        Div progress = new Div(new StateVerdict(order, punctuality, figures), new StageStrip(order));
        progress.addClassName("orders-row-progress");
        Div due = new Div(new Span(order.promised().map(figures::day).orElse("–")));
        due.addClassName("orders-row-due");
        Span price = new Span(figures.money(order.price().gross()));
        price.addClassNames("pw-number", "orders-row-price");
        Anchor row = new Anchor(
                "orders/" + order.number(),
                new OrderPreview(order, OrderPreview.Width.SMALL),
                words,
                progress,
                due,
                price);
        row.addClassName("orders-row");
        return row;
    }

    @Override
    public String getPageTitle() {
        return getTranslation("orders.title");
    }
}
