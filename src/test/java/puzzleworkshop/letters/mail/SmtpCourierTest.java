package puzzleworkshop.letters.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.letters.mail.MailAccount.Security;
import puzzleworkshop.letters.mail.ScriptedServer.Step;
import puzzleworkshop.measure.Sentence;

/** What each way in which a mail server can answer, or not, means for a letter. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SmtpCourierTest {

    private static final ZonedDateTime NOW = ZonedDateTime.of(2026, 12, 3, 14, 5, 9, 0, ZoneId.of("UTC"));
    private static final Runnable NOTHING = () -> {};
    private static final String KEYS = "of this test";

    private static MailAccount account(int port, Security security, String user) {
        return new MailAccount(true, "localhost", port, security, user, "", "post@puzzles.example", false);
    }

    private static SmtpCourier courier(int port, Security security, String user, String password) {
        return new SmtpCourier(() -> new SmtpCourier.Access(account(port, security, user), password));
    }

    private static SmtpCourier plain(int port) {
        return courier(port, Security.NONE, "", "");
    }

    private static byte[] letter() {
        return MimeWriter.write(
                new Message("ida@norrby.example", "Hello", "Dear Ida\n.\n", "<p>Dear Ida</p>", List.of(), List.of()),
                account(25, Security.NONE, ""),
                "<7@puzzles.example>",
                NOW);
    }

    @Test
    void a_server_gets_the_letter_as_it_was_written() throws MessagingException, IOException {
        GreenMail server = new GreenMail(new ServerSetup(0, "localhost", "smtp"));
        server.start();
        try {
            assertThat(plain(server.getSmtp().getPort()).deliver(letter(), NOTHING))
                    .isEqualTo(new Delivery.Accepted());
            var got = server.getReceivedMessages();
            assertThat(got).hasSize(1);
            assertThat(got[0].getMessageID()).isEqualTo("<7@puzzles.example>");
            assertThat(got[0].getAllRecipients()[0]).hasToString("ida@norrby.example");
        } finally {
            server.stop();
        }
    }

    @Test
    void a_port_that_nobody_listens_at_and_a_name_that_is_none_are_said_as_such() throws IOException {
        int closed;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            closed = socket.getLocalPort();
        }
        MailAccount nobody = account(closed, Security.NONE, "");
        assertThat(why(nobody).key()).isEqualTo("letters.account.tried.port");
        assertThat(why(nobody).arguments()).containsExactly("localhost", Integer.toString(closed));
        // RFC 2606: names below .invalid are never there
        MailAccount nowhere = new MailAccount(true, "mail.invalid", 25, Security.NONE, "", "", "a@b.example", false);
        assertThat(why(nowhere).key()).isEqualTo("letters.account.tried.host");
    }

    private static Sentence why(MailAccount account) {
        try {
            new SmtpCourier(() -> new SmtpCourier.Access(account, "")).tryConnection();
            throw new AssertionError("connected");
        } catch (MessagingException fault) {
            return SmtpCourier.why(fault, account);
        }
    }

    @Test
    void a_server_that_asks_for_a_sign_in_gets_it_and_a_wrong_password_can_be_tried_again() throws MessagingException {
        GreenMail server = new GreenMail(new ServerSetup(0, "localhost", "smtp"));
        server.start();
        try {
            server.setUser("post@puzzles.example", "mara", "secret");
            server.getManagers().getUserManager().setAuthRequired(true);
            int port = server.getSmtp().getPort();
            assertThat(courier(port, Security.NONE, "mara", "secret").deliver(letter(), NOTHING))
                    .isEqualTo(new Delivery.Accepted());
            assertThat(courier(port, Security.NONE, "mara", "wrong").deliver(letter(), NOTHING))
                    .isInstanceOf(Delivery.NotYet.class);
            courier(port, Security.NONE, "mara", "secret").tryConnection();
            assertThatThrownBy(
                            () -> courier(port, Security.NONE, "mara", "wrong").tryConnection())
                    .isInstanceOf(MessagingException.class);
            assertThat(server.getReceivedMessages()).hasSize(1);
        } finally {
            server.stop();
        }
    }

    /** RFC 8314: nothing goes out in the open, and not to a server that cannot show who it is. */
    @Test
    void without_the_encryption_that_was_asked_for_nothing_is_sent() {
        GreenMail server = new GreenMail(
                new ServerSetup[] {new ServerSetup(0, "localhost", "smtp"), new ServerSetup(0, "localhost", "smtps")});
        server.start();
        try {
            AtomicInteger lastLines = new AtomicInteger();
            assertThat(courier(server.getSmtp().getPort(), Security.STARTTLS, "", "")
                            .deliver(letter(), lastLines::incrementAndGet))
                    .isInstanceOf(Delivery.NotYet.class);
            assertThat(courier(server.getSmtps().getPort(), Security.TLS, "", "")
                            .deliver(letter(), lastLines::incrementAndGet))
                    .as("a certificate that nobody vouches for")
                    .isInstanceOf(Delivery.NotYet.class);
            assertThat(lastLines).hasValue(0);
            assertThat(server.getReceivedMessages()).isEmpty();
        } finally {
            server.stop();
        }
    }

    /** A certificate for localhost, made for this test; only the sockets of this test trust it. */
    @Test
    void a_server_whose_certificate_is_trusted_gets_the_letter_encrypted_and_another_name_gets_nothing(
            @TempDir Path folder) throws Exception {
        Path keys = certificateForLocalhost(folder);
        System.setProperty("greenmail.tls.keystore.file", keys.toString());
        System.setProperty("greenmail.tls.keystore.password", KEYS);
        GreenMail server = new GreenMail(new ServerSetup(0, "localhost", "smtps"));
        server.start();
        try {
            server.setUser("post@puzzles.example", "mara", "secret");
            server.getManagers().getUserManager().setAuthRequired(true);
            int port = server.getSmtps().getPort();
            Optional<SSLSocketFactory> trusting = Optional.of(trusting(keys));
            SmtpCourier courier = new SmtpCourier(
                    () -> new SmtpCourier.Access(account(port, Security.TLS, "mara"), "secret"), trusting);
            courier.tryConnection();
            AtomicInteger lastLines = new AtomicInteger();
            assertThat(courier.deliver(letter(), lastLines::incrementAndGet)).isEqualTo(new Delivery.Accepted());
            assertThat(lastLines).hasValue(1);
            assertThat(server.getReceivedMessages()).hasSize(1);
            assertThat(server.getReceivedMessages()[0].getMessageID()).isEqualTo("<7@puzzles.example>");

            MailAccount byNumber =
                    new MailAccount(true, "127.0.0.1", port, Security.TLS, "mara", "", "post@puzzles.example", false);
            assertThat(new SmtpCourier(() -> new SmtpCourier.Access(byNumber, "secret"), trusting)
                            .deliver(letter(), lastLines::incrementAndGet))
                    .as("the certificate is of another name")
                    .isInstanceOf(Delivery.NotYet.class);
            assertThat(server.getReceivedMessages()).hasSize(1);
        } finally {
            server.stop();
            System.clearProperty("greenmail.tls.keystore.file");
            System.clearProperty("greenmail.tls.keystore.password");
        }
    }

    private static Path certificateForLocalhost(Path folder) throws IOException, InterruptedException {
        Path keys = folder.resolve("keys.p12");
        Process made = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "server",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=localhost",
                        "-ext",
                        "SAN=dns:localhost",
                        "-validity",
                        "2",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        keys.toString(),
                        "-storepass",
                        KEYS)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
        assertThat(made.waitFor())
                .as(Files.readString(folder.resolve("said.txt")))
                .isZero();
        return keys;
    }

    private static SSLSocketFactory trusting(Path file) throws GeneralSecurityException, IOException {
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream stored = Files.newInputStream(file)) {
            keys.load(stored, KEYS.toCharArray());
        }
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        for (String alias : Collections.list(keys.aliases())) {
            trusted.setCertificateEntry(alias, keys.getCertificate(alias));
        }
        TrustManagerFactory managers = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        managers.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, managers.getTrustManagers(), null);
        return context.getSocketFactory();
    }

    @Test
    void a_server_that_hangs_up_before_the_last_line_has_nothing_and_after_it_may_have_everything() throws IOException {
        for (Step step : Step.values()) {
            try (ScriptedServer server = new ScriptedServer()) {
                server.before(reached -> {
                    if (reached == step) {
                        throw new IllegalStateException("hangs up");
                    }
                });
                Delivery delivery = plain(server.port()).deliver(letter(), NOTHING);
                if (step == Step.AFTER_THE_DOT) {
                    assertThat(delivery).as(step.name()).isInstanceOf(Delivery.Unclear.class);
                    assertThat(server.taken()).hasSize(1);
                } else if (step != Step.IN_THE_MESSAGE) {
                    assertThat(delivery).as(step.name()).isInstanceOf(Delivery.NotYet.class);
                    assertThat(server.taken()).isEmpty();
                } else {
                    // the client may have written the last line into the void before it saw the end
                    assertThat(delivery).as(step.name()).isNotInstanceOf(Delivery.Accepted.class);
                    assertThat(server.taken()).isEmpty();
                }
            }
        }
    }

    @Test
    void what_the_server_refuses_for_good_is_not_tried_again_and_what_it_refuses_for_now_is() throws IOException {
        try (ScriptedServer server = new ScriptedServer()) {
            server.answerToRcpt("550 5.1.1 no such mailbox");
            assertThat(plain(server.port()).deliver(letter(), NOTHING))
                    .isInstanceOfSatisfying(
                            Delivery.Refusal.class,
                            told -> assertThat(told.fault()).contains("no such mailbox"));
            server.answerToRcpt("450 4.2.0 greylisted");
            assertThat(plain(server.port()).deliver(letter(), NOTHING)).isInstanceOf(Delivery.NotYet.class);
            server.answerToRcpt("250 ok");
            server.answerToDot("554 5.7.1 spam");
            assertThat(plain(server.port()).deliver(letter(), NOTHING)).isInstanceOf(Delivery.Refusal.class);
            server.answerToDot("452 4.3.1 full");
            assertThat(plain(server.port()).deliver(letter(), NOTHING)).isInstanceOf(Delivery.NotYet.class);
            assertThat(server.taken()).isEmpty();
        }
    }

    @Test
    void a_letter_that_was_taken_back_before_its_last_line_is_not_sent() throws IOException {
        try (ScriptedServer server = new ScriptedServer()) {
            assertThat(plain(server.port()).deliver(letter(), () -> {
                        throw new IllegalStateException("another program has it");
                    }))
                    .isInstanceOf(Delivery.NotYet.class);
            assertThat(server.taken()).isEmpty();
        }
    }

    @Test
    void where_nobody_listens_it_is_tried_again() throws IOException {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        assertThat(plain(port).deliver(letter(), NOTHING)).isInstanceOf(Delivery.NotYet.class);
    }
}
