package puzzleworkshop.papers;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.OrderId;

/** The bytes of papers that were given away. Rows are added and never changed; the database keeps it so. */
@Repository
class KeptPaperStore {

    private final JdbcClient jdbc;

    KeptPaperStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param says the words on it, for whoever searches without opening the file */
    void keepIssued(Invoice paper, String says, byte[] pdf, boolean late, String who, Instant now) {
        add(paper.series().name(), paper.order().id(), Optional.of(paper.id()), 0, "", says, pdf, late, who, now);
    }

    void keepQuote(OrderId order, int running, String about, String says, byte[] pdf, String who, Instant now) {
        add("QUOTE", order, Optional.empty(), running, about, says, pdf, false, who, now);
    }

    private void add(
            String kind,
            OrderId order,
            Optional<InvoiceId> invoice,
            int running,
            String about,
            String says,
            byte[] pdf,
            boolean late,
            String who,
            Instant now) {
        jdbc.sql("""
                insert into kept_paper (kind, order_id, invoice_id, running, about, says, content, sha256, late, kept_at, kept_by)
                values (:kind, :order, :invoice, :running, :about, :says, :pdf, sha256(:pdf), :late, :now, :who)
                """)
                .param("kind", kind)
                .param("order", order.value())
                .param("invoice", invoice.map(InvoiceId::value).orElse(null))
                .param("running", running)
                .param("about", about)
                .param("says", says)
                .param("pdf", pdf)
                .param("late", late)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("who", who)
                .update();
    }

    Optional<KeptPaper> issued(InvoiceId invoice) {
        return jdbc.sql("select * from kept_paper where invoice_id = :invoice")
                .param("invoice", invoice.value())
                .query((row, n) -> paper(row))
                .optional();
    }

    /** The quotes of an order, oldest first. */
    List<KeptPaper> quotes(OrderId order) {
        return jdbc.sql("select * from kept_paper where order_id = :order and kind = 'QUOTE' order by running")
                .param("order", order.value())
                .query((row, n) -> paper(row))
                .list();
    }

    private static KeptPaper paper(ResultSet row) throws SQLException {
        return new KeptPaper(
                row.getLong("id"),
                Optional.ofNullable(row.getObject("invoice_id", Long.class)).map(InvoiceId::new),
                row.getInt("running"),
                row.getString("about"),
                row.getBoolean("late"),
                row.getTimestamp("kept_at").toInstant(),
                row.getBytes("content"));
    }
}
