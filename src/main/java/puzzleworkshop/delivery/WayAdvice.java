package puzzleworkshop.delivery;

import java.time.Clock;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.sending.CheapestWay;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.Reach;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.workshop.Workshop;

/** By which way a packed order goes best, as it stands now. */
@Service
public class WayAdvice {

    private final Orders orders;
    private final Boxes boxes;
    private final SendingWays ways;
    private final Addresses addresses;
    private final WorkingTimes times;
    private final Workshop workshop;
    private final Clock clock;

    WayAdvice(
            Orders orders,
            Boxes boxes,
            SendingWays ways,
            Addresses addresses,
            WorkingTimes times,
            Workshop workshop,
            Clock clock) {
        this.orders = orders;
        this.boxes = boxes;
        this.ways = ways;
        this.addresses = addresses;
        this.times = times;
        this.workshop = workshop;
        this.clock = clock;
    }

    /**
     * The cheapest way that keeps the promise, by what was weighed and measured, else by what is reckoned.
     *
     * @return empty while neither is known, because no box is
     */
    @Transactional(readOnly = true)
    public Optional<CheapestWay.Answer> of(Order order, Optional<Parcel> parcel) {
        List<Order> inside = parcel.map(one -> orders.all(one.orderIds())).orElse(List.of(order));
        return of(
                inside,
                parcel.flatMap(Parcel::measure).or(() -> boxes.reckoned(inside, boxes.notes(inside))),
                addresses.of(inside.getFirst()));
    }

    /**
     * The same where what is in the parcel, what it measures and where it goes are known already.
     *
     * @param measure weighed and measured, or reckoned
     */
    @Transactional(readOnly = true)
    public Optional<CheapestWay.Answer> of(
            List<Order> inside, Optional<ParcelMeasure> measure, Optional<PostalAddress> to) {
        return measure.map(of -> CheapestWay.of(
                ways.all(),
                of,
                LocalDateTime.now(clock.withZone(workshop.zone())),
                inside.stream().flatMap(one -> one.promised().stream()).min(java.time.LocalDate::compareTo),
                times.calendar().free(),
                to.map(address -> new Reach.Destination(address.country(), addresses.home()))));
    }
}
