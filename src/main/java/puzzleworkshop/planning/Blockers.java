package puzzleworkshop.planning;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.progress.SoFar;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * Finds out which orders cannot go on: no picture, no yes to it, no money that was asked for first, no board, or not
 * enough paper or film on the shelf for all prints. An order that waits for several things says the first.
 */
@Component
class Blockers {

    private static final Map<SupplyKind, Wait.For> SHELF =
            new EnumMap<>(Map.of(SupplyKind.STICKER_PAPER, Wait.For.PAPER, SupplyKind.LAMINATE, Wait.For.FILM));

    private final PlannedPrints prints;
    private final Supplies supplies;
    private final SheetRack rack;
    private final BlanksWaiting blanks;
    private final PaymentsAwaited payments;
    private final Workshop workshop;

    Blockers(
            PlannedPrints prints,
            Supplies supplies,
            SheetRack rack,
            BlanksWaiting blanks,
            PaymentsAwaited payments,
            Workshop workshop) {
        this.prints = prints;
        this.supplies = supplies;
        this.rack = rack;
        this.blanks = blanks;
        this.payments = payments;
        this.workshop = workshop;
    }

    /**
     * @param soFar what the bench says about them
     * @param until when a wait is reckoned to end
     */
    Map<OrderId, Wait> of(List<Order> open, Map<OrderId, SoFar> soFar, LocalDateTime until) {
        Map<OrderId, LocalDate> unpaid = payments.open();
        Map<OrderId, Map<Wait.For, LocalDate>> empty = emptyShelves();
        Set<OrderId> withBoards = withBoards(open, soFar);
        ZoneId zone = workshop.zone();
        Map<OrderId, Wait> waits = new HashMap<>();
        for (Order order : open) {
            blocker(
                            order,
                            until,
                            Optional.ofNullable(unpaid.get(order.id())),
                            empty.getOrDefault(order.id(), Map.of()),
                            withBoards.contains(order.id()),
                            zone)
                    .ifPresent(wait -> waits.put(order.id(), wait));
        }
        return waits;
    }

    private Optional<Wait> blocker(
            Order order,
            LocalDateTime until,
            Optional<LocalDate> unpaidSince,
            Map<Wait.For, LocalDate> empty,
            boolean hasBoards,
            ZoneId zone) {
        Stage next = order.next().orElseThrow();
        LocalDate taken = LocalDate.ofInstant(order.confirmedAt().orElse(order.createdAt()), zone);
        if (next == Stage.PRINT && order.waitsForPicture()) {
            return Optional.of(new Wait(Wait.For.PICTURE, taken, next, until));
        }
        if (next == Stage.PRINT && order.waitsForApproval()) {
            return Optional.of(new Wait(Wait.For.APPROVAL, taken, next, until));
        }
        if (unpaidSince.isPresent()) {
            return Optional.of(new Wait(Wait.For.PAYMENT, unpaidSince.get(), next, until));
        }
        if (next == Stage.PRINT && empty.containsKey(Wait.For.PAPER)) {
            return Optional.of(new Wait(Wait.For.PAPER, later(taken, empty.get(Wait.For.PAPER)), next, until));
        }
        if (next.compareTo(Stage.CUT) <= 0 && !hasBoards) {
            Stage before = next.compareTo(Stage.SHEET_PREP) < 0 ? Stage.SHEET_PREP : next;
            return Optional.of(new Wait(Wait.For.BOARD, taken, before, until));
        }
        return next == Stage.PRINT && empty.containsKey(Wait.For.FILM)
                ? Optional.of(new Wait(Wait.For.FILM, later(taken, empty.get(Wait.For.FILM)), Stage.LAMINATE, until))
                : Optional.empty();
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    /** Orders whose every block lies on a board that is held for it, or cut already and still of use. */
    private Set<OrderId> withBoards(List<Order> open, Map<OrderId, SoFar> soFar) {
        List<OrderId> ids = open.stream().map(Order::id).toList();
        Set<OrderId> held = rack.heldIds(ids).keySet();
        Set<OrderId> cut = rack.withCuts(ids);
        Map<OrderId, List<Chosen>> chosen = blanks.of(ids);
        return ids.stream()
                .filter(id -> {
                    boolean afresh = Optional.ofNullable(soFar.get(id))
                            .map(SoFar::needsFreshBoard)
                            .orElse(false);
                    List<Chosen> all = chosen.getOrDefault(id, List.of());
                    return all.isEmpty()
                            ? held.contains(id) || !afresh && cut.contains(id)
                            : all.stream().allMatch(blank -> blank.held() || !afresh && blank.cut());
                })
                .collect(Collectors.toSet());
    }

    /** Orders whose prints come after the paper or the film has run out, and since when it has been so low. */
    private Map<OrderId, Map<Wait.For, LocalDate>> emptyShelves() {
        Map<SupplyId, BigDecimal> left = new HashMap<>();
        Map<SupplyId, Optional<LocalDate>> since = new HashMap<>();
        Map<OrderId, Map<Wait.For, LocalDate>> empty = new HashMap<>();
        for (PlannedPrints.Need need : prints.needs()) {
            SupplyItem item = need.item();
            SupplyId id = item.id().orElseThrow();
            BigDecimal rest = left.getOrDefault(id, item.stock());
            if (rest.compareTo(need.quantity()) >= 0) {
                left.put(id, rest.subtract(need.quantity()));
                continue;
            }
            // What was never bought is not kept in the ledger, so its stock of nothing says nothing.
            since.computeIfAbsent(id, this::lastMoved)
                    .ifPresent(day -> missing(empty, need.orders(), item.kind(), day));
        }
        return empty;
    }

    private static void missing(
            Map<OrderId, Map<Wait.For, LocalDate>> empty, Set<OrderId> orders, SupplyKind kind, LocalDate day) {
        for (OrderId order : orders) {
            empty.computeIfAbsent(order, o -> new EnumMap<>(Wait.For.class)).put(SHELF.get(kind), day);
        }
    }

    private Optional<LocalDate> lastMoved(SupplyId id) {
        return supplies.movements(id, 0, 1).stream()
                .map(Movement::at)
                .map(at -> LocalDate.ofInstant(at, workshop.zone()))
                .findFirst();
    }
}
