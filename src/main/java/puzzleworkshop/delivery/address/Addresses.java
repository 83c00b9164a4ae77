package puzzleworkshop.delivery.address;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Workshop;

/**
 * Where parcels go: a customer's address, and another one for a single order where it goes elsewhere. What stands as plain
 * lines with the customer is for papers; an address kept here for a customer is written there too, so that both say the same.
 */
@Service
public class Addresses {

    private final AddressStore store;
    private final Orders orders;
    private final Customers customers;
    private final Workshop workshop;

    Addresses(AddressStore store, Orders orders, Customers customers, Workshop workshop) {
        this.store = store;
        this.workshop = workshop;
        this.orders = orders;
        this.customers = customers;
    }

    /** The country parcels are sent from, two letters; as money and computer say until somebody has chosen one. */
    @Transactional(readOnly = true)
    public String home() {
        return store.home()
                .filter(code -> !code.isBlank())
                .orElseGet(() -> CountryFormat.home(
                        workshop.currency(), Locale.getDefault().getCountry()));
    }

    @Transactional
    public void home(String country) {
        store.home(country.toUpperCase(Locale.ROOT));
    }

    /** Where an order goes; empty while nobody has looked its address through. */
    @Transactional(readOnly = true)
    public Optional<PostalAddress> of(Order order) {
        return Optional.ofNullable(of(List.of(order)).get(order.id()));
    }

    /** The same for many at once. */
    @Transactional(readOnly = true)
    public Map<OrderId, PostalAddress> of(Collection<Order> many) {
        AddressStore.Kept kept = store.of(
                many.stream().map(order -> order.customer().id()).collect(Collectors.toSet()),
                many.stream().map(Order::id).toList());
        Map<OrderId, PostalAddress> found = new HashMap<>();
        many.forEach(order -> Optional.ofNullable(
                        kept.customers().get(order.customer().id()))
                .ifPresent(address -> found.put(order.id(), address)));
        found.putAll(kept.orders());
        return found;
    }

    /** What is put into the form first: what is kept, else a reading of the customer's plain lines. */
    @Transactional(readOnly = true)
    public PostalAddress proposed(Order order) {
        Customer customer = order.customer();
        return of(order).orElseGet(() -> PostalAddress.proposed(customer.name(), customer.address(), home()));
    }

    /**
     * Keeps where an order goes.
     *
     * @param thisOrderOnly whether the customer's other orders go elsewhere
     * @throws Refused when it cannot be written on a parcel
     */
    @Transactional
    public void keep(OrderId id, PostalAddress address, boolean thisOrderOnly, String who) {
        Order order = orders.lock(id);
        address.faults().values().stream().findFirst().ifPresent(fault -> {
            throw new Refused(fault);
        });
        if (thisOrderOnly) {
            store.forOrder(id, address);
        } else {
            store.forget(id);
            store.forCustomer(order.customer().id(), address);
            Customer customer = order.customer();
            List<String> lines = address.lines(home());
            // The papers have the name above the address already.
            String plain =
                    lines.stream().filter(line -> !line.equals(customer.name())).collect(Collectors.joining("\n"));
            customers.keep(new Customer(customer.id(), customer.name(), customer.contact(), plain));
        }
        orders.note(id, Sentence.of("delivery.history.address", String.join(", ", address.lines(home()))), who);
    }
}
