package puzzleworkshop.delivery.sending;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.planning.calendar.DeliveryWay;

@Repository
class SendingStore {

    private final JdbcClient jdbc;

    SendingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The ways with what is known of sending by them, in the order given. */
    List<SendingWay> of(List<DeliveryWay> ways) {
        Map<Long, List<SendingPrice>> prices = new HashMap<>();
        jdbc.sql("select * from sending_price order by way_id, position")
                .query((row, n) -> prices.computeIfAbsent(row.getLong("way_id"), id -> new ArrayList<>())
                        .add(price(row)))
                .list();
        Map<Long, SendingWay> known = new HashMap<>();
        Map<Long, DeliveryWay> byId = new HashMap<>();
        ways.forEach(way -> byId.put(way.id(), way));
        jdbc.sql("select * from sending_way")
                .query((row, n) -> {
                    long id = row.getLong("way_id");
                    return byId.containsKey(id)
                            ? known.put(id, way(row, byId.get(id), prices.getOrDefault(id, List.of())))
                            : null;
                })
                .list();
        return ways.stream()
                .map(way -> known.getOrDefault(way.id(), SendingWay.plain(way)))
                .toList();
    }

    private static SendingWay way(ResultSet row, DeliveryWay way, List<SendingPrice> prices) throws SQLException {
        return new SendingWay(
                way,
                WayKind.valueOf(row.getString("kind")),
                new SendingLimits(number(row, "heaviest_g"), length(row, "longest_mm"), length(row, "length_girth_mm")),
                number(row, "divisor"),
                row.getString("link_pattern"),
                row.getString("collect_window"),
                row.getInt("keeps_days"),
                prices,
                new Reach(
                        Reach.Kind.valueOf(row.getString("goes_to")),
                        Set.of(row.getString("countries").split(" "))));
    }

    private static SendingPrice price(ResultSet row) throws SQLException {
        return new SendingPrice(
                row.getInt("up_to_g"),
                length(row, "longest_mm"),
                length(row, "middle_mm"),
                length(row, "shortest_mm"),
                length(row, "length_girth_mm"),
                Money.of(row.getBigDecimal("price"), Currency.getInstance(row.getString("currency")))
                        .rounded());
    }

    private static OptionalInt number(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
    }

    private static Optional<Length> length(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, Double.class)).map(Length::mm);
    }

    void save(SendingWay way) {
        jdbc.sql("""
            insert into sending_way (way_id, kind, heaviest_g, longest_mm, length_girth_mm, divisor, link_pattern,
                collect_window, keeps_days, goes_to, countries)
            values (:id, :kind, :heaviest, :longest, :girth, :divisor, :link, :window, :keeps, :goes, :countries)
            on conflict (way_id) do update set kind = excluded.kind, heaviest_g = excluded.heaviest_g,
                longest_mm = excluded.longest_mm, length_girth_mm = excluded.length_girth_mm,
                divisor = excluded.divisor, link_pattern = excluded.link_pattern,
                collect_window = excluded.collect_window, keeps_days = excluded.keeps_days,
                goes_to = excluded.goes_to, countries = excluded.countries
            """)
                .param("id", way.way().id())
                .param("kind", way.kind().name())
                .param("heaviest", boxed(way.limits().heaviestGrams()))
                .param("longest", mm(way.limits().longest()))
                .param("girth", mm(way.limits().lengthAndGirth()))
                .param("divisor", boxed(way.divisor()))
                .param("link", way.linkPattern())
                .param("window", way.collectWindow())
                .param("keeps", way.keepsDays())
                .param("goes", way.reach().kind().name())
                .param("countries", String.join(" ", way.reach().countries()))
                .update();
        jdbc.sql("delete from sending_price where way_id = :id")
                .param("id", way.way().id())
                .update();
        int position = 1;
        for (SendingPrice line : way.prices()) {
            jdbc.sql("""
                insert into sending_price (way_id, position, up_to_g, longest_mm, middle_mm, shortest_mm,
                    length_girth_mm, price, currency)
                values (:id, :position, :grams, :longest, :middle, :shortest, :girth, :price, :currency)
                """)
                    .param("id", way.way().id())
                    .param("position", position++)
                    .param("grams", line.upToGrams())
                    .param("longest", mm(line.longest()))
                    .param("middle", mm(line.middle()))
                    .param("shortest", mm(line.shortest()))
                    .param("girth", mm(line.lengthAndGirth()))
                    .param("price", line.price().amount())
                    .param("currency", line.price().currency().getCurrencyCode())
                    .update();
        }
    }

    private static Integer boxed(OptionalInt value) {
        return value.isPresent() ? value.getAsInt() : null;
    }

    private static Double mm(Optional<Length> length) {
        return length.map(Length::mm).orElse(null);
    }
}
