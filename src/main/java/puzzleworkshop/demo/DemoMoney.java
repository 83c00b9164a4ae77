package puzzleworkshop.demo;

import java.math.BigDecimal;
import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.PaperSettings;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.RateBook;

/** The demo workshop's money: a price list, what stands on papers, an invoice that is paid and one that is open. */
@Component
class DemoMoney {

    private static final String WHO = "Mara";
    private static final String PAYS_FIRST = "Noor Haddad";
    private static final int SCHOOL_PUZZLES = 2;

    private final Invoices invoices;
    private final Receipts receipts;
    private final Orders orders;
    private final PaymentsAwaited payments;
    private final RateBook book;

    DemoMoney(Invoices invoices, Receipts receipts, Orders orders, PaymentsAwaited payments, RateBook book) {
        this.invoices = invoices;
        this.receipts = receipts;
        this.payments = payments;
        this.orders = orders;
        this.book = book;
    }

    void settle() {
        PaperSettings papers = invoices.settings();
        invoices.save(new PaperSettings(
                "",
                "Harbour Savings Bank\nAccount 0047 1108 15",
                "Half is paid when you say yes, the rest when it is ready.",
                "Thank you for your order.",
                papers.dueDays(),
                papers.logo()));
        book.setList(
                book.today(),
                List.of(
                        price(210, 148, 60, 46),
                        price(300, 200, 60, 58),
                        price(300, 210, 120, 64),
                        price(420, 297, 300, 92)),
                WHO);
        for (Order order : orders.list(OrderFilter.in(OrderState.HANDED_OVER, OrderState.CLOSED), 0, 500)) {
            if (!invoices.account(order.id()).papers().isEmpty()) {
                continue; // of the year that is over
            }
            invoices.issue(BookingKey.fresh(), order.id(), WHO);
            if (order.state() == OrderState.CLOSED) {
                receipts.receive(
                        BookingKey.fresh(),
                        order.id(),
                        order.price().gross(),
                        Payment.Way.TRANSFER,
                        book.today(),
                        "",
                        WHO);
            }
        }
        for (Order order : orders.open()) {
            if (order.customer().name().equals(PAYS_FIRST)) {
                payments.ask(order.id(), order.price().gross(), WHO);
            }
            if (order.quantity() > SCHOOL_PUZZLES) {
                receipts.receive(
                        BookingKey.fresh(),
                        order.id(),
                        order.price().gross().dividedBy(2).rounded(),
                        Payment.Way.CARD,
                        book.today(),
                        "",
                        WHO);
            }
        }
    }

    private ListPrice price(double longer, double shorter, int pieces, long amount) {
        Money said = Money.of(BigDecimal.valueOf(amount), book.on(book.today()).currency())
                .rounded();
        return new ListPrice(Length.mm(longer), Length.mm(shorter), pieces, said);
    }
}
