package puzzleworkshop.papers;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.drawn.MoneySheet;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/**
 * Issues invoices and credit notes. Every change holds the order's row, so that two people cannot
 * invoice or refund the same order twice; numbers are taken by the database and have no gaps in a year.
 */
@Service
public class Invoices {

    private static final Function<Invoice, Long> NUMBER = paper -> paper.id().value();

    private final PaperStore store;
    private final OrderAccounts accounts;
    private final Bookings bookings;
    private final Orders orders;
    private final PaperDrafts drafts;
    private final KeptPaperStore kept;
    private final Workshop workshop;
    private final Formatter figures;
    private final Clock clock;

    Invoices(
            PaperStore store,
            OrderAccounts accounts,
            Bookings bookings,
            Orders orders,
            PaperDrafts drafts,
            KeptPaperStore kept,
            Workshop workshop,
            Formatter figures,
            Clock clock) {
        this.store = store;
        this.accounts = accounts;
        this.bookings = bookings;
        this.orders = orders;
        this.drafts = drafts;
        this.kept = kept;
        this.workshop = workshop;
        this.figures = figures;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public PaperSettings settings() {
        return store.settings();
    }

    @Transactional
    public void save(PaperSettings settings) {
        if (settings.dueDays() < 0 || settings.dueDays() > 365) {
            throw new Refused("papers.settings.due-days");
        }
        store.save(settings);
    }

    /** Papers, payments and what is open for one order. */
    @Transactional(readOnly = true)
    public OrderAccount account(OrderId order) {
        return accounts.of(order);
    }

    /** The same for an order as it was read. */
    @Transactional(readOnly = true)
    public OrderAccount account(Order order) {
        return accounts.of(order);
    }

    @Transactional(readOnly = true)
    public Optional<Invoice> find(InvoiceId id) {
        return store.find(id);
    }

    /** Issued from the first to the last day, both included. */
    @Transactional(readOnly = true)
    public List<Invoice> issued(LocalDate from, LocalDate to) {
        return store.issued(from, to);
    }

    /**
     * Issues the invoice of an order at the price that was agreed.
     *
     * @throws Refused when it is a quote or given up, or an invoice stands already
     */
    @Books
    @Transactional
    public Invoice issue(BookingKey key, OrderId id, String who) {
        return bookings.once(key, "issue the invoice of order " + id, () -> issueNow(id, who), NUMBER, this::made);
    }

    private Invoice issueNow(OrderId id, String who) {
        Order order = orders.lock(id);
        if (order.state() == OrderState.QUOTE || order.state() == OrderState.CANCELLED) {
            throw new Refused("papers.invoice.not-confirmed", order.number());
        }
        Optional<Invoice> standing = account(id).standing();
        if (standing.isPresent()) {
            throw new Refused("papers.invoice.stands", standing.get().number());
        }
        Invoice paper = draft(order, "");
        if (!paper.gross().sameAs(order.price().gross())) {
            throw new IllegalStateException("The invoice of order " + order.number() + " does not add up to its price");
        }
        Invoice issued = store.find(store.add(paper, who, clock.instant())).orElseThrow();
        keep(issued, "", false, who);
        orders.note(id, Sentence.of("papers.history.invoiced", issued.number(), issued.gross()), who);
        accounts.openOrClose(order, who);
        return issued;
    }

    /** What an invoice should have and would not, were it issued now. */
    @Transactional(readOnly = true)
    public List<Sentence> missing(OrderId id) {
        Order order = orders.get(id);
        Invoice draft = draft(order, "");
        PaperSettings settings = store.settings();
        List<Sentence> missing = new ArrayList<>();
        order.next().ifPresent(stage -> missing.add(Sentence.of("papers.missing.stage", Sentence.of(stage.textKey()))));
        if (workshop.profile().address().isBlank()) {
            missing.add(Sentence.of("papers.missing.address"));
        }
        if (settings.taxNumber().isBlank() && draft.totals().mode() != VatMode.NONE) {
            missing.add(Sentence.of("papers.missing.tax-number"));
        }
        if (settings.bank().isBlank() && account(id).with(draft).open().isPositive()) {
            missing.add(Sentence.of("papers.missing.bank"));
        }
        if (order.customer().address().isBlank()) {
            missing.add(Sentence.of("papers.missing.customer", order.customer().name()));
        }
        return List.copyOf(missing);
    }

    /** The invoice of an order as it would be issued now. */
    Invoice draft(Order order, String number) {
        PriceAnswer price = orders.keptPrice(order.id()).answer();
        List<Invoice.Line> lines = InvoiceLines.of(PriceLines.of(order, price, figures), price.vat());
        return paper(number, order, store.settings(), price.vat(), lines);
    }

    /** Sets the paper and keeps it for good, with what had come until its day of issue. */
    byte[] keep(Invoice paper, String more, boolean late, String who) {
        Optional<String> corrects = paper.corrects().flatMap(store::find).map(Invoice::number);
        MoneySheet sheet = drafts.issued(
                paper,
                corrects,
                orders.get(paper.order().id()),
                account(paper.order().id()).whenIssued(paper),
                store.settings(),
                more);
        byte[] pdf = drafts.pdf(sheet);
        kept.keepIssued(paper, sheet.says(), pdf, late, who, clock.instant());
        return pdf;
    }

    /**
     * Takes back an invoice or a part of it.
     *
     * @param amounts gross, for each tax rate on the invoice that is credited; above zero and not more than what of that
     *     rate was not yet credited
     */
    @Books
    @Transactional
    public Invoice credit(BookingKey key, InvoiceId id, Map<Percent, Money> amounts, String reason, String who) {
        String said = "credit " + new TreeMap<>(amounts) + " of invoice " + id + ": " + reason;
        return bookings.once(key, said, () -> creditNow(id, amounts, reason, who), NUMBER, this::made);
    }

    private Invoice creditNow(InvoiceId id, Map<Percent, Money> amounts, String reason, String who) {
        Invoice invoice = store.find(id).orElseThrow(() -> new Refused("papers.unknown"));
        Order order = orders.lock(invoice.order().id());
        if (invoice.series() != Invoice.Series.INVOICE || reason.isBlank()) {
            throw new Refused("papers.credit.reason");
        }
        String part = figures.text("papers.credit.part", invoice.number());
        List<Invoice.Line> lines =
                CreditLines.of(invoice, account(invoice.order().id()).restByRate(invoice), amounts, part);
        Invoice.Totals given = invoice.totals();
        Invoice paper = new Invoice(
                new InvoiceId(0),
                Invoice.Series.CREDIT_NOTE,
                "",
                invoice.order(),
                Optional.of(new Invoice.Correction(id, reason.strip())),
                today(),
                today(),
                invoice.parties(),
                Invoice.Totals.of(lines, given.mode(), given.rounding(), invoice.currency()),
                lines);
        Invoice issued = store.find(store.add(paper, who, clock.instant())).orElseThrow();
        keep(issued, "", false, who);
        orders.note(
                order.id(),
                Sentence.of("papers.history.credited", issued.number(), invoice.number(), issued.gross()),
                who);
        accounts.openOrClose(order, who);
        return issued;
    }

    private Invoice paper(String number, Order order, PaperSettings settings, VatSum vat, List<Invoice.Line> lines) {
        WorkshopProfile profile = workshop.profile();
        String seller = String.join("\n", profile.name(), profile.address(), profile.email(), profile.phone())
                .replaceAll("\n+", "\n")
                .strip();
        String customer = (order.customer().name() + "\n" + order.customer().address()).strip();
        return new Invoice(
                new InvoiceId(0),
                Invoice.Series.INVOICE,
                number,
                order.ref(),
                Optional.empty(),
                today(),
                today().plusDays(settings.dueDays()),
                new Invoice.Parties(seller, settings.taxNumber(), customer),
                Invoice.Totals.of(lines, vat.mode(), vat.rounding(), vat.currency()),
                lines);
    }

    private LocalDate today() {
        return workshop.today();
    }

    private Invoice made(long id) {
        return store.find(new InvoiceId(id)).orElseThrow();
    }
}
