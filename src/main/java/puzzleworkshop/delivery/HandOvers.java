package puzzleworkshop.delivery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.papers.Debts;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** The day's hand-overs: what is packed, for whom, which way, what is still to be paid. A fixed number of queries. */
@Service
public class HandOvers {

    private final Orders orders;
    private final Parcels parcels;
    private final SendingWays ways;
    private final Addresses addresses;
    private final Debts debts;
    private final Workshop workshop;

    HandOvers(Orders orders, Parcels parcels, SendingWays ways, Addresses addresses, Debts debts, Workshop workshop) {
        this.orders = orders;
        this.parcels = parcels;
        this.ways = ways;
        this.addresses = addresses;
        this.debts = debts;
        this.workshop = workshop;
    }

    /**
     * One parcel, or an order that has none yet.
     *
     * @param to where it goes; empty while its address was not looked through, and of what is collected
     * @param home the country it leaves from
     * @param unpaid whether something is still to be paid, which whoever hands it over has to know
     * @param open how much, for all of its orders; empty when nothing is, zero for whom amounts are not told
     * @param together more packed orders of the same customer that lie apart and go the same way to the same place
     */
    public record Entry(
            List<Order> orders,
            Optional<Parcel> parcel,
            SendingWay way,
            Optional<PostalAddress> to,
            String home,
            boolean unpaid,
            Optional<Money> open,
            List<Order> together) {

        public Order first() {
            return orders.getFirst();
        }

        public List<OrderId> ids() {
            return orders.stream().map(Order::id).toList();
        }

        public boolean isCollected() {
            return way.kind() == WayKind.COLLECTION;
        }

        public ParcelState state() {
            return parcel.map(Parcel::state).orElse(ParcelState.PACKED);
        }

        private Entry with(List<Order> others) {
            return new Entry(orders, parcel, way, to, home, unpaid, open, others);
        }

        /** Grows with every change of what is in it: what a button saw. */
        public long seen() {
            return orders.stream().mapToLong(Order::version).sum();
        }
    }

    /** Whose it is, and which way to which place: what goes in one parcel has all three in common. */
    private record Where(long customer, long way, Optional<PostalAddress> to) {

        static Where of(Entry entry) {
            return new Where(
                    entry.first().customer().id(),
                    entry.way().way().id(),
                    entry.isCollected() ? Optional.empty() : entry.to());
        }
    }

    /**
     * The day.
     *
     * @param toSend packed, to be given to a carrier
     * @param toCollect packed or ready, the customer comes
     * @param onTheWay with a carrier and not known to have arrived
     */
    public record Day(List<Entry> toSend, List<Entry> toCollect, List<Entry> onTheWay) {}

    @Transactional(readOnly = true)
    public Day now() {
        List<Parcel> sent = parcels.underWay().stream()
                .filter(parcel -> parcel.state() == ParcelState.SENT)
                .toList();
        List<Order> packed = orders.open().stream().filter(HandOvers::isPacked).toList();
        List<Order> away = orders.all(
                sent.stream().flatMap(parcel -> parcel.orderIds().stream()).toList());
        // What was sent before a remake is no parcel of what is packed now.
        List<Parcel> lying = parcels.ofAll(packed.stream().map(Order::id).toList()).stream()
                .filter(parcel -> parcel.state().isHere())
                .toList();
        Facts facts = facts(Stream.concat(packed.stream(), away.stream()).toList());
        List<Entry> here = entries(packed, lying, facts);
        return new Day(
                here.stream().filter(entry -> !entry.isCollected()).toList(),
                here.stream().filter(Entry::isCollected).toList(),
                entries(away, sent, facts));
    }

    /** One order's entry, whatever its stage; what goes with it in one parcel stands in it too. */
    @Transactional(readOnly = true)
    public Optional<Entry> of(Order order) {
        Optional<Parcel> now = parcels.now(order);
        return of(inside(order, now), now, addresses.of(order));
    }

    /**
     * The same where the parcel is known already.
     *
     * @param inside what is in it
     * @param to where it goes
     */
    @Transactional(readOnly = true)
    public Optional<Entry> of(List<Order> inside, Optional<Parcel> now, Optional<PostalAddress> to) {
        OrderId first = inside.getFirst().id();
        Facts facts = new Facts(to.map(address -> Map.of(first, address)).orElse(Map.of()), open(inside));
        return entries(inside, now.stream().toList(), facts).stream().findFirst();
    }

