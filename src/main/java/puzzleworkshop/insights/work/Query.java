package puzzleworkshop.insights.work;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.workshop.Workshop;

/** Queries over a period: every one knows its first moment, the moment after its last, and the workshop's zone and currency. */
@Component
class Query {

    static final int MOST_BEHIND = 300;

    /** One row of an answer. */
    @FunctionalInterface
    interface Reading<T> {
        T read(ResultSet row) throws SQLException;
    }

    private final JdbcClient jdbc;
    private final Workshop workshop;

    Query(JdbcClient jdbc, Workshop workshop) {
        this.jdbc = jdbc;
        this.workshop = workshop;
    }

    <T> List<T> list(String sql, Period period, Map<String, ?> more, Reading<T> reading) {
        return jdbc.sql(sql)
                .param("from", start(period.from()))
                .param("until", start(period.to().plusDays(1)))
                .param("zone", workshop.zone().getId())
                .param("currency", workshop.currency().getCurrencyCode())
                .params(more)
                .query((row, n) -> reading.read(row))
                .list();
    }

    /** Of queries with the columns number, customer and value. */
    List<Behind> behind(String sql, Period period, Map<String, ?> more) {
        return list(
                sql + " limit " + MOST_BEHIND,
                period,
                more,
                row -> new Behind(row.getString("number"), row.getString("customer"), row.getDouble("value")));
    }

    LocalDate today() {
        return workshop.today();
    }

    private java.time.OffsetDateTime start(LocalDate day) {
        return day.atStartOfDay(workshop.zone()).toInstant().atOffset(ZoneOffset.UTC);
    }
}
