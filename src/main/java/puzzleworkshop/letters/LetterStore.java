package puzzleworkshop.letters;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.letters.mail.MailState;
import puzzleworkshop.measure.OrderId;

/** What was written, how it is worded, and when reminders are due. */
@Repository
class LetterStore {

    private static final String LETTERS = """
        select l.*, o.number as order_number, b.state, b.message_id, b.tries, b.next_try, b.sent_at, b.fault
        from letter l join order_ref o on o.id = l.order_id left join letter_outbox b on b.letter_id = l.id
        """;

    private final JdbcClient jdbc;

    LetterStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Wording> wording(LetterKind kind) {
        return jdbc.sql("select subject, body from letter_wording where kind = :kind")
                .param("kind", kind.name())
                .query((row, n) -> new Wording(kind, row.getString("subject"), row.getString("body")))
                .optional();
    }

    void save(Wording wording, Instant now, String who) {
        jdbc.sql("""
            insert into letter_wording (kind, subject, body, changed_at, changed_by)
            values (:kind, :subject, :body, :now, :who)
            on conflict (kind) do update set subject = :subject, body = :body, changed_at = :now, changed_by = :who
            """)
                .param("kind", wording.kind().name())
                .param("subject", wording.subject())
                .param("body", wording.body())
                .param("now", Timestamp.from(now))
                .param("who", who)
                .update();
    }

    void forget(LetterKind kind) {
        jdbc.sql("delete from letter_wording where kind = :kind")
                .param("kind", kind.name())
                .update();
    }

    ReminderSteps reminderSteps() {
        return jdbc.sql("select first_reminder, second_reminder, last_reminder from letter_settings")
                .query((row, n) -> new ReminderSteps(row.getInt(1), row.getInt(2), row.getInt(3)))
                .single();
    }

    void save(ReminderSteps steps) {
        jdbc.sql("""
            update letter_settings set first_reminder = :first, second_reminder = :second, last_reminder = :last
            """)
                .param("first", steps.first())
                .param("second", steps.second())
                .param("last", steps.last())
                .update();
    }

    long add(
            OrderId order,
            LetterKind kind,
            Letter.Way way,
            String to,
            String subject,
            String body,
            String attached,
            Instant at,
            LocalDate on,
            String by) {
        return jdbc.sql("""
            insert into letter (order_id, kind, way, recipient, subject, body, attached, made_at, made_on, made_by)
            values (:order, :kind, :way, :to, :subject, :body, :attached, :at, :on, :by) returning id
            """)
                .param("order", order.value())
                .param("kind", kind.name())
                .param("way", way.name())
                .param("to", to)
                .param("subject", subject)
                .param("body", body)
                .param("attached", attached)
                .param("at", Timestamp.from(at))
                .param("on", on)
                .param("by", by)
                .query(Long.class)
                .single();
    }

    /** Newest first. */
    List<Letter> of(OrderId order) {
        return jdbc.sql(LETTERS + " where l.order_id = :order order by l.id desc")
                .param("order", order.value())
                .query(LetterStore::letter)
                .list();
    }

    List<Letter> all(Collection<Long> ids) {
        return ids.isEmpty()
                ? List.of()
                : jdbc.sql(LETTERS + " where l.id in (:ids) order by l.id")
                        .param("ids", ids)
                        .query(LetterStore::letter)
                        .list();
    }

    /** The last reminder that was written after the day given for each order; one withdrawn from the outbox does not count. */
    Map<OrderId, ReminderSteps.Written> lastReminders(Map<OrderId, LocalDate> since) {
        Map<OrderId, ReminderSteps.Written> last = new HashMap<>();
        if (since.isEmpty()) {
            return last;
        }
        jdbc.sql("""
            select l.order_id, l.kind, l.made_on from letter l left join letter_outbox b on b.letter_id = l.id
            where l.kind in ('FIRST_REMINDER', 'SECOND_REMINDER', 'LAST_REMINDER') and l.order_id in (:orders)
                and b.state is distinct from 'WITHDRAWN'
            order by l.id
            """)
                .param("orders", since.keySet().stream().map(OrderId::value).toList())
                .query(row -> {
                    OrderId order = new OrderId(row.getLong("order_id"));
                    LocalDate on = row.getObject("made_on", LocalDate.class);
                    if (!on.isBefore(since.get(order))) {
                        last.put(order, new ReminderSteps.Written(LetterKind.valueOf(row.getString("kind")), on));
                    }
                });
        return last;
    }

    private static Letter letter(ResultSet row, int n) throws SQLException {
        String state = row.getString("state");
        Optional<Letter.Mail> mail = state == null
                ? Optional.empty()
                : Optional.of(new Letter.Mail(
                        MailState.valueOf(state),
                        row.getString("message_id"),
                        row.getInt("tries"),
                        row.getTimestamp("next_try").toInstant(),
                        Optional.ofNullable(row.getTimestamp("sent_at")).map(Timestamp::toInstant),
                        row.getString("fault")));
        return new Letter(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                row.getString("order_number"),
                LetterKind.valueOf(row.getString("kind")),
                Letter.Way.valueOf(row.getString("way")),
                row.getString("recipient"),
                row.getString("subject"),
                row.getString("body"),
                row.getString("attached"),
                row.getTimestamp("made_at").toInstant(),
                row.getString("made_by"),
                mail);
    }
}
