package puzzleworkshop.letters.mail;

import java.time.Clock;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** The outbox at work in a process of its own, which a test can end at any point. */
final class OutboxProcess {

    static final String NAME = "outbox-process";

    private OutboxProcess() {}

    /** Database address, user, password, port of the mail server. */
    public static void main(String[] arguments) {
        String url = arguments[0] + (arguments[0].contains("?") ? "&" : "?") + "ApplicationName=" + NAME;
        OutboxStore store =
                new OutboxStore(JdbcClient.create(new DriverManagerDataSource(url, arguments[1], arguments[2])));
        Outbox outbox = outbox(store, Integer.parseInt(arguments[3]));
        outbox.recover();
        while (outbox.sendNext()) {
            // until nothing is due
        }
    }

    static Outbox outbox(OutboxStore store, int port) {
        MailAccount account = new MailAccount(
                true, "localhost", port, MailAccount.Security.NONE, "", "", "post@puzzles.example", false);
        return new Outbox(store, new SmtpCourier(() -> new SmtpCourier.Access(account, "")), Clock.systemDefaultZone());
    }
}
