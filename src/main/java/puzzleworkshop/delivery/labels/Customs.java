package puzzleworkshop.delivery.labels;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.PackedWeight;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.AgreedPrice;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Workshop;

/** What is declared of a parcel that crosses a border of customs. */
@Service
public class Customs {

    private final LabelStore store;
    private final Parcels parcels;
    private final Addresses addresses;
    private final Complaints complaints;
    private final Workshop workshop;

    Customs(LabelStore store, Parcels parcels, Addresses addresses, Complaints complaints, Workshop workshop) {
        this.store = store;
        this.parcels = parcels;
        this.addresses = addresses;
        this.complaints = complaints;
        this.workshop = workshop;
    }

    /**
     * As what the goods of an order's parcel are declared unless somebody says otherwise; empty where nothing is declared.
     *
     * @param to where it goes
     */
    @Transactional(readOnly = true)
    public Optional<GoodsCategory> usual(Order order, Optional<PostalAddress> to) {
        if (to.filter(address -> CustomsUnion.isLeft(addresses.home(), address)).isEmpty()) {
            return Optional.empty();
        }
        List<OrderId> inside =
                parcels.now(order).map(parcel -> parcel.orderIds()).orElseGet(() -> List.of(order.id()));
        return Optional.of(
                inside.stream().allMatch(this::isReplacement)
                        ? GoodsCategory.REPLACEMENT
                        : GoodsCategory.SALE_OF_GOODS);
    }

    private boolean isReplacement(OrderId order) {
        return complaints.of(order).stream()
                .flatMap(complaint -> complaint.decision().stream())
                .anyMatch(decision -> decision.remedy() == Remedy.REMAKE);
    }

    /**
     * The value is the net price, whoever prints it, and of a replacement too: the declaration is void without it, and what
     * the customer was told ({@link AgreedPrice}) is no secret from who packs; what it costs us does not stand there.
     *
     * @param weights of one of each order's puzzles
     * @param grams of the whole parcel
     */
    CustomsForm form(List<Order> inside, List<PackedWeight> weights, double grams, GoodsCategory category) {
        LabelSettings settings = store.read();
        List<CustomsForm.Line> lines = new ArrayList<>();
        for (int i = 0; i < inside.size(); i++) {
            Order order = inside.get(i);
            double net = (weights.get(i).piecesGrams() + weights.get(i).trayGrams()) * order.quantity();
            lines.add(new CustomsForm.Line(
                    settings.contents(), order.quantity(), net, order.price().net()));
        }
        return new CustomsForm(
                category,
                lines,
                settings.hsCode(),
                addresses.home(),
                grams,
                lines.stream().map(CustomsForm.Line::value).reduce(Money::plus).orElseThrow(),
                workshop.today(),
                workshop.profile().name());
    }
}
