package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Stage;

/** How the blanks of orders stand: held, cut, or waiting for a sheet. */
@Service
@Transactional(readOnly = true)
public class BlanksWaiting {

    private final BoardStore store;
    private final SheetRack rack;
    private final RackSettings settings;
    private final Orders orders;

    BlanksWaiting(BoardStore store, SheetRack rack, RackSettings settings, Orders orders) {
        this.store = store;
        this.rack = rack;
        this.settings = settings;
        this.orders = orders;
    }

    /** Blanks of an order by position, with how they stand. */
    public List<Chosen> of(OrderId order) {
        return of(List.of(order)).getOrDefault(order, List.of());
    }

    /** The same for many orders at once; those without blanks are left out. */
    public Map<OrderId, List<Chosen>> of(Collection<OrderId> asked) {
        Map<OrderId, List<SheetId>> held = rack.heldIds(asked);
        Map<OrderId, Set<SheetId>> cut = rack.cutIds(asked);
        Map<OrderId, List<Chosen>> blanks = new HashMap<>();
        store.blanks(asked)
                .forEach((order, chosen) -> blanks.put(
                        order,
                        chosen.stream()
                                .map(blank -> blank.standing(
                                        isAmong(blank, held.getOrDefault(order, List.of())),
                                        isAmong(blank, cut.getOrDefault(order, Set.of()))))
                                .toList()));
        return blanks;
    }

    private static boolean isAmong(Chosen blank, Collection<SheetId> sheets) {
        return blank.sheet().map(sheets::contains).orElse(false);
    }

    /** Blanks of confirmed orders without a held sheet, in the order in which they were confirmed. */
    public List<WaitingBlank> waiting() {
        List<Order> open = orders.open().stream()
                .filter(BlanksWaiting::mayWait)
                .sorted(java.util.Comparator.comparing(
                                (Order order) -> order.confirmedAt().orElseThrow())
                        .thenComparing(order -> order.id().value()))
                .toList();
        Map<OrderId, List<Chosen>> blanks = of(open.stream().map(Order::id).toList());
        Length bow = settings.rules().mostBow();
        List<WaitingBlank> waiting = new ArrayList<>();
        for (Order order : open) {
            for (Chosen blank : blanks.getOrDefault(order.id(), List.of())) {
                if (!blank.held() && !blank.cut()) {
                    waiting.add(new WaitingBlank(
                            order.ref(),
                            blank.position(),
                            order.customer().name(),
                            BlankPlanner.wish(blank.size(), order.board(), bow),
                            order.promised()));
                }
            }
        }
        return List.copyOf(waiting);
    }

    boolean isWaiting(OrderId order, int position) {
        Optional<Order> found = orders.find(order).filter(BlanksWaiting::mayWait);
        return found.isPresent()
                && of(order).stream().anyMatch(blank -> blank.position() == position && !blank.held() && !blank.cut());
    }

    private static boolean mayWait(Order order) {
        return order.state() == OrderState.CONFIRMED
                && order.next()
                        .map(next -> next.compareTo(Stage.SHEET_PREP) <= 0)
                        .orElse(false);
    }

    /** All blanks that wait for what a held sheet leaves. */
    public List<FollowingBlank> following() {
        return store.following();
    }
}