    /** The orders in an order's parcel; without one it goes alone. */
    @Transactional(readOnly = true)
    public List<Order> inside(Order order, Optional<Parcel> parcel) {
        return parcel.filter(one -> one.orderIds().size() > 1)
                .map(one -> orders.all(one.orderIds()))
                .orElse(List.of(order));
    }

    /** Ready since longer than its way keeps it. */
    @Transactional(readOnly = true)
    public List<Entry> notCollected() {
        List<Parcel> waiting = parcels.waiting();
        List<Order> inside =
                orders
                        .all(waiting.stream()
                                .flatMap(parcel -> parcel.orderIds().stream())
                                .toList())
                        .stream()
                        .filter(HandOvers::isPacked)
                        .toList();
        return entries(inside, waiting, facts(inside)).stream()
                .filter(entry -> entry.parcel()
                        .flatMap(Parcel::leftAt)
                        .map(at -> at.atZone(workshop.zone())
                                .toLocalDate()
                                .plusDays(entry.way().keepsDays())
                                .isBefore(workshop.today()))
                        .orElse(false))
                .toList();
    }

    private static boolean isPacked(Order order) {
        return order.state() == OrderState.CONFIRMED && order.next().equals(Optional.of(Stage.HAND_OVER));
    }

    /** What the page of the day shows. */
    public static boolean restsOn(Change change) {
        return change instanceof ParcelChanged || change instanceof OrderChanged;
    }

    /** Where orders go and what is to be paid for them, read for all of them at once. */
    private record Facts(Map<OrderId, PostalAddress> to, Map<OrderId, Money> open) {}

    private Facts facts(List<Order> of) {
        return of.isEmpty() ? new Facts(Map.of(), Map.of()) : new Facts(addresses.of(of), open(of));
    }

    private Map<OrderId, Money> open(List<Order> of) {
        return debts.openOf(of.stream().map(Order::id).toList()).stream()
                .filter(debt -> debt.open().isPositive())
                .collect(Collectors.toMap(Debts.Debt::order, Debts.Debt::open));
    }

    private List<Entry> entries(List<Order> of, List<Parcel> known, Facts facts) {
        if (of.isEmpty()) {
            return List.of();
        }
        Map<OrderId, Parcel> byOrder = new HashMap<>();
        known.forEach(parcel -> parcel.orderIds().forEach(id -> byOrder.put(id, parcel)));
        String home = addresses.home();
        Map<Long, SendingWay> byId = new LinkedHashMap<>();
        ways.all().forEach(way -> byId.put(way.way().id(), way));
        SendingWay usual = byId.values().iterator().next();
        Map<Object, List<Order>> groups = of.stream()
                .collect(Collectors.groupingBy(
                        order -> Optional.ofNullable(byOrder.get(order.id()))
                                .<Object>map(Parcel::id)
                                .orElse(order.id()),
                        LinkedHashMap::new,
                        Collectors.toList()));
        List<Entry> apart = new ArrayList<>();
        for (List<Order> inside : groups.values()) {
            Order first = inside.getFirst();
            Optional<Parcel> parcel = Optional.ofNullable(byOrder.get(first.id()));
            SendingWay way = parcel.flatMap(Parcel::way)
                    .or(first::deliveryWay)
                    .map(id -> byId.getOrDefault(id, usual))
                    .orElse(usual);
            Optional<Money> due = inside.stream()
                    .map(order -> facts.open().get(order.id()))
                    .filter(money -> money != null)
                    .reduce(Money::plus);
            apart.add(new Entry(
                    inside,
                    parcel,
                    way,
                    Optional.ofNullable(facts.to().get(first.id())),
                    home,
                    due.isPresent(),
                    due,
                    List.of()));
        }
        Map<Where, List<Order>> alongside = apart.stream()
                .collect(Collectors.groupingBy(
                        Where::of, Collectors.flatMapping(entry -> entry.orders().stream(), Collectors.toList())));
        List<Entry> entries = new ArrayList<>();
        apart.forEach(entry -> entries.add(entry.with(alongside.get(Where.of(entry)).stream()
                .filter(order -> !entry.orders().contains(order))
                .toList())));
        Function<Entry, String> name = entry -> entry.first().customer().name();
        entries.sort(
                Comparator.comparing((Entry entry) -> entry.first().promised().orElse(java.time.LocalDate.MAX))
                        .thenComparing(name));
        return entries;
    }
}
