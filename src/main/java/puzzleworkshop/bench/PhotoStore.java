package puzzleworkshop.bench;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.workshop.Stage;

/** Photos from the bench. */
@Repository
class PhotoStore {

    private final JdbcClient jdbc;

    PhotoStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    long add(
            OrderId order,
            Stage stage,
            Optional<Long> mishap,
            String mediaType,
            byte[] content,
            String who,
            Instant at) {
        return jdbc.sql("""
                insert into bench_photo (order_id, stage, wrong_id, media_type, content, taken_at, taken_by)
                values (:order, :stage, :wrong, :media, :content, :at, :who) returning id
                """)
                .param("order", order.value())
                .param("stage", stage.name())
                .param("wrong", mishap.orElse(null))
                .param("media", mediaType)
                .param("content", content)
                .param("at", Timestamp.from(at))
                .param("who", who)
                .query(Long.class)
                .single();
    }

    List<Bench.PhotoNote> of(OrderId order) {
        return jdbc.sql("select id, stage, taken_at, taken_by from bench_photo where order_id = :order order by id")
                .param("order", order.value())
                .query((row, n) -> new Bench.PhotoNote(
                        row.getLong("id"),
                        Stage.valueOf(row.getString("stage")),
                        row.getTimestamp("taken_at").toInstant(),
                        row.getString("taken_by")))
                .list();
    }

    Optional<Bench.Photo> find(long id) {
        return jdbc.sql("select media_type, content from bench_photo where id = :id")
                .param("id", id)
                .query((row, n) -> new Bench.Photo(row.getString("media_type"), row.getBytes("content")))
                .optional();
    }
}
