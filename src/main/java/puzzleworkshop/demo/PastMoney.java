package puzzleworkshop.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** The money of the demo workshop's past year: invoiced at the hand-over, credited where somebody complained, paid. */
@Component
class PastMoney {

    private static final double CREDITED = 0.25;

    private final Invoices invoices;
    private final Receipts receipts;
    private final Complaints complaints;
    private final Remedies remedies;
    private final Workshop workshop;

    PastMoney(Invoices invoices, Receipts receipts, Complaints complaints, Remedies remedies, Workshop workshop) {
        this.invoices = invoices;
        this.receipts = receipts;
        this.complaints = complaints;
        this.remedies = remedies;
        this.workshop = workshop;
    }

    void settle(Order order, PastOrder past) {
        Invoice[] invoice = new Invoice[1];
        HouseClock.at(
                noon(past.handedOver(), 16),
                () -> invoice[0] = invoices.issue(BookingKey.fresh(), order.id(), DemoStock.MAKER));
        Money due = invoice[0].gross();
        LocalDate complained = past.complained();
        boolean credited = past.complaint().isPresent() && !past.comesBack(workshop.today());
        if (credited && complained.isBefore(workshop.today())) {
            Money less = due.times(CREDITED).rounded();
            HouseClock.at(
                    noon(complained, 11), () -> complain(order, past.complaint().get(), less));
            due = due.minus(less);
        }
        Money paid = due;
        past.paidAfter().ifPresent(days -> {
            LocalDate day = past.handedOver().plusDays(days);
            if (day.isBefore(workshop.today())) {
                HouseClock.at(
                        noon(day, 12),
                        () -> receipts.receive(
                                BookingKey.fresh(), order.id(), paid, Payment.Way.TRANSFER, day, "", DemoStock.MAKER));
            }
        });
    }

    /** It came back and is made again; the workshop bears the postage. */
    void comesBack(Order order, PastOrder past) {
        HouseClock.at(noon(past.complained(), 11), () -> {
            PastOrder.Grief grief = past.complaint().orElseThrow();
            long complaint = complaints.report(
                    order.id(), new Complaints.Report(grief.reason(), grief.stage(), grief.words()), DemoStock.MAKER);
            remedies.remake(
                    BookingKey.fresh(),
                    complaint,
                    new Remedies.Terms(
                            Complaint.PostageBy.WORKSHOP,
                            Optional.of(Money.of("9.40", workshop.currency().getCurrencyCode())),
                            "We are sorry, and make it again."),
                    DemoStock.MAKER);
        });
    }

    private void complain(Order order, PastOrder.Grief grief, Money less) {
        long complaint = complaints.report(
                order.id(), new Complaints.Report(grief.reason(), grief.stage(), grief.words()), DemoStock.MAKER);
        remedies.refund(
                BookingKey.fresh(),
                complaint,
                less,
                new Remedies.Terms(Complaint.PostageBy.WORKSHOP, Optional.empty(), "We are sorry."),
                DemoStock.MAKER);
    }

    private Instant noon(LocalDate day, int hour) {
        return day.atTime(hour, 0).atZone(workshop.zone()).toInstant();
    }
}
