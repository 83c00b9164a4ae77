package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BoardOffer;

/** Boards that were ordered. */
@Repository
class BoardOrderStore {

    private final JdbcClient jdbc;

    BoardOrderStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<OnTheWay> open(List<BoardOffer> offers) {
        Map<Long, BoardOffer> boards = offers.stream().collect(Collectors.toMap(BoardOffer::id, Function.identity()));
        return jdbc.sql("""
            select id, offer_id, cut_width_mm, cut_height_mm, count, price, currency, ordered_on, due_on
            from board_order where ended_at is null order by due_on, id
            """)
                .query((row, n) -> order(row, boards.get(row.getLong("offer_id"))))
                .list();
    }

    private static OnTheWay order(ResultSet row, BoardOffer board) throws SQLException {
        BigDecimal width = row.getBigDecimal("cut_width_mm");
        return new OnTheWay(
                row.getLong("id"),
                board,
                width == null
                        ? Optional.empty()
                        : Optional.of(Size.mm(width.doubleValue(), row.getDouble("cut_height_mm"))),
                row.getInt("count"),
                Money.of(row.getBigDecimal("price"), Currency.getInstance(row.getString("currency"))),
                row.getObject("ordered_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class));
    }

    long add(BuyAdvice.Line line, int count, LocalDate today, LocalDate due, String who) {
        return jdbc.sql("""
            insert into board_order (offer_id, cut_width_mm, cut_height_mm, count, price, currency, ordered_on, due_on, who)
            values (:offer, :width, :height, :count, :price, :currency, :today, :due, :who) returning id
            """)
                .param("offer", line.board().id())
                .param("width", line.cutTo().map(size -> size.width().mm()).orElse(null))
                .param("height", line.cutTo().map(size -> size.height().mm()).orElse(null))
                .param("count", count)
                .param("price", line.price().amount())
                .param("currency", line.price().currency().getCurrencyCode())
                .param("today", today)
                .param("due", due)
                .param("who", who)
                .query(Long.class)
                .single();
    }

    /** @param how ARRIVED or NOT_COMING; false when it had ended already */
    boolean end(long id, String how, Instant now) {
        return jdbc.sql("update board_order set ended_at = :now, ended_how = :how where id = :id and ended_at is null")
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("how", how)
                        .param("id", id)
                        .update()
                == 1;
    }
}
