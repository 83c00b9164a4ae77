package puzzleworkshop.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.access.Account.AccountId;

@Repository
class AccountStore {

    private final JdbcClient jdbc;
    private final Clock clock;

    AccountStore(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    record Secret(Account account, String passwordHash) {}

    boolean isEmpty() {
        return !jdbc.sql("select exists (select 1 from account)")
                .query(Boolean.class)
                .single();
    }

    /** Makes whoever else wants to add an account wait until this transaction ends. */
    void lock() {
        jdbc.sql("lock table account in exclusive mode").update();
    }

    AccountId add(String name, Role role, String passwordHash) {
        return new AccountId(jdbc.sql("""
                insert into account (name, role, password_hash, made_at)
                values (:name, :role, :hash, :now)
                returning id
                """)
                .param("name", name)
                .param("role", role.name())
                .param("hash", passwordHash)
                .param("now", OffsetDateTime.now(clock))
                .query(Long.class)
                .single());
    }

    Optional<Secret> named(String name) {
        return jdbc.sql("select * from account where lower(name) = lower(:name)")
                .param("name", name)
                .query((row, n) -> new Secret(account(row), row.getString("password_hash")))
                .optional();
    }

    /** The account, locked until the transaction ends. */
    Optional<Account> locked(AccountId id) {
        return jdbc.sql("select * from account where id = :id for update")
                .param("id", id.value())
                .query((row, n) -> account(row))
                .optional();
    }

    List<Account> all() {
        return jdbc.sql("select * from account order by active desc, lower(name)")
                .query((row, n) -> account(row))
                .list();
    }

    int activeOwners() {
        return jdbc.sql("select count(*) from account where role = 'OWNER' and active")
                .query(Integer.class)
                .single();
    }

    void setPassword(AccountId id, String passwordHash) {
        jdbc.sql("update account set password_hash = :hash where id = :id")
                .param("hash", passwordHash)
                .param("id", id.value())
                .update();
    }

    void setActive(AccountId id, boolean active) {
        jdbc.sql("update account set active = :active where id = :id")
                .param("active", active)
                .param("id", id.value())
                .update();
    }

    void setRole(AccountId id, Role role) {
        jdbc.sql("update account set role = :role where id = :id")
                .param("role", role.name())
                .param("id", id.value())
                .update();
    }

    private static Account account(ResultSet row) throws SQLException {
        return new Account(
                new AccountId(row.getLong("id")),
                row.getString("name"),
                Role.valueOf(row.getString("role")),
                row.getBoolean("active"));
    }
}
