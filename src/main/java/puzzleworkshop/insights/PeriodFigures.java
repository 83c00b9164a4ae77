package puzzleworkshop.insights;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;

/**
 * Finished orders taken together: of a month, or of one size.
 *
 * @param what the month or the size
 * @param hands reckoned minutes, or clocked ones where there are any
 */
public record PeriodFigures<T>(
        T what, int orders, int puzzles, Money net, Money reckonedCost, Money cost, Minutes hands, Minutes laser) {

    static <T> PeriodFigures<T> of(T what, List<FinishedOrder> orders, Money zero) {
        Money net = zero;
        Money reckoned = zero;
        Money cost = zero;
        Minutes hands = Minutes.ZERO;
        Minutes laser = Minutes.ZERO;
        int puzzles = 0;
        for (FinishedOrder order : orders) {
            net = net.plus(order.outcome().net());
            reckoned = reckoned.plus(order.outcome().reckoned());
            cost = cost.plus(order.outcome().actual());
            hands = hands.plus(order.hands());
            laser = laser.plus(order.laser());
            puzzles += order.quantity();
        }
        return new PeriodFigures<>(what, orders.size(), puzzles, net, reckoned, cost, hands, laser);
    }

    public Money earned() {
        return net.minus(cost);
    }

    /** Absent when nothing was sold. */
    public Optional<Percent> margin() {
        return net.isZero() ? Optional.empty() : Optional.of(Percent.share(earned(), net));
    }

    /** What an hour of hands earned beyond its wage; zero when none were spent. */
    public Money earnedPerHour() {
        return hands.value() == 0 ? Money.zero(net.currency()) : earned().times(60 / hands.value());
    }
}
