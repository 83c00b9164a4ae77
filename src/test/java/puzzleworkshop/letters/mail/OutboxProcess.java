package puzzleworkshop.letters.mail;

import java.time.Clock;
import java.util.concurrent.locks.LockSupport;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/** The outbox at work in a process of its own, which a test can end at any point. */
final class OutboxProcess {

    static final String NAME = "outbox-process";

    private OutboxProcess() {}

    /** A fifth argument: the process stands still when the last line is marked and has not gone out yet. */
    static final String STOP_AT_THE_MARK = "stop-at-the-mark";

    /** What it says when it stands still there. */
    static final String MARKED = "marked";

    /** Database address, user, password, port of the mail server. */
    public static void main(String[] arguments) {
        String url = arguments[0] + (arguments[0].contains("?") ? "&" : "?") + "ApplicationName=" + NAME;
        OutboxStore store =
                new OutboxStore(JdbcClient.create(new DriverManagerDataSource(url, arguments[1], arguments[2])));
        Courier courier = courier(Integer.parseInt(arguments[3]));
        boolean stops = arguments.length > 4 && arguments[4].equals(STOP_AT_THE_MARK);
        Outbox outbox = outbox(store, stops ? standingStillAtTheMark(courier) : courier);
        outbox.recover();
        while (outbox.sendNext()) {
            // until nothing is due
        }
    }

    static Outbox outbox(OutboxStore store, int port) {
        return outbox(store, courier(port));
    }

    private static Outbox outbox(OutboxStore store, Courier courier) {
        return new Outbox(store, courier, Clock.systemDefaultZone());
    }

    private static Courier courier(int port) {
        MailAccount account = new MailAccount(
                true, "localhost", port, MailAccount.Security.NONE, "", "", "post@puzzles.example", false);
        return new SmtpCourier(() -> new SmtpCourier.Access(account, ""));
    }

    /** The same courier; only between the mark and the last line nothing happens any more. */
    private static Courier standingStillAtTheMark(Courier courier) {
        return (message, lastLine) -> courier.deliver(message, () -> {
            lastLine.run();
            System.out.println(MARKED);
            while (true) {
                LockSupport.park();
            }
        });
    }
}
