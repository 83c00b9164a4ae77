package puzzleworkshop.offers;

import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Service;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.planning.NewWork;
import puzzleworkshop.planning.ReadyDay;
import puzzleworkshop.planning.WeekPlan;

/**
 * What it would do to others to confirm a quote as it stands: a quote may be weeks old, and the week is another by now.
 * Takes up to a second; screens call it off their thread.
 */
@Service
public class PromiseCheck {

    private final Orders orders;
    private final WeekPlan plan;
    private final Machines machines;
    private final Settings settings;

    PromiseCheck(Orders orders, WeekPlan plan, Machines machines, Settings settings) {
        this.orders = orders;
        this.plan = plan;
        this.machines = machines;
        this.settings = settings;
    }

    /**
     * A promise that cannot be given without a word.
     *
     * @param order as it stands
     * @param promised the day it says
     * @param earliest the first day that keeps everybody's promise, or with rush where it has that
     * @param forecast what the week says
     */
    public record TooEarly(Order order, LocalDate promised, LocalDate earliest, ReadyDay forecast) {}

    /** Empty when the day it promises keeps everybody's promise, or nothing can be said of it. */
    public Optional<TooEarly> of(OrderId quote) {
        Order order = orders.get(quote);
        return order.promised()
                .flatMap(promised -> plan.forecast(work(order))
                        .flatMap(forecast -> tooEarly(order, promised, order.rush(), forecast)));
    }

    /**
     * What it would do to others to change an order that has been taken on. Empty as well where nothing changes that the
     * week is planned by: the promise stands as it was given, whatever the week looks like by now.
     *
     * @param usual the way of delivery of an order that names none
     * @param forecast what the week says of the order as it would be
     */
    public static Optional<TooEarly> ofChange(
            Order order, OrderDraft now, Optional<Long> usual, Optional<ReadyDay> forecast) {
        Puzzle was = order.puzzle();
        Puzzle is = now.puzzle();
        boolean sameWork = order.quantity() == now.quantity()
                && order.board().equals(now.board())
                && was.finished().equals(is.finished())
                && was.pieces() == is.pieces()
                && was.pattern().style() == is.pattern().style()
                && was.tray() == is.tray();
        boolean sameDays = order.promised().equals(now.delivery().promised())
                && order.rush() == now.delivery().rush()
                && order.deliveryWay()
                        .or(() -> usual)
                        .equals(now.delivery().way().or(() -> usual));
        return order.state() != OrderState.CONFIRMED || sameWork && sameDays
                ? Optional.empty()
                : now.delivery()
                        .promised()
                        .flatMap(promised -> forecast.flatMap(
                                week -> tooEarly(order, promised, now.delivery().rush(), week)));
    }

    private static Optional<TooEarly> tooEarly(Order order, LocalDate promised, boolean rush, ReadyDay forecast) {
        LocalDate earliest = rush ? forecast.rush().orElse(forecast.ready()) : forecast.ready();
        return promised.isBefore(earliest)
                ? Optional.of(new TooEarly(order, promised, earliest, forecast))
                : Optional.empty();
    }

    private NewWork work(Order order) {
        boolean proven = machines.standard()
                .map(machine -> settings.forBoard(machine, order.board()).isProven())
                .orElse(true);
        String same = order.board().material() + " " + order.board().grade() + " "
                + order.board().thickness().mm();
        return new NewWork(
                order.quantity(),
                order.puzzle().pieces(),
                order.laser().plus(proven ? Minutes.ZERO : PlannedTrials.TAKES),
                same,
                order.deliveryWay());
    }
}
