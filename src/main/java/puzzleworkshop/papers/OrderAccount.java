package puzzleworkshop.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import puzzleworkshop.measure.Money;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * The money of one order.
 *
 * @param agreed what the customer was told to pay; nothing when the order was given up
 * @param papers invoices and credit notes, oldest first
 * @param payments oldest first
 */
public record OrderAccount(Money agreed, List<Invoice> papers, List<Payment> payments) {

    public OrderAccount {
        papers = List.copyOf(papers);
        payments = List.copyOf(payments);
    }

    /**
     * One line of a statement.
     *
     * @param owed what it adds to what the customer owes
     * @param balance what is open after it
     */
    public record Entry(LocalDate on, Optional<Invoice> paper, Optional<Payment> payment, Money owed, Money balance) {}

    /** Papers and payments by day, papers of a day first; before any invoice the agreed price is what is owed. */
    public List<Entry> entries() {
        List<Entry> bare = new ArrayList<>();
        Money zero = Money.zero(agreed.currency());
        papers.forEach(paper ->
                bare.add(new Entry(paper.issuedOn(), Optional.of(paper), Optional.empty(), paper.owed(), zero)));
        payments.forEach(payment -> bare.add(new Entry(
                payment.paidOn(),
                Optional.empty(),
                Optional.of(payment),
                payment.received().negated(),
                zero)));
        bare.sort(Comparator.comparing(Entry::on));
        List<Entry> entries = new ArrayList<>();
        Money balance = papers.isEmpty() ? agreed : zero;
        for (Entry entry : bare) {
            balance = balance.plus(entry.owed());
            entries.add(new Entry(entry.on(), entry.paper(), entry.payment(), entry.owed(), balance));
        }
        return entries;
    }

    /** As it stood on the day a paper was issued: later payments and papers left out. */
    OrderAccount whenIssued(Invoice paper) {
        return new OrderAccount(
                agreed,
                papers.stream()
                        .filter(one -> one.id().value() <= paper.id().value())
                        .toList(),
                payments.stream()
                        .filter(payment -> !payment.paidOn().isAfter(paper.issuedOn()))
                        .toList());
    }

    /** With a paper that is not issued yet. */
    OrderAccount with(Invoice draft) {
        List<Invoice> more = new ArrayList<>(papers);
        more.add(draft);
        return new OrderAccount(agreed, more, payments);
    }

    public Money received() {
        return Money.sum(payments.stream().map(Payment::received).toList(), agreed.currency());
    }

    /** Whether a line was mistyped and undone. */
    public boolean isTakenBack(Payment payment) {
        return payments.stream().anyMatch(line -> line.takesBack().equals(OptionalLong.of(payment.number())));
    }

    /** Grows with every line on it: what a form saw when it opened. */
    public int lines() {
        return papers.size() + payments.size();
    }

    /** Invoices less credit notes. */
    public Money invoiced() {
        return Money.sum(papers.stream().map(Invoice::owed).toList(), agreed.currency());
    }

    /** What the customer owes in the end: what was invoiced, or before any invoice what was agreed. */
    public Money due() {
        return papers.isEmpty() ? agreed : invoiced();
    }

    /** Still to be paid; below zero when the workshop owes the customer. */
    public Money open() {
        return due().minus(received());
    }

    /** The invoice that stands: not credited in full. One over nothing cannot be credited; it stands. */
    public Optional<Invoice> standing() {
        return papers.stream()
                .filter(paper -> paper.series() == Invoice.Series.INVOICE
                        && (rest(paper).isPositive() || paper.gross().isZero()))
                .findFirst();
    }

    /** What of an invoice was not credited. */
    public Money rest(Invoice invoice) {
        Money credited = Money.sum(
                papers.stream()
                        .filter(paper -> paper.corrects().equals(Optional.of(invoice.id())))
                        .map(Invoice::gross)
                        .toList(),
                agreed.currency());
        return invoice.gross().minus(credited);
    }

    /** What of an invoice was not credited, for each of its tax rates, lowest rate first; rates with nothing left too. */
    public List<VatSum.OfRate> restByRate(Invoice invoice) {
        List<VatSum.OfRate> credited = papers.stream()
                .filter(paper -> paper.corrects().equals(Optional.of(invoice.id())))
                .flatMap(note -> note.byRate().perRate().stream())
                .toList();
        return invoice.byRate().perRate().stream()
                .map(rate -> credited.stream()
                        .filter(of -> of.rate().equals(rate.rate()))
                        .reduce(rate, VatSum.OfRate::minus))
                .toList();
    }

    public boolean isOverdue(LocalDate today) {
        return open().isPositive()
                && standing().map(invoice -> invoice.dueOn().isBefore(today)).orElse(false);
    }
}
