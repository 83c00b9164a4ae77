package puzzleworkshop.papers;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;

@Repository
class PaperStore {

    private final JdbcClient jdbc;

    PaperStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    PaperSettings settings() {
        return jdbc.sql("select * from paper_settings")
                .query((row, n) -> new PaperSettings(
                        row.getString("tax_number"),
                        row.getString("bank"),
                        row.getString("quote_terms"),
                        row.getString("invoice_terms"),
                        row.getInt("due_days"),
                        Optional.ofNullable(row.getBytes("logo")).orElse(new byte[0])))
                .single();
    }

    void save(PaperSettings settings) {
        jdbc.sql("""
            update paper_settings set tax_number = :tax, bank = :bank, quote_terms = :quote, invoice_terms = :invoice,
                due_days = :due, logo = :logo
            """)
                .param("tax", settings.taxNumber().strip())
                .param("bank", settings.bank().strip())
                .param("quote", settings.quoteTerms().strip())
                .param("invoice", settings.invoiceTerms().strip())
                .param("due", settings.dueDays())
                .param("logo", settings.hasLogo() ? settings.logo() : null)
                .update();
    }

    /** Writes a paper; its number is taken by the database within this transaction. */
    InvoiceId add(Invoice paper, String who, Instant now) {
        long id = jdbc.sql("""
            insert into invoice (series, year, running, number, order_id, order_number, corrects, issued_on, due_on,
                seller, tax_number, customer, vat_mode, vat_rounding, currency, net, vat, gross, reason, who, issued_at)
            values (:series, :year, 0, '', :order, :orderNumber, :corrects, :issued, :due,
                :seller, :taxNumber, :customer, :mode, :rounding, :currency, :net, :vat, :gross, :reason, :who, :now)
            returning id
            """)
                .param("series", paper.series().name())
                .param("year", paper.issuedOn().getYear())
                .param("order", paper.order().id().value())
                .param("orderNumber", paper.order().number())
                .param("corrects", paper.corrects().map(InvoiceId::value).orElse(null))
                .param("issued", paper.issuedOn())
                .param("due", paper.dueOn())
                .param("seller", paper.parties().seller())
                .param("taxNumber", paper.parties().taxNumber())
                .param("customer", paper.parties().customer())
                .param("mode", paper.totals().mode().name())
                .param("rounding", paper.totals().rounding().name())
                .param("currency", paper.currency().getCurrencyCode())
                .param("net", paper.totals().net().amount())
                .param("vat", paper.totals().vat().amount())
                .param("gross", paper.gross().amount())
                .param("reason", paper.reason())
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
        int position = 1;
        for (Invoice.Line line : paper.lines()) {
            jdbc.sql("""
                insert into invoice_line (invoice_id, position, what, quantity, unit_price, vat_percent, net, vat, gross)
                values (:id, :position, :what, :quantity, :unitPrice, :rate, :net, :vat, :gross)
                """)
                    .param("id", id)
                    .param("position", position++)
                    .param("what", line.what())
                    .param("quantity", line.quantity())
                    .param("unitPrice", line.unitPrice().amount())
                    .param("rate", line.vatRate().hundredths())
                    .param("net", line.net().amount())
                    .param("vat", line.vat().amount())
                    .param("gross", line.gross().amount())
                    .update();
        }
        return new InvoiceId(id);
    }

    Optional<Invoice> find(InvoiceId id) {
        return papers("i.id = :a", id.value(), 0).stream().findFirst();
    }

    List<Invoice> ofOrder(OrderId order) {
        return papers("i.order_id = :a", order.value(), 0);
    }

    /** Issued from the first to the last day, both included, oldest first. */
    List<Invoice> issued(LocalDate from, LocalDate to) {
        return papers("i.issued_on between :a and :b", from, to);
    }

    private List<Invoice> papers(String which, Object a, Object b) {
        Map<Long, List<Invoice.Line>> lines = new HashMap<>();
        List<Invoice> papers = new ArrayList<>();
        jdbc.sql("""
            select i.*, l.what, l.quantity, l.unit_price, l.vat_percent,
                   l.net as line_net, l.vat as line_vat, l.gross as line_gross
            from invoice i join invoice_line l on l.invoice_id = i.id
            where %s order by i.issued_on, i.id, l.position
            """.formatted(which)).param("a", a).param("b", b).query(row -> {
            List<Invoice.Line> own = lines.get(row.getLong("id"));
            if (own == null) {
                own = new ArrayList<>();
                lines.put(row.getLong("id"), own);
                papers.add(invoice(row));
            }
            own.add(line(row));
        });
        return papers.stream()
                .map(paper -> paper.with(lines.get(paper.id().value())))
                .toList();
    }

    private static Invoice invoice(ResultSet row) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        String reason = row.getString("reason");
        Optional<Invoice.Correction> correction = Optional.ofNullable(row.getObject("corrects", Long.class))
                .map(of -> new Invoice.Correction(new InvoiceId(of), reason));
        return new Invoice(
                new InvoiceId(row.getLong("id")),
                Invoice.Series.valueOf(row.getString("series")),
                row.getString("number"),
                new OrderRef(new OrderId(row.getLong("order_id")), row.getString("order_number")),
                correction,
                row.getObject("issued_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                new Invoice.Parties(row.getString("seller"), row.getString("tax_number"), row.getString("customer")),
                new Invoice.Totals(
                        money(row, "net", currency),
                        money(row, "vat", currency),
                        money(row, "gross", currency),
                        VatMode.valueOf(row.getString("vat_mode")),
                        VatRounding.valueOf(row.getString("vat_rounding"))),
                List.of());
    }

    private static Invoice.Line line(ResultSet row) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        return new Invoice.Line(
                row.getString("what"),
                row.getBigDecimal("quantity").stripTrailingZeros(),
                money(row, "unit_price", currency),
                new Percent(row.getBigDecimal("vat_percent")),
                money(row, "line_net", currency),
                money(row, "line_vat", currency),
                money(row, "line_gross", currency));
    }

    private static Money money(ResultSet row, String column, Currency currency) throws SQLException {
        return Money.of(row.getBigDecimal(column), currency).rounded();
    }
}
