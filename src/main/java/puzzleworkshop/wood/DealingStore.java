package puzzleworkshop.wood;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** How boards that can be bought come. */
@Repository
class DealingStore {

    private final JdbcClient jdbc;

    DealingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Map<Long, Dealing> all() {
        Map<Long, Dealing> all = new HashMap<>();
        jdbc.sql("select offer_id, delivery_weeks, cut_fee from board_dealing")
                .query((row, n) -> {
                    int weeks = row.getInt("delivery_weeks");
                    OptionalInt after = row.wasNull() ? OptionalInt.empty() : OptionalInt.of(weeks);
                    long offer = row.getLong("offer_id");
                    return all.put(offer, new Dealing(offer, after, Optional.ofNullable(row.getBigDecimal("cut_fee"))));
                })
                .list();
        return all;
    }

    void save(Dealing dealing) {
        jdbc.sql("""
            insert into board_dealing (offer_id, delivery_weeks, cut_fee) values (:offer, :weeks, :fee)
            on conflict (offer_id) do update set delivery_weeks = :weeks, cut_fee = :fee
            """)
                .param("offer", dealing.offer())
                .param(
                        "weeks",
                        dealing.deliveryWeeks().isPresent()
                                ? dealing.deliveryWeeks().getAsInt()
                                : null)
                .param("fee", dealing.cutFee().orElse(null))
                .update();
    }
}
