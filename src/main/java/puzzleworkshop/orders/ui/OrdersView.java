package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.tabs.Tab;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.virtuallist.VirtualList;
import com.vaadin.flow.data.provider.CallbackDataProvider;
import com.vaadin.flow.data.provider.DataProvider;
import com.vaadin.flow.data.renderer.ComponentRenderer;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.function.SerializableFunction;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import jakarta.annotation.security.PermitAll;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.TabRow;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.SignedIn;

/** All orders, newest first, each with its picture; found by number or customer, filtered by where they stand. */
@Route("orders")
@Menu(title = "orders.title", order = 20)
@PermitAll
@StyleSheet("context://orders.css")
public class OrdersView extends Div implements HasDynamicTitle {

    private final transient Orders orders;
    private final transient OrdersTable table;
    private final transient SignedIn signedIn;
    private final transient Punctuality punctuality;
    private final transient Formatter figures;
    private final TextField search = new TextField();
    private final Select<OrderFilter.Due> due = new Select<>();
    private final Select<OrderFilter.Sequence> sequence = new Select<>();
    private final Map<Tab, Set<OrderState>> tabs = new LinkedHashMap<>();
    private final TabRow states = new TabRow();
    private final VirtualList<Order> list = new VirtualList<>();
    private final Div empty = new Div();
    private final CallbackDataProvider<Order, Void> found;
    /** How many the filter finds, counted when it changes. */
    private int total;

    public OrdersView(Orders orders, OrdersTable table, Punctuality punctuality, SignedIn signedIn, Formatter figures) {
        this.table = table;
        this.signedIn = signedIn;
        this.punctuality = punctuality;
        this.orders = orders;
        this.figures = figures;
        addClassNames("pw-page", "orders-list");
        found = DataProvider.fromCallbacks(
                query -> orders.list(filter(), query.getOffset(), query.getLimit()).stream(), query -> total);
        list.setDataProvider(found);
        list.setRenderer(new ComponentRenderer<>(this::row));
        list.getElement().setAttribute("data-on-paper", getTranslation("orders.on-paper"));
        empty.addClassName("pw-empty");
        add(head(), filters(), list, empty);
        refresh();
    }

    private Component head() {
        Anchor fresh = new Anchor("orders/new", getTranslation("orders.new"));
        fresh.addClassName("orders-new");
        Anchor csv = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] file = table.csv(filter(), signedIn.isOwner()).getBytes(StandardCharsets.UTF_8);
                    return new DownloadResponse(new ByteArrayInputStream(file), "orders.csv", "text/csv", file.length);
                }),
                getTranslation("orders.csv"));
        csv.getElement().setAttribute("download", true);
        csv.addClassName("orders-csv");
        Div ways = new Div(csv, fresh);
        ways.addClassNames("pw-push", "pw-row");
        PageHead head = new PageHead(getTranslation("orders.title"), ways);
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
        choice(due, OrderFilter.Due.values(), "orders.due", OrderFilter.Due::textKey);
        choice(sequence, OrderFilter.Sequence.values(), "orders.sequence", OrderFilter.Sequence::textKey);
        states.addSelectedChangeListener(event -> refresh());
        Div fields = new Div(due, sequence, search);
        fields.addClassName("orders-filter-fields");
        Div filters = new Div(states, fields);
        filters.addClassName("orders-filters");
        return filters;
    }

    private <T> void choice(Select<T> field, T[] values, String key, SerializableFunction<T, String> textKey) {
        field.setItems(List.of(values));
        field.setItemLabelGenerator(value -> getTranslation(textKey.apply(value)));
        field.setAriaLabel(getTranslation(key));
        field.setValue(values[0]);
        field.addValueChangeListener(event -> refresh());
    }

    private void tab(String key, Set<OrderState> which) {
        Tab tab = new Tab(getTranslation(key));
        tabs.put(tab, which);
        states.add(tab);
    }

    private OrderFilter filter() {
        return new OrderFilter(
                search.getValue(),
                tabs.getOrDefault(states.getSelectedTab(), Set.of()),
                Optional.empty(),
                due.getValue(),
                sequence.getValue());
    }

    private void refresh() {
        total = orders.count(filter());
        found.refreshAll();
        boolean none = total == 0;
        list.setVisible(!none);
        empty.setVisible(none);
        empty.removeAll();
        boolean narrowed = due.getValue() != OrderFilter.Due.ANY;
        if (none && narrowed) {
            Button any = new Button(getTranslation("orders.due.clear"), event -> due.setValue(OrderFilter.Due.ANY));
            any.addThemeVariants(ButtonVariant.TERTIARY);
            empty.add(new H2(getTranslation("orders.due.none")), any);
        } else if (none && search.getValue().isBlank()) {
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
        return new OrderLine(order, punctuality, figures);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("orders.title");
    }
}
