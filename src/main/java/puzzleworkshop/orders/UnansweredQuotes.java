package puzzleworkshop.orders;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.OpenQuotes;
import puzzleworkshop.workshop.Workshop;

/** Quotes that still hold, told to the pricing room when a rate is about to change. */
@Component
class UnansweredQuotes implements OpenQuotes {

    private static final int MOST = 200;

    private final JdbcClient jdbc;
    private final Workshop workshop;

    UnansweredQuotes(JdbcClient jdbc, Workshop workshop) {
        this.jdbc = jdbc;
        this.workshop = workshop;
    }

    @Override
    public List<OpenQuote> open() {
        return jdbc.sql("""
                select number, kept_price::text as price from customer_order
                where state = 'QUOTE' and valid_until >= :today order by created_at desc limit :most
                """)
                .param("today", workshop.today())
                .param("most", MOST)
                .query((row, n) -> new OpenQuote(row.getString("number"), KeptPrice.fromJson(row.getString("price"))))
                .list();
    }
}
