package puzzleworkshop.papers;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.drawn.MoneySheet;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/**
 * Quotes, invoices, credit notes and statements as PDF. What was given away is given again byte for byte, whatever was
 * paid or changed since; only a statement shows how the account stands now.
 */
@Service
public class MoneyPapers {

    private final Orders orders;
    private final Invoices invoices;
    private final PaperDrafts drafts;
    private final KeptPaperStore kept;
    private final Workshop workshop;
    private final Formatter figures;
    private final SignedIn signedIn;
    private final Clock clock;

    MoneyPapers(
            Orders orders,
            Invoices invoices,
            PaperDrafts drafts,
            KeptPaperStore kept,
            Workshop workshop,
            Formatter figures,
            SignedIn signedIn,
            Clock clock) {
        this.orders = orders;
        this.invoices = invoices;
        this.drafts = drafts;
        this.kept = kept;
        this.workshop = workshop;
        this.figures = figures;
        this.signedIn = signedIn;
        this.clock = clock;
    }

    /**
     * The quote of an order. Given a first time it is kept; as long as the offer is the same, and for good once it was
     * taken, the same paper comes again. A changed offer gets a quote of its own.
     */
    @Transactional
    public byte[] quote(OrderId id) {
        Order order = orders.lock(id);
        List<KeptPaper> given = kept.quotes(id);
        PriceAnswer price = orders.keptPrice(id).answer();
        String about = digest(order, price);
        if (!given.isEmpty()) {
            KeptPaper last = given.getLast();
            if (order.state() != OrderState.QUOTE || last.about().equals(about)) {
                return last.pdf();
            }
        }
        int running = given.size() + 1;
        MoneySheet sheet = drafts.quote(order, price, invoices.settings(), running);
        byte[] pdf = drafts.pdf(sheet);
        kept.keepQuote(id, running, about, sheet.says(), pdf, signedIn.name(), clock.instant());
        return pdf;
    }

    /** The quotes that were given for an order, oldest first. */
    @Transactional(readOnly = true)
    public List<KeptPaper> quotes(OrderId id) {
        return kept.quotes(id);
    }

    /**
     * An issued paper as it was issued. One from before papers were kept is set once, with what had come until its day of
     * issue, says so, and stands from then on.
     */
    @Transactional
    public byte[] issued(InvoiceId id) {
        Optional<KeptPaper> paper = kept.issued(id);
        if (paper.isPresent()) {
            return paper.get().pdf();
        }
        Invoice invoice = invoices.find(id).orElseThrow(() -> new Refused("papers.unknown"));
        orders.lock(invoice.order().id());
        return kept.issued(id).map(KeptPaper::pdf).orElseGet(() -> {
            String late = figures.text("papers.kept-late", PaperDrafts.day(today()));
            return invoices.keep(invoice, late, true, signedIn.name());
        });
    }

    /** What an invoice would look like; no number is taken and nothing is kept. */
    @Transactional(readOnly = true)
    public byte[] preview(OrderId id) {
        Invoice draft = invoices.draft(orders.get(id), figures.text("papers.preview.number"));
        MoneySheet sheet = drafts.issued(
                draft,
                Optional.empty(),
                orders.get(id),
                invoices.account(id).with(draft),
                invoices.settings(),
                figures.text("papers.preview"));
        return drafts.pdf(sheet);
    }

    /** How the account of an order stands today. */
    @Transactional(readOnly = true)
    public byte[] statement(OrderId id) {
        Order order = orders.get(id);
        return drafts.pdf(drafts.statement(order, invoices.account(id), invoices.settings(), today()));
    }

    private LocalDate today() {
        return LocalDate.now(clock.withZone(workshop.zone()));
    }

    /** Of everything an offer says about the order; words of the workshop around it may change without a new quote. */
    private static String digest(Order order, PriceAnswer price) {
        String offer = String.join(
                "\n",
                order.customer().name(),
                order.customer().address(),
                order.puzzle().toString(),
                Integer.toString(order.quantity()),
                Boolean.toString(order.rush()),
                order.validUntil().toString(),
                order.promised().toString(),
                price.day().toString(),
                price.unitPrice().toString(),
                price.discount().toString(),
                price.shipping().toString(),
                price.vat().toString(),
                price.toPay().toString());
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(offer.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
