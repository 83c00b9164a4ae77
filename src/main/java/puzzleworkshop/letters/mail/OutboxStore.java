package puzzleworkshop.letters.mail;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The rows of the outbox. Each method is one statement, so a power cut leaves a row before it or after it. */
@Repository
class OutboxStore {

    /** A letter taken for one try. */
    record Claimed(long letter, byte[] message, int tries) {}

    private final JdbcClient jdbc;

    OutboxStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void put(long letter, String messageId, byte[] message, Instant now) {
        jdbc.sql("""
            insert into letter_outbox (letter_id, message_id, message, state, next_try)
            values (:letter, :id, :message, 'WAITING', :now)
            """)
                .param("letter", letter)
                .param("id", messageId)
                .param("message", message)
                .param("now", Timestamp.from(now))
                .update();
    }

    /** Takes the letter that has waited longest for its try; of several programs one gets it. */
    Optional<Claimed> claim(String claim, Instant now) {
        return jdbc.sql("""
            update letter_outbox set state = 'CLAIMED', claim = :claim, claimed_at = :now, handing_over_at = null,
                tries = tries + 1
            where letter_id = (
                select letter_id from letter_outbox where state = 'WAITING' and next_try <= :now
                order by next_try, letter_id limit 1 for update skip locked)
            returning letter_id, message, tries
            """)
                .param("claim", claim)
                .param("now", Timestamp.from(now))
                .query((row, n) -> new Claimed(row.getLong("letter_id"), row.getBytes("message"), row.getInt("tries")))
                .optional();
    }

    /** From now on only the server's answer tells whether it was taken; false when the claim is no longer ours. */
    boolean handingOver(long letter, String claim, Instant now) {
        return jdbc.sql("""
            update letter_outbox set handing_over_at = :now
            where letter_id = :letter and claim = :claim and state = 'CLAIMED'
            """)
                        .param("letter", letter)
                        .param("claim", claim)
                        .param("now", Timestamp.from(now))
                        .update()
                == 1;
    }

    /** The message itself is no longer needed, and may hold a private link. */
    void sent(long letter, String claim, Instant now) {
        jdbc.sql("""
            update letter_outbox set state = 'SENT', claim = null, sent_at = :now, fault = '', message = null
            where letter_id = :letter and claim = :claim
            """)
                .param("letter", letter)
                .param("claim", claim)
                .param("now", Timestamp.from(now))
                .update();
    }

    void waits(long letter, String claim, String fault, Instant nextTry) {
        jdbc.sql("""
            update letter_outbox set state = 'WAITING', claim = null, handing_over_at = null, fault = :fault,
                next_try = :next
            where letter_id = :letter and claim = :claim
            """)
                .param("letter", letter)
                .param("claim", claim)
                .param("fault", fault)
                .param("next", Timestamp.from(nextTry))
                .update();
    }

    void needsPerson(long letter, String claim, MailState state, String fault) {
        jdbc.sql("""
            update letter_outbox set state = :state, claim = null, fault = :fault
            where letter_id = :letter and claim = :claim
            """)
                .param("letter", letter)
                .param("claim", claim)
                .param("state", state.name())
                .param("fault", fault)
                .update();
    }

    /** Claims of a program that ended: those whose last line had not gone out wait again. */
    int backInTheBox(String claim, Instant now) {
        return jdbc.sql("""
            update letter_outbox set state = 'WAITING', claim = null, next_try = :now
            where state = 'CLAIMED' and claim <> :claim and handing_over_at is null
            """)
                .param("claim", claim)
                .param("now", Timestamp.from(now))
                .update();
    }

    /** The others may have arrived; only a person can find out. */
    int asks(String claim) {
        return jdbc.sql("""
            update letter_outbox set state = 'ASKS', claim = null, fault = ''
            where state = 'CLAIMED' and claim <> :claim and handing_over_at is not null
            """).param("claim", claim).update();
    }

    /** A person answers for a letter that nobody works on; false when somebody did meanwhile. */
    boolean settle(long letter, MailState from, MailState to, Instant now) {
        return jdbc.sql("""
            update letter_outbox set state = :to, next_try = :now, handing_over_at = null,
                tries = case when :to = 'WAITING' then 0 else tries end,
                sent_at = case when :to = 'SENT' then :now::timestamptz end,
                message = case when :to = 'WAITING' then message end
            where letter_id = :letter and state = :from
            """)
                        .param("letter", letter)
                        .param("from", from.name())
                        .param("to", to.name())
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    Optional<Instant> nextTry() {
        return jdbc.sql("select min(next_try) as next from letter_outbox where state = 'WAITING'")
                .query((row, n) -> Optional.ofNullable(row.getTimestamp("next")).map(Timestamp::toInstant))
                .single();
    }

    /** @param since those that were never tried and wait since before then lie there unseen as well */
    List<Long> withFaults(Instant since) {
        return jdbc.sql("""
            select letter_id from letter_outbox
            where state in ('FAILED', 'ASKS') or state = 'WAITING' and (tries > 0 or next_try < :since)
            order by letter_id
            """)
                .param("since", Timestamp.from(since))
                .query(Long.class)
                .list();
    }
}
