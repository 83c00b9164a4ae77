package puzzleworkshop.papers;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.papers.drawn.MoneySheet;
import puzzleworkshop.papers.drawn.MoneySheet.Column;
import puzzleworkshop.papers.drawn.MoneySheet.Pair;
import puzzleworkshop.papers.drawn.MoneySheet.Sum;
import puzzleworkshop.papers.drawn.MoneySheetPdf;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Puts together what stands on a paper, from the order, its account and the settings of the moment. */
@Component
class PaperDrafts {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Texts.LOCALE);

    private final PaperFaces faces;
    private final PuzzleDifficulty difficulty;
    private final Workshop workshop;
    private final Formatter figures;

    PaperDrafts(PaperFaces faces, PuzzleDifficulty difficulty, Workshop workshop, Formatter figures) {
        this.faces = faces;
        this.difficulty = difficulty;
        this.workshop = workshop;
        this.figures = figures;
    }

    byte[] pdf(MoneySheet sheet) {
        return MoneySheetPdf.write(sheet, figures);
    }

    /**
     * The offer as it was agreed, with the day until which it holds.
     *
     * @param running 1 for the first quote of the order; a later one says which it is
     */
    MoneySheet quote(Order order, PriceAnswer price, PaperSettings settings, int running) {
        List<Pair> facts = new ArrayList<>();
        facts.add(pair("papers.fact.date", day(price.day())));
        facts.add(pair("papers.fact.valid-until", day(order.validUntil())));
        order.promised().ifPresent(day -> facts.add(pair("papers.fact.ready", day(day))));
        facts.add(pair("orders.fact.hard", figures.text(difficulty.of(order).textKey())));
        List<Pair> notes = new ArrayList<>(taxNotes(price.vat().mode()));
        notes.add(new Pair(
                figures.text("papers.quote.valid.title"), figures.text("papers.quote.valid", day(order.validUntil()))));
        if (!settings.quoteTerms().isEmpty()) {
            notes.add(new Pair(figures.text("papers.terms"), settings.quoteTerms()));
        }
        VatMode mode = price.vat().mode();
        List<List<String>> rows = PriceLines.of(order, price, figures).stream()
                .map(line -> priceRow(
                        mode,
                        line.what(),
                        figures.number(line.quantity().doubleValue(), 2),
                        figures.money(line.unitPrice()),
                        figures.percent(line.rate()),
                        figures.money(line.amount())))
                .toList();
        List<Sum> sums = new ArrayList<>(taxSums(price.vat()));
        sums.add(new Sum(figures.text("papers.sum.total"), price.toPay(), true));
        String title = running == 1
                ? figures.text("papers.quote.title", order.number())
                : figures.text("papers.quote.title-again", order.number(), running);
        return new MoneySheet(
                title,
                facts,
                seller(),
                lines(order.customer().name() + "\n" + order.customer().address()),
                figures.text("papers.quote.lead"),
                priceColumns(mode),
                rows,
                sums,
                notes,
                face(order),
                logo(settings));
    }

    /**
     * An invoice or a credit note.
     *
     * @param account as it stood on the day of issue: what had come until then stands on an invoice
     * @param more a word below that says what kind of copy it is; may be empty
     */
    MoneySheet issued(
            Invoice invoice,
            Optional<String> corrects,
            Order order,
            OrderAccount account,
            PaperSettings settings,
            String more) {
        boolean credit = invoice.series() == Invoice.Series.CREDIT_NOTE;
        List<Pair> facts = new ArrayList<>();
        facts.add(pair("papers.fact.date", day(invoice.issuedOn())));
        facts.add(pair("papers.fact.order", invoice.order().number()));
        corrects.ifPresent(number -> facts.add(pair("papers.fact.corrects", number)));
        if (!credit) {
            order.handedOverAt()
                    .map(at -> at.atZone(workshop.zone()).toLocalDate())
                    .filter(on -> !on.isAfter(invoice.issuedOn()))
                    .ifPresent(on -> facts.add(pair("papers.fact.delivered", day(on))));
            if (account.open().isPositive()) {
                facts.add(pair("papers.fact.due", day(invoice.dueOn())));
            }
        }
        if (!invoice.parties().taxNumber().isEmpty()) {
            facts.add(pair("papers.fact.tax-number", invoice.parties().taxNumber()));
        }
        List<List<String>> rows = invoice.lines().stream()
                .map(line -> priceRow(
                        invoice.totals().mode(),
                        line.what(),
                        figures.number(line.quantity().doubleValue(), 2),
                        figures.money(line.unitPrice()),
                        figures.percent(line.vatRate()),
                        figures.money(invoice.totals().mode() == VatMode.ON_TOP ? line.net() : line.gross())))
                .toList();
        return new MoneySheet(
                figures.text(credit ? "papers.credit.title" : "papers.invoice.title", invoice.number()),
                facts,
                lines(invoice.parties().seller()),
                lines(invoice.parties().customer()),
                invoice.reason(),
                priceColumns(invoice.totals().mode()),
                rows,
                sums(invoice, account),
                notes(invoice, account, settings, more),
                credit ? Optional.empty() : face(order),
                logo(settings));
    }

    /** Every paper and every payment of an order with the balance after it. */
    MoneySheet statement(Order order, OrderAccount account, PaperSettings settings, LocalDate today) {
        List<List<String>> rows = new ArrayList<>();
        for (OrderAccount.Entry entry : account.entries()) {
            String what = entry.paper()
                    .map(paper -> figures.text(paper.series().textKey()) + " " + paper.number())
                    .or(() -> entry.payment().map(this::words))
                    .orElseThrow();
            rows.add(List.of(day(entry.on()), what, figures.money(entry.owed()), figures.money(entry.balance())));
        }
        List<Pair> facts = List.of(pair("papers.fact.date", day(today)), pair("papers.fact.order", order.number()));
        List<Sum> sums = List.of(
                new Sum(figures.text("papers.panel.due"), account.due(), false),
                new Sum(
                        figures.text("papers.panel.received"),
                        account.received().negated(),
                        false),
                new Sum(
                        figures.text(account.open().isNegative() ? "papers.sum.owed-back" : "papers.sum.open"),
                        account.open().isNegative() ? account.open().negated() : account.open(),
                        true));
        List<Pair> notes = new ArrayList<>();
        if (!settings.bank().isEmpty() && account.open().isPositive()) {
            String number = account.standing().map(Invoice::number).orElse(order.number());
            notes.add(new Pair(figures.text("papers.bank", number), settings.bank()));
        }
        return new MoneySheet(
                figures.text("papers.statement.title", order.number()),
                facts,
                seller(),
                lines(order.customer().name() + "\n" + order.customer().address()),
                account.papers().isEmpty() ? figures.text("papers.statement.before-invoice") : "",
                List.of(
                        new Column(figures.text("papers.column.day"), 3.4f, false),
                        new Column(figures.text("papers.column.what"), 8, false),
                        new Column(figures.text("papers.column.amount"), 3, true),
                        new Column(figures.text("papers.column.balance"), 3, true)),
                rows,
                sums,
                notes,
                Optional.empty(),
                logo(settings));
    }

    private String words(Payment payment) {
        String words = figures.text(payment.kind().textKey()) + ", "
                + figures.text(payment.way().textKey());
        return payment.kind().takesBack() ? words + ": " + payment.note() : words;
    }

    List<String> seller() {
        WorkshopProfile profile = workshop.profile();
        return lines(String.join("\n", profile.name(), profile.address(), profile.email(), profile.phone()));
    }

    /** With its year, since papers are kept. */
    static String day(LocalDate day) {
        return day.format(DAY);
    }

    private List<Sum> sums(Invoice invoice, OrderAccount account) {
        List<Sum> sums = new ArrayList<>(taxSums(invoice.byRate()));
        boolean credit = invoice.series() == Invoice.Series.CREDIT_NOTE;
        sums.add(new Sum(figures.text(credit ? "papers.sum.credited" : "papers.sum.total"), invoice.gross(), true));
        if (!credit && !account.received().isZero()) {
            sums.add(new Sum(
                    figures.text("papers.sum.received"), account.received().negated(), false));
            sums.add(new Sum(figures.text("papers.sum.open"), invoice.gross().minus(account.received()), true));
        }
        return sums;
    }

    private List<Pair> notes(Invoice invoice, OrderAccount account, PaperSettings settings, String more) {
        List<Pair> notes = new ArrayList<>(taxNotes(invoice.totals().mode()));
        if (invoice.series() == Invoice.Series.INVOICE) {
            if (invoice.totals().mode() != VatMode.NONE) {
                notes.add(new Pair(
                        "",
                        figures.text(
                                "papers.tax-rounded",
                                figures.text(invoice.totals().rounding().textKey()))));
            }
            if (!settings.bank().isEmpty() && account.open().isPositive()) {
                notes.add(new Pair(figures.text("papers.bank", invoice.number()), settings.bank()));
            }
            if (!settings.invoiceTerms().isEmpty()) {
                notes.add(new Pair(figures.text("papers.terms"), settings.invoiceTerms()));
            }
        }
        if (!more.isEmpty()) {
            notes.add(new Pair("", more));
        }
        return notes;
    }

    private List<Column> priceColumns(VatMode mode) {
        boolean taxed = mode != VatMode.NONE;
        String suffix = taxed ? "." + mode.name() : "";
        List<Column> columns = new ArrayList<>();
        columns.add(new Column(figures.text("papers.column.what"), 10, false));
        columns.add(new Column(figures.text("papers.column.quantity"), taxed ? 1.8f : 2, true));
        columns.add(new Column(figures.text("papers.column.each" + suffix), 3, true));
        if (taxed) {
            columns.add(new Column(figures.text("papers.column.vat"), 1.6f, true));
        }
        columns.add(new Column(figures.text("papers.column.amount" + suffix), 3, true));
        return columns;
    }

    private static List<String> priceRow(
            VatMode mode, String what, String quantity, String each, String rate, String amount) {
        return mode == VatMode.NONE
                ? List.of(what, quantity, each, amount)
                : List.of(what, quantity, each, rate, amount);
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
        return Optional.of(faces.of(order));
    }

    private static Optional<byte[]> logo(PaperSettings settings) {
        return settings.hasLogo() ? Optional.of(settings.logo()) : Optional.empty();
    }

    private static List<String> lines(String text) {
        return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }

    private Pair pair(String key, String value) {
        return new Pair(figures.text(key), value);
    }
}
