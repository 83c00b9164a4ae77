package puzzleworkshop.access;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.access.Account.AccountId;

@Repository
class StaySignedInStore {

    private final JdbcClient jdbc;

    StaySignedInStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Adds a browser and takes away those that were not seen since a moment. */
    @Transactional
    public void add(String hash, AccountId account, OffsetDateTime now, OffsetDateTime notSeenSince) {
        jdbc.sql("delete from stay_signed_in where last_seen_at < :since")
                .param("since", notSeenSince)
                .update();
        jdbc.sql("""
                insert into stay_signed_in (token_sha256, account_id, made_at, last_seen_at)
                values (:hash, :account, :now, :now)
                """)
                .param("hash", hash)
                .param("account", account.value())
                .param("now", now)
                .update();
    }

    /** The active account of a browser that was seen since a moment; it is seen now. */
    @Transactional
    public Optional<Account> seen(String hash, OffsetDateTime since, OffsetDateTime now) {
        return jdbc.sql("""
                update stay_signed_in s set last_seen_at = :now from account a
                 where s.token_sha256 = :hash and s.last_seen_at >= :since and a.id = s.account_id and a.active
                returning a.id, a.name, a.role, a.active
                """)
                .param("hash", hash)
                .param("since", since)
                .param("now", now)
                .query((row, n) -> new Account(
                        new AccountId(row.getLong("id")),
                        row.getString("name"),
                        Role.valueOf(row.getString("role")),
                        row.getBoolean("active")))
                .optional();
    }

    @Transactional
    public void forget(String hash) {
        jdbc.sql("delete from stay_signed_in where token_sha256 = :hash")
                .param("hash", hash)
                .update();
    }

    /** All browsers of an account. */
    @Transactional
    public void forget(AccountId account) {
        jdbc.sql("delete from stay_signed_in where account_id = :account")
                .param("account", account.value())
                .update();
    }
}
