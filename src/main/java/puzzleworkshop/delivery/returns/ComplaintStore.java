package puzzleworkshop.delivery.returns;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.delivery.returns.Complaint.Decision;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.workshop.Stage;

@Repository
class ComplaintStore {

    private static final String SELECT = "select c.*, r.number from complaint c join order_ref r on r.id = c.order_id ";

    private final JdbcClient jdbc;

    ComplaintStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    long add(Complaint complaint) {
        return jdbc.sql("""
            insert into complaint (order_id, reported_at, reported_by, by_customer, reason, stage, words, board, setting)
            values (:order, :at, :who, :customer, :reason, :stage, :words, :board, :setting) returning id
            """)
                .param("order", complaint.order().id().value())
                .param("at", Timestamp.from(complaint.at()))
                .param("who", complaint.who())
                .param("customer", complaint.byCustomer())
                .param("reason", complaint.reason().name())
                .param("stage", complaint.stage().name())
                .param("words", complaint.words())
                .param("board", complaint.board())
                .param("setting", complaint.setting())
                .query(Long.class)
                .single();
    }

    void decide(long id, Decision decision, Optional<Long> credit) {
        jdbc.sql("""
            update complaint set remedy = :remedy, postage_by = :by, postage = :postage, currency = :currency,
                credit_id = :credit, answer = :answer, decided_at = :at, decided_by = :who
            where id = :id
            """)
                .param("remedy", decision.remedy().name())
                .param("by", decision.postageBy().name())
                .param("postage", decision.postage().map(Money::amount).orElse(null))
                .param(
                        "currency",
                        decision.postage()
                                .map(p -> p.currency().getCurrencyCode())
                                .orElse(null))
                .param("credit", credit.orElse(null))
                .param("answer", decision.answer())
                .param("at", Timestamp.from(decision.at()))
                .param("who", decision.who())
                .param("id", id)
                .update();
    }

    void classify(long id, Reason reason, Stage stage) {
        jdbc.sql("update complaint set reason = :reason, stage = :stage where id = :id")
                .param("reason", reason.name())
                .param("stage", stage.name())
                .param("id", id)
                .update();
    }

    Optional<Complaint> find(long id) {
        return jdbc.sql(SELECT + "where c.id = :id")
                .param("id", id)
                .query((row, n) -> complaint(row))
                .optional();
    }

    /** Holds its row until the caller's transaction ends. */
    Optional<Complaint> lock(long id) {
        return jdbc.sql(SELECT + "where c.id = :id for update of c")
                .param("id", id)
                .query((row, n) -> complaint(row))
                .optional();
    }

    List<Complaint> of(OrderId order) {
        return jdbc.sql(SELECT + "where c.order_id = :order order by c.id")
                .param("order", order.value())
                .query((row, n) -> complaint(row))
                .list();
    }

    List<Complaint> since(Instant from) {
        return jdbc.sql(SELECT + "where c.reported_at >= :from order by c.id")
                .param("from", Timestamp.from(from))
                .query((row, n) -> complaint(row))
                .list();
    }

    List<Complaint> undecided() {
        return jdbc.sql(SELECT + "where c.remedy is null order by c.reported_at")
                .query((row, n) -> complaint(row))
                .list();
    }

    /** How many orders left since a moment on each material and thickness. */
    Map<String, Integer> left(Instant from) {
        Map<String, Integer> left = new HashMap<>();
        jdbc.sql("""
            select board_material, board_thickness_mm, count(*) as orders from order_left
            where handed_over_at >= :from group by board_material, board_thickness_mm
            """)
                .param("from", Timestamp.from(from))
                .query((row, n) -> left.put(
                        Complaints.board(row.getString("board_material"), row.getDouble("board_thickness_mm")),
                        row.getInt("orders")))
                .list();
        return left;
    }

    void well(OrderId order, Instant at) {
        jdbc.sql("insert into all_is_well (order_id, said_at) values (:order, :at) on conflict do nothing")
                .param("order", order.value())
                .param("at", Timestamp.from(at))
                .update();
    }

    boolean isWell(OrderId order) {
        return jdbc.sql("select order_id from all_is_well where order_id = :order")
                .param("order", order.value())
                .query(Long.class)
                .optional()
                .isPresent();
    }

    long addPhoto(long complaint, String mediaType, byte[] content, String who, Instant at) {
        return jdbc.sql("""
            insert into complaint_photo (complaint_id, media_type, content, taken_at, taken_by)
            values (:complaint, :media, :content, :at, :who) returning id
            """)
                .param("complaint", complaint)
                .param("media", mediaType)
                .param("content", content)
                .param("at", Timestamp.from(at))
                .param("who", who)
                .query(Long.class)
                .single();
    }

    List<Long> photos(long complaint) {
        return jdbc.sql("select id from complaint_photo where complaint_id = :id order by id")
                .param("id", complaint)
                .query(Long.class)
                .list();
    }

    Optional<byte[]> photo(long id) {
        return jdbc.sql("select content from complaint_photo where id = :id")
                .param("id", id)
                .query((row, n) -> row.getBytes("content"))
                .optional();
    }

    private static Complaint complaint(ResultSet row) throws SQLException {
        String currency = row.getString("currency");
        Optional<Decision> decision = row.getString("remedy") == null
                ? Optional.empty()
                : Optional.of(new Decision(
                        Remedy.valueOf(row.getString("remedy")),
                        PostageBy.valueOf(row.getString("postage_by")),
                        currency == null
                                ? Optional.empty()
                                : Optional.of(Money.of(row.getBigDecimal("postage"), Currency.getInstance(currency))
                                        .rounded()),
                        row.getString("answer"),
                        row.getTimestamp("decided_at").toInstant(),
                        row.getString("decided_by")));
        return new Complaint(
                row.getLong("id"),
                new OrderRef(new OrderId(row.getLong("order_id")), row.getString("number")),
                row.getTimestamp("reported_at").toInstant(),
                row.getString("reported_by"),
                row.getBoolean("by_customer"),
                Reason.valueOf(row.getString("reason")),
                Stage.valueOf(row.getString("stage")),
                row.getString("words"),
                row.getString("board"),
                row.getString("setting"),
                decision);
    }
}
