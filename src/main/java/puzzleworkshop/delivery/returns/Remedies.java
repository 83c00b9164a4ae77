package puzzleworkshop.delivery.returns;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.delivery.returns.Complaint.Decision;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.OrderAccount;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Stage;

/**
 * What is done about a complaint. A remake is booked by the bench (its loss stands in the order's figures), a refund by the
 * papers (a credit note), postage that the workshop bears counts with the order's losses.
 */
@Service
public class Remedies {

    private final ComplaintStore store;
    private final Orders orders;
    private final Bench bench;
    private final Invoices invoices;
    private final Bookings bookings;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Remedies(
            ComplaintStore store,
            Orders orders,
            Bench bench,
            Invoices invoices,
            Bookings bookings,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.orders = orders;
        this.bench = bench;
        this.invoices = invoices;
        this.bookings = bookings;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** What is decided, besides the remedy: who bears postage, what the workshop bears of it, words to the customer. */
    public record Terms(PostageBy postageBy, Optional<Money> postage, String answer) {}

    /** Makes the puzzle again from the print on; what the first one took is booked as lost. */
    @Books
    @Transactional
    public void remake(BookingKey key, long complaint, Terms terms, String who) {
        bookings.once(key, "remake for complaint " + complaint + ": " + terms, () -> {
            Complaint open = open(complaint);
            bench.wentWrong(
                    key.part("lost"),
                    open.order().id(),
                    new Rework.Report(
                            Rework.What.RETURNED, Stage.PRINT, open.words(), Rework.Board.KEPT, Optional.empty()),
                    who);
            decide(open, Remedy.REMAKE, terms, Optional.empty(), who);
        });
    }

    /**
     * Gives money back by a credit note on the invoice that stands.
     *
     * @param amount with tax, above zero and not more than what is left of the invoice; of several tax rates each bears its share
     */
    @Books
    @Transactional
    public void refund(BookingKey key, long complaint, Money amount, Terms terms, String who) {
        bookings.once(key, "refund " + amount.rounded() + " for complaint " + complaint + ": " + terms, () -> {
            Complaint open = open(complaint);
            OrderAccount account = invoices.account(open.order().id());
            Invoice standing = account.standing()
                    .orElseThrow(() -> new Refused(
                            "delivery.refund.no-invoice", open.order().number()));
            if (!amount.isPositive() || amount.rounded().compareTo(account.rest(standing)) > 0) {
                throw new Refused("delivery.refund.range", account.rest(standing));
            }
            String why = open.words().isBlank() ? open.reason().name().toLowerCase(Locale.ROOT) : open.words();
            Invoice note = invoices.credit(
                    key.part("credit"), standing.id(), shares(account, standing, amount.rounded()), why, who);
            decide(open, Remedy.REFUND, terms, Optional.of(note.id().value()), who);
        });
    }

    private static Map<Percent, Money> shares(OrderAccount account, Invoice invoice, Money amount) {
        List<VatSum.OfRate> rest = account.restByRate(invoice).stream()
                .filter(rate -> rate.gross().isPositive())
                .toList();
        List<BigDecimal> weights =
                rest.stream().map(rate -> rate.gross().amount()).toList();
        List<Money> parts = amount.allocate(weights);
        Map<Percent, Money> shares = new LinkedHashMap<>();
        for (int i = 0; i < rest.size(); i++) {
            if (parts.get(i).isPositive()) {
                shares.put(rest.get(i).rate(), parts.get(i));
            }
        }
        return shares;
    }

    /** One piece is made again (on the order's page), or nothing is done. */
    @Transactional
    public void settle(long complaint, Remedy remedy, Terms terms, String who) {
        if (remedy == Remedy.REMAKE || remedy == Remedy.REFUND) {
            throw new IllegalArgumentException("A " + remedy + " is booked");
        }
        decide(open(complaint), remedy, terms, Optional.empty(), who);
    }

    /** The order's row is held first, as everywhere. */
    private Complaint open(long id) {
        Complaint asked = store.find(id).orElseThrow(() -> new Refused("delivery.complaint.unknown"));
        orders.lock(asked.order().id());
        Complaint seen = store.lock(id).orElseThrow(() -> new Refused("delivery.complaint.unknown"));
        if (seen.decision().isPresent()) {
            Decision done = seen.decision().get();
            throw new Refused(
                    "delivery.complaint.decided", Sentence.of(done.remedy().textKey()), done.who(), done.at());
        }
        return seen;
    }

    private void decide(Complaint complaint, Remedy remedy, Terms terms, Optional<Long> credit, String who) {
        Optional<Money> postage = terms.postageBy() == PostageBy.WORKSHOP ? terms.postage() : Optional.empty();
        if (postage.filter(Money::isNegative).isPresent()) {
            throw new Refused("delivery.complaint.postage");
        }
        store.decide(
                complaint.id(),
                new Decision(
                        remedy,
                        terms.postageBy(),
                        postage.map(Money::rounded),
                        terms.answer().strip(),
                        clock.instant(),
                        who),
                credit);
        orders.note(
                complaint.order().id(),
                Sentence.of(
                        "delivery.history.decided",
                        Sentence.of(remedy.textKey()),
                        Sentence.of(terms.postageBy().textKey())),
                who);
        afterCommit.tell(new ComplaintChanged(complaint.order().id()));
    }
}
