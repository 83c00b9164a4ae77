package puzzleworkshop.bookings;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.springframework.beans.factory.BeanFactory;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.Payments;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.workshop.Stage;

/** For each command that books, by class and name, a workshop in which it can be sent. */
final class BookingCases {

    /** Sends a command with a key. */
    interface Command {
        Object book(BookingKey key);
    }

    private static final String WHO = "mara";

    private final BeanFactory beans;
    private final SoldOrders sold;
    private final Map<String, Supplier<Command>> cases = new TreeMap<>();

    BookingCases(BeanFactory beans) {
        this.beans = beans;
        this.sold = new SoldOrders(beans);
    }

    Map<String, Supplier<Command>> all() {
        money();
        bench();
        return cases;
    }

    private void money() {
        Invoices invoices = beans.getBean(Invoices.class);
        LocalDate today = beans.getBean(RateBook.class).today();
        Money ten = Money.of("10.00", "EUR");
        cases.put("Invoices.issue", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            return key -> invoices.issue(key, order.id(), WHO);
        });
        cases.put("Invoices.credit", () -> {
            Invoice invoice = invoices.issue(
                    BookingKey.fresh(), sold.confirmed("Ada Reed", 1).id(), WHO);
            var amounts =
                    invoice.byRate().perRate().stream().collect(Collectors.toMap(VatSum.OfRate::rate, rate -> ten));
            return key -> invoices.credit(key, invoice.id(), amounts, "a corner was charred", WHO);
        });
        cases.put("Invoices.receive", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            return key -> {
                invoices.receive(key, order.id(), ten, Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        cases.put("Invoices.receiveKnowingly", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            Money much = order.price().gross().plus(ten);
            return key -> {
                invoices.receiveKnowingly(key, order.id(), much, Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        cases.put("Invoices.refund", () -> {
            Order order = paid(invoices, ten, today);
            return key -> {
                invoices.refund(key, order.id(), Money.of("4.00", "EUR"), Payment.Way.CASH, today, "", WHO);
                return "";
            };
        });
        Payments payments = beans.getBean(Payments.class);
        cases.put("Payments.book", () -> {
            Order order = sold.confirmed("Ada Reed", 1);
            Payment payment = Payment.of(order.id(), Payment.Kind.DEPOSIT, Payment.Way.CARD, ten, today, "", WHO);
            return key -> {
                payments.book(key, payment);
                return "";
            };
        });
        cases.put("Payments.takeBack", () -> {
            Order order = paid(invoices, ten, today);
            long line = payments.of(order.id()).getFirst().number();
            return key -> {
                payments.takeBack(key, order.id(), line, "typed for another order", WHO);
                return "";
            };
        });
        cases.put("Invoices.takeBack", () -> {
            Order order = paid(invoices, ten, today);
            long line = invoices.account(order.id()).payments().getFirst().number();
            return key -> {
                invoices.takeBack(key, order.id(), line, "typed for another order", WHO);
                return "";
            };
        });
    }

    private void bench() {
        Bench bench = beans.getBean(Bench.class);
        BenchOrders orders = new BenchOrders(beans);
        LocalDate promised = LocalDate.now().plusDays(20);
        cases.put("Bench.tick", () -> {
            Order one = orders.confirmed("Ada Reed", promised, 20);
            Order other = orders.confirmed("Mila Brand", promised, 20);
            return key -> bench.tick(key, List.of(one.id(), other.id()), Stage.PRINT, WHO, "phone");
        });
        cases.put("Bench.undo", () -> {
            Order order = orders.confirmed("Ada Reed", promised, 20);
            orders.bringTo(order.id(), Stage.FINISH);
            return key -> {
                bench.undo(key, order.id(), WHO);
                return "";
            };
        });
        cases.put("Bench.wentWrong", () -> {
            Order order = orders.confirmed("Ada Reed", promised, 20);
            orders.bringTo(order.id(), Stage.FINISH);
            Rework.Report report = new Rework.Report(
                    Rework.What.NOT_THROUGH, Stage.CUT, "left edge", Rework.Board.KEPT, Optional.empty());
            return key -> bench.wentWrong(key, order.id(), report, WHO);
        });
    }

    private Order paid(Invoices invoices, Money amount, LocalDate today) {
        Order order = sold.confirmed("Ada Reed", 1);
        invoices.receive(BookingKey.fresh(), order.id(), amount, Payment.Way.CASH, today, "", WHO);
        return order;
    }
}
