package puzzleworkshop.papers;

import java.time.LocalDate;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.Payments;

/** Money that comes for an order and goes back. Every booking holds the order's row, as invoices do. */
@Service
public class Receipts {

    private final OrderAccounts accounts;
    private final Payments payments;
    private final Bookings bookings;
    private final Orders orders;

    Receipts(OrderAccounts accounts, Payments payments, Bookings bookings, Orders orders) {
        this.accounts = accounts;
        this.payments = payments;
        this.bookings = bookings;
        this.orders = orders;
    }

    /**
     * Books money taken for an order.
     *
     * @throws FarOff when it is more than is open; {@link #receiveKnowingly} books it all the same
     */
    @Books
    @Transactional
    public void receive(
            BookingKey key, OrderId id, Money amount, Payment.Way way, LocalDate paidOn, String note, String who) {
        bookings.once(key, said("receive", id, amount, way, paidOn, note), () -> {
            Order order = orders.lock(id);
            Money open = accounts.of(id).open();
            if (amount.rounded().compareTo(open) > 0) {
                throw open.isPositive()
                        ? new FarOff("papers.payment.above-open", amount.rounded(), open, order.number())
                        : new FarOff("papers.payment.nothing-open", amount.rounded(), order.number());
            }
            receiveNow(key.part("payment"), order, receipt(id, amount, way, paidOn, note, who));
        });
    }

    /** Books money taken for an order although it is more than is open. */
    @Books
    @Transactional
    public void receiveKnowingly(
            BookingKey key, OrderId id, Money amount, Payment.Way way, LocalDate paidOn, String note, String who) {
        bookings.once(
                key,
                said("receive", id, amount, way, paidOn, note),
                () -> receiveNow(key.part("payment"), orders.lock(id), receipt(id, amount, way, paidOn, note, who)));
    }

    private Payment receipt(OrderId id, Money amount, Payment.Way way, LocalDate paidOn, String note, String who) {
        Payment.Kind kind = accounts.of(id).papers().isEmpty() ? Payment.Kind.DEPOSIT : Payment.Kind.PAYMENT;
        return Payment.of(id, kind, way, amount, paidOn, note, who);
    }

    private void receiveNow(BookingKey key, Order order, Payment payment) {
        payments.book(key, payment);
        accounts.openOrClose(order, payment.who());
    }

    /** Books money given back; not more than was received. */
    @Books
    @Transactional
    public void refund(
            BookingKey key, OrderId id, Money amount, Payment.Way way, LocalDate paidOn, String note, String who) {
        bookings.once(key, said("refund", id, amount, way, paidOn, note), () -> {
            Order order = orders.lock(id);
            payments.book(key.part("payment"), Payment.of(id, Payment.Kind.REFUND, way, amount, paidOn, note, who));
            accounts.openOrClose(order, who);
        });
    }

    /** Takes a mistyped payment or refund back; both lines stay. */
    @Books
    @Transactional
    public void takeBack(BookingKey key, OrderId id, long payment, String why, String who) {
        bookings.once(key, "take back payment " + payment + " of order " + id + ": " + why, () -> {
            Order order = orders.lock(id);
            payments.takeBack(key.part("payment"), id, payment, why, who);
            accounts.openOrClose(order, who);
        });
    }

    private static String said(String what, OrderId id, Money amount, Payment.Way way, LocalDate paidOn, String note) {
        return what + " " + amount.rounded() + " for order " + id + ", " + way + ", " + paidOn + ": " + note.strip();
    }
}
