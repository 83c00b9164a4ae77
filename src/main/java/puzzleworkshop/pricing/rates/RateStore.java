package puzzleworkshop.pricing.rates;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;

@Repository
class RateStore {

    private final JdbcClient jdbc;

    RateStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The latest entry of each kind that holds on the day. */
    List<HeldRate> ratesOn(LocalDate day, Currency currency) {
        return jdbc
                .sql("""
                    select distinct on (kind) kind, value, holds_from, note
                    from rate
                    where holds_from <= :day and (currency is null or currency = :currency)
                    order by kind, holds_from desc, id desc
                    """)
                .param("day", day)
                .param("currency", currency.getCurrencyCode())
                .query((row, n) -> known(row))
                .list()
                .stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /** All entries of a kind, the latest day first. */
    List<HeldRate> history(RateKind kind) {
        return jdbc
                .sql("select kind, value, holds_from, note from rate where kind = :kind order by holds_from desc,"
                        + " id desc")
                .param("kind", kind.name())
                .query((row, n) -> known(row))
                .list()
                .stream()
                .flatMap(Optional::stream)
                .toList();
    }

    void add(HeldRate rate, Currency currency, String who, Instant now) {
        jdbc.sql("""
            insert into rate (kind, value, currency, holds_from, note, who, entered_at)
            values (:kind, :value, :currency, :from, :note, :who, :now)
            """)
                .param("kind", rate.kind().name())
                .param("value", rate.value())
                .param("currency", rate.kind().form() == RateKind.Form.MONEY ? currency.getCurrencyCode() : null)
                .param("from", rate.from())
                .param("note", rate.note())
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    Optional<PriceRule> ruleOn(LocalDate day) {
        return jdbc.sql("select * from price_rule where holds_from <= :day order by holds_from desc, id desc limit 1")
                .param("day", day)
                .query((row, n) -> new PriceRule(
                        row.getDate("holds_from").toLocalDate(),
                        PriceRule.Method.valueOf(row.getString("method")),
                        new Percent(row.getBigDecimal("margin_percent")),
                        new Percent(row.getBigDecimal("markup_percent")),
                        new Percent(row.getBigDecimal("floor_percent")),
                        new Percent(row.getBigDecimal("rush_percent")),
                        VatMode.valueOf(row.getString("vat_mode")),
                        VatRounding.valueOf(row.getString("vat_rounding")),
                        new PricePoints(row.getBigDecimal("point_step"), row.getBigDecimal("point_ending"))))
                .optional();
    }

    void add(PriceRule rule, String who, Instant now) {
        jdbc.sql("""
            insert into price_rule (holds_from, method, margin_percent, markup_percent, floor_percent, rush_percent,
                vat_mode, vat_rounding, point_step, point_ending, who, entered_at)
            values (:from, :method, :margin, :markup, :floor, :rush, :vat, :rounding, :step, :ending, :who, :now)
            """)
                .param("from", rule.from())
                .param("method", rule.method().name())
                .param("margin", rule.margin().hundredths())
                .param("markup", rule.markup().hundredths())
                .param("floor", rule.floorMargin().hundredths())
                .param("rush", rule.rush().hundredths())
                .param("vat", rule.vatMode().name())
                .param("rounding", rule.vatRounding().name())
                .param("step", rule.points().step())
                .param("ending", rule.points().ending())
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    List<ListPrice> listOn(LocalDate day, Currency currency) {
        return jdbc.sql("""
            select line.* from price_list_line line
            where line.list_id = (select id from price_list where holds_from <= :day and currency = :currency
                                  order by holds_from desc, id desc limit 1)
            order by line.longer_mm * line.shorter_mm, line.pieces
            """)
                .param("day", day)
                .param("currency", currency.getCurrencyCode())
                .query((row, n) -> new ListPrice(
                        Length.mm(row.getDouble("longer_mm")),
                        Length.mm(row.getDouble("shorter_mm")),
                        row.getInt("pieces"),
                        Money.of(row.getBigDecimal("price"), currency).rounded()))
                .list();
    }

    void add(LocalDate from, List<ListPrice> list, Currency currency, String who, Instant now) {
        long id = jdbc.sql("""
            insert into price_list (holds_from, currency, who, entered_at)
            values (:from, :currency, :who, :now) returning id
            """)
                .param("from", from)
                .param("currency", currency.getCurrencyCode())
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
        for (ListPrice line : list) {
            jdbc.sql("""
                insert into price_list_line (list_id, longer_mm, shorter_mm, pieces, price)
                values (:id, :longer, :shorter, :pieces, :price)
                """)
                    .param("id", id)
                    .param("longer", line.longer().mm())
                    .param("shorter", line.shorter().mm())
                    .param("pieces", line.pieces())
                    .param("price", line.price().amount())
                    .update();
        }
    }

    /** A kind that a later version of the program no longer knows is passed over. */
    private static Optional<HeldRate> known(ResultSet row) throws SQLException {
        String name = row.getString("kind");
        Date from = row.getDate("holds_from");
        for (RateKind kind : RateKind.values()) {
            if (kind.name().equals(name)) {
                return Optional.of(new HeldRate(
                        kind,
                        row.getBigDecimal("value").stripTrailingZeros(),
                        from.toLocalDate(),
                        row.getString("note"),
                        false));
            }
        }
        return Optional.empty();
    }
}
