package puzzleworkshop.delivery.boxes;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.CountByWeight;
import puzzleworkshop.bench.Wrapping;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** The boxes and bags of the workshop, and which one an order is packed in. */
@Service
public class Boxes implements Wrapping {

    private static final double LEAST_FACTOR = 1;
    private static final double MOST_FACTOR = 20;

    private final BoxStore store;
    private final Supplies supplies;
    private final Orders orders;
    private final PatternCache patterns;
    private final RackSettings boards;
    private final BlankScale scale;
    private final Workshop workshop;
    private final AfterCommit afterCommit;
    private final Clock clock;
    /** By the supplies there are: what an order is packed in is asked for in many parts of its page. */
    private final VersionedCache<List<SupplyItem>, List<Box>> known =
            VersionedCache.<List<SupplyItem>, List<Box>>ofMost(2).restingOn(BoxesChanged.class);

    Boxes(
            BoxStore store,
            Supplies supplies,
            Orders orders,
            PatternCache patterns,
            RackSettings boards,
            BlankScale scale,
            Workshop workshop,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.supplies = supplies;
        this.orders = orders;
        this.patterns = patterns;
        this.boards = boards;
        this.scale = scale;
        this.workshop = workshop;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** Told when the inside or the packing factor of a box was kept. */
    public record BoxesChanged() implements Change {}

    /** Before those who pack again. */
    @EventListener(BoxesChanged.class)
    @org.springframework.core.annotation.Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        known.forget();
    }

    /**
     * What an order is packed in.
     *
     * @param proposed the smallest that takes it
     * @param box what is used: the one somebody chose, else the proposed one
     */
    public record Packing(BoxChoice proposed, Optional<Box> box, boolean chosen) {}

    /** Boxes and bags in use, whether their inside is known or not. */
    @Transactional(readOnly = true)
    public List<SupplyItem> supplies() {
        return supplies.items().stream()
                .filter(item -> item.kind() == SupplyKind.BOX || item.kind() == SupplyKind.BAG)
                .filter(item -> !item.retired())
                .toList();
    }

    /** Those whose inside is known. */
    @Transactional(readOnly = true)
    public List<Box> all() {
        List<SupplyItem> supplies = supplies();
        return known.get(supplies, () -> store.among(supplies));
    }

    /** Keeps the inside of a box; its packing factor stays as it was measured. */
    @Transactional
    public void save(Box box) {
        if (!box.shortest().isPositive()
                || !(box.emptyGrams() > 0)
                || box.wall().mm() < 0) {
            throw new Refused("delivery.box.sides");
        }
        store.save(box);
        afterCommit.tell(new BoxesChanged());
    }

    /**
     * Keeps the packing factor: an order's pieces lie loose in the box, levelled.
     *
     * @param base of the box as it stands
     * @param filled how high they stand in it
     * @throws Refused when pieces cannot lie so: they take their own volume at least
     */
    @Transactional
    public double measured(SupplyId box, OrderId order, Size base, Length filled, String who) {
        Order of = orders.get(order);
        double solid = Contents.loose(
                        patterns.sizes(of.puzzle().pattern()), of.board().thickness())
                .solidMm3();
        double factor = Box.measured(base.area().mm2(), filled, solid);
        if (!(factor >= LEAST_FACTOR && factor <= MOST_FACTOR)) {
            throw new Refused("delivery.box.factor", factor);
        }
        store.measured(box, factor, of.number(), who, clock.instant());
        afterCommit.tell(new BoxesChanged());
        return factor;
    }

    /**
     * What is noted about orders that lie together, read for all of them at once.
     *
     * @param chosen the boxes that somebody chose
     * @param weighed their blanks on the scale
     */
    public record Notes(Map<OrderId, SupplyId> chosen, Map<OrderId, BlankScale.Reading> weighed) {}

    @Transactional(readOnly = true)
    public Notes notes(List<Order> of) {
        List<OrderId> ids = of.stream().map(Order::id).toList();
        return new Notes(store.chosen(ids), scale.lastFor(ids));
    }

    @Transactional(readOnly = true)
    public Packing packing(Order order, Notes notes) {
        List<Box> all = all();
        BoxChoice proposed = BoxChoice.smallest(all, contents(order), order.quantity());
        Optional<Box> chosen = Optional.ofNullable(notes.chosen().get(order.id()))
                .flatMap(id -> all.stream()
                        .filter(box -> box.item().id().equals(Optional.of(id)))
                        .findFirst());
        return new Packing(proposed, chosen.or(proposed::box), chosen.isPresent());
    }

    public Contents contents(Order order) {
        return Contents.of(
                order.puzzle(),
                patterns.sizes(order.puzzle().pattern()),
                order.board().thickness());
    }

    /** Takes another box for an order; empty goes back to the smallest. */
    @Transactional
    public void choose(OrderId id, Optional<SupplyId> box, String who) {
        orders.lock(id);
        store.choose(id, box);
        orders.note(
                id,
                box.flatMap(supplies::find)
                        .map(item -> Sentence.of("delivery.history.box", item.name()))
                        .orElseGet(() -> Sentence.of("delivery.history.box-smallest")),
                who);
    }

    /** What one packed puzzle of the order should weigh. */
    @Transactional(readOnly = true)
    public PackedWeight weight(Order order, Notes notes) {
        double density = density(order);
        TradeNumbers numbers = workshop.tradeNumbers();
        Size finished = order.puzzle().finished();
        CountByWeight count = CountByWeight.of(
                patterns.sizes(order.puzzle().pattern()),
                order.board().thickness(),
                density,
                Optional.ofNullable(notes.weighed().get(order.id()))
                        .map(reading -> new CountByWeight.Weighed(
                                reading.grams(),
                                reading.stepGrams(),
                                reading.blank().orElseGet(() -> numbers.blankFor(finished)),
                                numbers.stickerFor(finished))));
        return new PackedWeight(
                count.grams(),
                count.scatterGrams(),
                PackedWeight.tray(order.puzzle(), order.board().thickness(), density),
                packing(order, notes).box().map(Box::emptyGrams).orElse(0.0));
    }

    /**
     * What a parcel of these orders should measure: their boxes flat on one another. Empty while a box is not known.
     */
    @Transactional(readOnly = true)
    public Optional<ParcelMeasure> reckoned(List<Order> inside, Notes notes) {
        double grams = 0;
        double longest = 0;
        double middle = 0;
        double high = 0;
        for (Order order : inside) {
            Optional<Box> box = packing(order, notes).box();
            if (box.isEmpty()) {
                return Optional.empty();
            }
            ParcelMeasure one =
                    box.get().outside(weight(order, notes).grams() - box.get().emptyGrams());
            grams += one.grams() * order.quantity();
            longest = Math.max(longest, one.longest().mm());
            middle = Math.max(middle, one.middle().mm());
            high += one.shortest().mm() * order.quantity();
        }
        return inside.isEmpty()
                ? Optional.empty()
                : Optional.of(ParcelMeasure.of(grams, Length.mm(longest), Length.mm(middle), Length.mm(high)));
    }

    private double density(Order order) {
        return boards.materials().stream()
                .filter(material -> material.id().equals(order.board().material()))
                .mapToDouble(Material::densityKgM3)
                .findFirst()
                .orElseThrow(
                        () -> new Refused("delivery.box.density", order.board().material()));
    }

    @Override
    public Optional<Map<SupplyId, BigDecimal>> of(Order order) {
        return packing(order, notes(List.of(order)))
                .box()
                .map(box -> Map.of(box.item().id().orElseThrow(), BigDecimal.valueOf(order.quantity())));
    }
}
