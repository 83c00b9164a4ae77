package puzzleworkshop.letters.mail;

import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The account's row; the password goes in and out only encrypted. */
@Repository
class MailAccountStore {

    /** @param sealed absent when there is no password */
    record Row(MailAccount account, Optional<byte[]> sealed) {}

    private final JdbcClient jdbc;

    MailAccountStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Row read() {
        return jdbc.sql("select * from letter_settings")
                .query((row, n) -> new Row(
                        new MailAccount(
                                row.getBoolean("sending"),
                                row.getString("host"),
                                row.getInt("port"),
                                MailAccount.Security.valueOf(row.getString("security")),
                                row.getString("user_name"),
                                row.getString("from_name"),
                                row.getString("from_address"),
                                false),
                        Optional.ofNullable(row.getBytes("password"))))
                .single();
    }

    void save(MailAccount account) {
        jdbc.sql("""
            update letter_settings set sending = :sending, host = :host, port = :port, security = :security,
                user_name = :user, from_name = :fromName, from_address = :fromAddress
            """)
                .param("sending", account.sending())
                .param("host", account.host())
                .param("port", account.port())
                .param("security", account.security().name())
                .param("user", account.user())
                .param("fromName", account.fromName())
                .param("fromAddress", account.fromAddress())
                .update();
    }

    void savePassword(Optional<byte[]> sealed) {
        jdbc.sql("update letter_settings set password = :sealed")
                .param("sealed", sealed.orElse(null), java.sql.Types.BINARY)
                .update();
    }
}
