package puzzleworkshop.papers;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.FacePainter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.MoneySheet.Pair;
import puzzleworkshop.papers.MoneySheet.Row;
import puzzleworkshop.papers.MoneySheet.Sum;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.tax.VatMode;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Quotes, invoices and credit notes as PDF. */
@Service
public class MoneyPapers {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Texts.LOCALE);
    private static final int FACE_PIXELS = 720;

    private final Orders orders;
    private final Invoices invoices;
    private final FacePainter faces;
    private final Workshop workshop;
    private final Formatter figures;

    MoneyPapers(Orders orders, Invoices invoices, FacePainter faces, Workshop workshop, Formatter figures) {
        this.orders = orders;
        this.invoices = invoices;
        this.faces = faces;
        this.workshop = workshop;
        this.figures = figures;
    }

    /** The offer as it was agreed, with the day until which it holds. */
    @Transactional(readOnly = true)
    public byte[] quote(OrderId id) {
        Order order = orders.get(id);
        PriceAnswer price = orders.keptPrice(id).answer();
        PaperSettings settings = invoices.settings();
        List<Pair> facts = new ArrayList<>();
        facts.add(pair("papers.fact.date", day(price.day())));
        facts.add(pair("papers.fact.valid-until", day(order.validUntil())));
        order.promised().ifPresent(day -> facts.add(pair("papers.fact.ready", day(day))));
        List<Pair> notes = new ArrayList<>(taxNotes(price.vat().mode()));
        notes.add(new Pair(
                figures.text("papers.quote.valid.title"), figures.text("papers.quote.valid", day(order.validUntil()))));
        if (!settings.quoteTerms().isEmpty()) {
            notes.add(new Pair(figures.text("papers.terms"), settings.quoteTerms()));
        }
        List<Row> rows = PriceLines.of(order, price, figures).stream()
                .map(line -> new Row(
                        line.what(),
                        figures.number(line.quantity().doubleValue(), 2),
                        line.unitPrice(),
                        line.amount(),
                        line.rate()))
                .toList();
        List<Sum> sums = new ArrayList<>(taxSums(price.vat()));
        sums.add(new Sum(figures.text("papers.sum.total"), price.toPay(), true));
        return MoneySheetPdf.write(
                new MoneySheet(
                        figures.text("papers.quote.title", order.number()),
                        facts,
                        seller(),
                        customer(order),
                        figures.text("papers.quote.lead"),
                        rows,
                        price.vat().mode(),
                        sums,
                        notes,
                        face(order),
                        logo(settings)),
                figures);
    }

    /** An issued paper as it stands, with what was received until now on an invoice. */
    @Transactional(readOnly = true)
    public byte[] issued(InvoiceId id) {
        Invoice invoice = invoices.find(id).orElseThrow(() -> new Refused("papers.unknown"));
        Order order = orders.get(invoice.order());
        OrderAccount account = invoices.account(invoice.order());
        PaperSettings settings = invoices.settings();
        boolean credit = invoice.series() == Invoice.Series.CREDIT_NOTE;
        List<Pair> facts = new ArrayList<>();
        facts.add(pair("papers.fact.date", day(invoice.issuedOn())));
        facts.add(pair("papers.fact.order", invoice.orderNumber()));
        if (credit) {
            invoice.corrects()
                    .flatMap(invoices::find)
                    .ifPresent(to -> facts.add(pair("papers.fact.corrects", to.number())));
        } else {
            order.handedOverAt()
                    .ifPresent(at -> facts.add(pair(
                            "papers.fact.delivered",
                            day(at.atZone(workshop.zone()).toLocalDate()))));
            if (account.open().isPositive()) {
                facts.add(pair("papers.fact.due", day(invoice.dueOn())));
            }
        }
        if (!invoice.taxNumber().isEmpty()) {
            facts.add(pair("papers.fact.tax-number", invoice.taxNumber()));
        }
        List<Row> rows = invoice.lines().stream()
                .map(line -> new Row(
                        line.what(),
                        figures.number(line.quantity().doubleValue(), 2),
                        line.unitPrice(),
                        invoice.vatMode() == VatMode.ON_TOP ? line.net() : line.gross(),
                        line.vatRate()))
                .toList();
        return MoneySheetPdf.write(
                new MoneySheet(
                        figures.text(credit ? "papers.credit.title" : "papers.invoice.title", invoice.number()),
                        facts,
                        lines(invoice.seller()),
                        lines(invoice.customer()),
                        invoice.reason(),
                        rows,
                        invoice.vatMode(),
                        sums(invoice, account),
                        notes(invoice, account, settings),
                        credit ? Optional.empty() : face(order),
                        logo(settings)),
                figures);
    }

    private List<Sum> sums(Invoice invoice, OrderAccount account) {
        List<Sum> sums = new ArrayList<>(taxSums(invoice.byRate()));
        boolean credit = invoice.series() == Invoice.Series.CREDIT_NOTE;
        sums.add(new Sum(figures.text(credit ? "papers.sum.credited" : "papers.sum.total"), invoice.gross(), true));
        if (!credit && !account.received().isZero()) {
            sums.add(new Sum(
                    figures.text("papers.sum.received"), account.received().negated(), false));
            sums.add(new Sum(figures.text("papers.sum.open"), account.open(), true));
        }
        return sums;
    }

    private List<Pair> notes(Invoice invoice, OrderAccount account, PaperSettings settings) {
        List<Pair> notes = new ArrayList<>(taxNotes(invoice.vatMode()));
        if (invoice.series() == Invoice.Series.INVOICE) {
            if (invoice.vatMode() != VatMode.NONE) {
                notes.add(new Pair(
                        "",
                        figures.text(
                                "papers.tax-rounded",
                                figures.text(invoice.vatRounding().textKey()))));
            }
            if (!settings.bank().isEmpty() && account.open().isPositive()) {
                notes.add(new Pair(figures.text("papers.bank", invoice.number()), settings.bank()));
            }
            if (!settings.invoiceTerms().isEmpty()) {
                notes.add(new Pair(figures.text("papers.terms"), settings.invoiceTerms()));
            }
        }
        return notes;
    }

    private List<Pair> taxNotes(VatMode mode) {
        return mode == VatMode.NONE ? List.of(new Pair("", figures.text("papers.no-tax"))) : List.of();
    }

    /** Net and tax for each rate; nothing when no tax is charged. */
    private List<Sum> taxSums(VatSum vat) {
        List<Sum> sums = new ArrayList<>();
        if (vat.mode() != VatMode.NONE) {
            sums.add(new Sum(figures.text("papers.sum.net"), vat.net(), false));
            vat.perRate()
                    .forEach(rate -> sums.add(
                            new Sum(figures.text("papers.sum.vat", rate.rate(), rate.net()), rate.vat(), false)));
        }
        return sums;
    }

    private Optional<byte[]> face(Order order) {
        return Optional.of(faces.jpeg(order.puzzle(), order.picture(), FACE_PIXELS));
    }

    private static Optional<byte[]> logo(PaperSettings settings) {
        return settings.hasLogo() ? Optional.of(settings.logo()) : Optional.empty();
    }

    private List<String> seller() {
        WorkshopProfile profile = workshop.profile();
        return lines(String.join("\n", profile.name(), profile.address(), profile.email(), profile.phone()));
    }

    private static List<String> customer(Order order) {
        return lines(order.customer().name() + "\n" + order.customer().address());
    }

    private static List<String> lines(String text) {
        return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }

    /** With its year, since papers are kept. */
    private static String day(LocalDate day) {
        return day.format(DAY);
    }

    private Pair pair(String key, String value) {
        return new Pair(figures.text(key), value);
    }
}
