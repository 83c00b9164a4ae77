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
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.virtuallist.VirtualList;
import com.vaadin.flow.data.provider.DataProvider;
import com.vaadin.flow.data.renderer.ComponentRenderer;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;

/** One customer: how to reach them, what to remember, and every order there was, each to be made again. */
@Route("customers")
@PermitAll
@StyleSheet("context://orders.css")
public class CustomerView extends Div implements HasUrlParameter<Long>, HasDynamicTitle {

    private final transient Customers customers;
    private final transient Orders orders;
    private final transient Punctuality punctuality;
    private final transient Formatter figures;
    private transient Customer customer;

    public CustomerView(Customers customers, Orders orders, Punctuality punctuality, Formatter figures) {
        this.customers = customers;
        this.orders = orders;
        this.punctuality = punctuality;
        this.figures = figures;
        addClassNames("pw-page", "orders-customer");
    }

    @Override
    public void setParameter(BeforeEvent event, Long id) {
        customer =
                customers.find(id).orElseThrow(() -> new NotFoundException(getTranslation("orders.customer.unknown")));
        removeAll();
        Anchor fresh = new Anchor("orders/new?customer=" + id, getTranslation("orders.customer.new-order"));
        fresh.addClassNames("orders-new", "pw-push");
        Div head = new Div(new H1(customer.name()), fresh);
        head.addClassName("pw-page-head");
        Div columns = new Div(facts(), past());
        columns.addClassName("orders-customer-columns");
        add(head, columns);
    }

    private Component facts() {
        TextField name = new TextField(getTranslation("orders.customer.name"));
        TextField contact = new TextField(getTranslation("orders.fact.contact"));
        TextArea address = new TextArea(getTranslation("orders.customer.address"));
        TextArea note = new TextArea(getTranslation("orders.customer.note"));
        name.setValue(customer.name());
        contact.setValue(customer.contact());
        address.setValue(customer.address());
        note.setValue(customers.note(customer.id()));
        note.setHelperText(getTranslation("orders.customer.note.help"));
        note.setMinRows(4);
        Button save = new Button(
                getTranslation("orders.customer.save"),
                event -> Feedback.unlessRefused(figures, "orders.customer.saved", () -> {
                    customers.keepNote(customer.id(), note.getValue());
                    customer = customers.keep(new Customer(
                            customer.id(),
                            name.getValue().strip(),
                            contact.getValue().strip(),
                            address.getValue().strip()));
                }));
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Div section = new Div(new H2(getTranslation("orders.customer.who")), name, contact, address, note, save);
        section.addClassName("pw-section");
        return section;
    }

    private Component past() {
        OrderFilter theirs = OrderFilter.of(customer.id());
        int many = orders.count(theirs);
        Div section = new Div(new H2(getTranslation("orders.customer.orders", many)));
        section.addClassName("orders-customer-orders");
        if (many == 0) {
            section.add(new Paragraph(getTranslation("orders.customer.none")));
            return section;
        }
        VirtualList<Order> list = new VirtualList<>();
        list.setDataProvider(DataProvider.fromCallbacks(
                query -> orders.list(theirs, query.getOffset(), query.getLimit()).stream(),
                query -> orders.count(theirs)));
        list.setRenderer(new ComponentRenderer<>(this::line));
        list.getElement().setAttribute("data-on-paper", getTranslation("orders.on-paper"));
        section.add(list);
        return section;
    }

    private Component line(Order order) {
        Anchor again = new Anchor("orders/new?again=" + order.number(), getTranslation("orders.again"));
        again.getElement().setAttribute("aria-label", getTranslation("orders.again.of", order.number()));
        again.addClassName("orders-again");
        Div line = new Div(new OrderLine(order, punctuality, figures), again);
        line.addClassName("orders-customer-line");
        return line;
    }

    @Override
    public String getPageTitle() {
        return customer == null ? getTranslation("orders.customer.who") : customer.name();
    }
}
