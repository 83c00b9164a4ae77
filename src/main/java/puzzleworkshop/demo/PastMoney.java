package puzzleworkshop.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** The money of the demo workshop's past year: invoiced at the hand-over, credited where somebody complained, paid. */
@Component
class PastMoney {

    private static final double CREDITED = 0.25;

    private final Invoices invoices;
    private final Workshop workshop;

    PastMoney(Invoices invoices, Workshop workshop) {
        this.invoices = invoices;
        this.workshop = workshop;
    }

    void settle(Order order, PastOrder past) {
        Invoice[] invoice = new Invoice[1];
        HouseClock.at(
                noon(past.handedOver(), 16),
                () -> invoice[0] = invoices.issue(BookingKey.fresh(), order.id(), DemoStock.MAKER));
        Money due = invoice[0].gross();
        if (!past.complaint().isEmpty()) {
            Percent rate = invoice[0].byRate().perRate().getFirst().rate();
            Money less = due.times(CREDITED).rounded();
            HouseClock.at(
                    noon(past.handedOver().plusDays(4), 11),
                    () -> invoices.credit(
                            BookingKey.fresh(),
                            invoice[0].id(),
                            Map.of(rate, less),
                            past.complaint(),
                            DemoStock.MAKER));
            due = due.minus(less);
        }
        Money paid = due;
        past.paidAfter().ifPresent(days -> {
            LocalDate on = past.handedOver().plusDays(days);
            LocalDate day = on.isAfter(workshop.today()) ? workshop.today() : on;
            HouseClock.at(
                    noon(day, 12),
                    () -> invoices.receive(
                            BookingKey.fresh(), order.id(), paid, Payment.Way.TRANSFER, day, "", DemoStock.MAKER));
        });
    }

    private Instant noon(LocalDate day, int hour) {
        return day.atTime(hour, 0).atZone(workshop.zone()).toInstant();
    }
}
