package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.calendar.DeliveryWay;

/** For whom, by when, and how it gets there. A name that is not known yet is simply typed. */
class WhoAndWhen extends Div {

    private static final String CUSTOMER_ID = "#customer";
    private static final String CUSTOMER_NAME = "#customer-name";

    private final ComboBox<Customer> customer = new ComboBox<>(getTranslation("offers.new.customer"));
    private final TextField contact = new TextField(getTranslation("offers.new.contact"));
    private final TextArea address = new TextArea(getTranslation("offers.new.address"));
    private final TextArea note = new TextArea(getTranslation("offers.new.note"));
    private final DayField wantedBy = new DayField(getTranslation("offers.new.wanted-by"));
    private final Select<DeliveryWay> way = new Select<>();
    private final FieldError late;
    private final transient Customers customers;

    WhoAndWhen(Customers customers, Formatter figures, List<DeliveryWay> ways, Runnable changed) {
        this.customers = customers;
        addClassName("pw-section");
        late = new FieldError(Offer.Question.WANTED_BY, figures);
        customer.setId("customer");
        customer.setItems(
                query -> customers.search(query.getFilter().orElse(""), query.getOffset(), query.getLimit()).stream());
        customer.setItemLabelGenerator(Customer::name);
        customer.setAllowCustomValue(true);
        customer.setRequiredIndicatorVisible(true);
        customer.addCustomValueSetListener(event -> {
            if (!event.getDetail().isBlank()) {
                customer.setValue(Customer.newcomer(event.getDetail(), contact.getValue(), address.getValue()));
            }
        });
        customer.addValueChangeListener(event -> {
            customer.setInvalid(false);
            Customer known = event.getValue();
            if (known != null && known.isKept()) {
                contact.setValue(known.contact());
                address.setValue(known.address());
            }
        });
        contact.setPlaceholder(getTranslation("offers.new.contact.example"));
        address.setMinRows(2);
        note.setMinRows(1);
        note.setValueChangeMode(ValueChangeMode.ON_BLUR);
        wantedBy.setId("wanted-by");
        wantedBy.setClearButtonVisible(true);
        wantedBy.addValueChangeListener(event -> changed.run());
        way.setLabel(getTranslation("offers.new.way"));
        way.setItemLabelGenerator(DeliveryWay::name);
        way.setItems(ways);
        way.setVisible(!ways.isEmpty());
        if (!ways.isEmpty()) {
            way.setValue(ways.getFirst());
        }
        way.addValueChangeListener(event -> changed.run());
        Div form = new Div(customer, contact, wantedBy, way, address, note);
        form.addClassName("pw-form");
        add(new H2(getTranslation("offers.new.who")), form, late);
    }

    /** For a customer who is known already. */
    void begin(String customerId) {
        try {
            customers.find(Long.parseLong(customerId)).ifPresent(customer::setValue);
        } catch (NumberFormatException mistyped) {
            // An address that names nobody begins with nobody.
            customer.clear();
        }
    }

    /** Who it is for, into a draft; the other fields are kept by their names. */
    void draft(Map<String, String> fields) {
        Customer chosen = customer.getValue();
        if (chosen != null) {
            fields.put(CUSTOMER_ID, String.valueOf(chosen.id()));
            fields.put(CUSTOMER_NAME, chosen.name());
        }
    }

    void restore(Map<String, String> fields) {
        String id = fields.getOrDefault(CUSTOMER_ID, "0");
        if (!id.equals("0")) {
            begin(id);
        } else if (fields.containsKey(CUSTOMER_NAME)) {
            customer.setValue(Customer.newcomer(fields.get(CUSTOMER_NAME), "", ""));
        }
    }

    void take(Order order) {
        customer.setValue(order.customer());
        note.setValue(order.note());
        wantedBy.setValue(order.wantedBy().orElse(null));
        order.deliveryWay()
                .flatMap(id -> way.getListDataView()
                        .getItems()
                        .filter(w -> w.id() == id)
                        .findFirst())
                .ifPresent(way::setValue);
    }

    /** Marks a missing name. */
    boolean check() {
        boolean named =
                customer.getValue() != null && !customer.getValue().name().isBlank();
        customer.setInvalid(!named);
        customer.setErrorMessage(named ? "" : getTranslation("orders.customer.no-name"));
        if (!named) {
            customer.focus();
        }
        return named;
    }

    /** Whether a day that is wanted can be read; the field says it itself. */
    boolean dayFits() {
        return wantedBy.isFit();
    }

    Customer customer() {
        Customer chosen = customer.getValue();
        return new Customer(
                chosen.id(),
                chosen.name(),
                contact.getValue().strip(),
                address.getValue().strip());
    }

    Optional<LocalDate> wantedBy() {
        return Optional.ofNullable(wantedBy.getValue());
    }

    /** The one that stands first: of an order that names none. */
    Optional<Long> usualWay() {
        return way.getListDataView().getItems().findFirst().map(DeliveryWay::id);
    }

    Optional<Long> way() {
        return Optional.ofNullable(way.getValue()).map(DeliveryWay::id);
    }

    String note() {
        return note.getValue().strip();
    }

    void show(Offer offer) {
        late.show(offer);
    }
}
