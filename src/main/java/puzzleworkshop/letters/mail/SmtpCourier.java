package puzzleworkshop.letters.mail;

import jakarta.mail.Address;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.URLName;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Supplier;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.eclipse.angus.mail.smtp.SMTPTransport;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import puzzleworkshop.measure.Sentence;

/**
 * Hands messages to a server by SMTP (RFC 5321). A server may take a message only when it has read the line with a single
 * dot that ends it, so every fault before that line means that nothing was sent; after it only the server's answer tells.
 */
class SmtpCourier implements Courier {

    private static final Duration TO_CONNECT = Duration.ofSeconds(15);
    private static final Duration TO_ANSWER = Duration.ofSeconds(60);
    private static final int PERMANENT = 500;
    private static final int TRANSIENT = 400;
    private static final int MOST_WORDS = 300;

    /** What a try needs to know. */
    record Access(MailAccount account, String password) {}

    private final Supplier<Access> access;
    private final Optional<SSLSocketFactory> sockets;

    /** Servers show who they are by a certificate that this computer's Java trusts. */
    SmtpCourier(Supplier<Access> access) {
        this(access, Optional.empty());
    }

    /** @param sockets that trust other certificates than this computer's Java does */
    SmtpCourier(Supplier<Access> access, Optional<SSLSocketFactory> sockets) {
        this.access = access;
        this.sockets = sockets;
    }

    @Override
    public Delivery deliver(byte[] message, Runnable lastLine) {
        Sender sender = new Sender(access.get(), sockets);
        WatchedTransport transport = null;
        try {
            MimeMessage read = new MimeMessage(sender.getSession(), new ByteArrayInputStream(message));
            transport = sender.connected();
            transport.lastLine = lastLine;
            Address[] to = read.getAllRecipients();
            transport.sendMessage(read, to);
            return new Delivery.Accepted();
        } catch (MessagingException fault) {
            return judged(fault, transport != null && transport.lastLineIsOut);
        } finally {
            close(transport);
        }
    }

    /** Connects and signs in, and leaves again; nothing is sent. */
    void tryConnection() throws MessagingException {
        Transport transport = new Sender(access.get(), sockets).connected();
        close(transport);
    }

    static Delivery judged(MessagingException fault, boolean lastLineIsOut) {
        String words = words(fault);
        int reply = reply(fault);
        if (reply >= PERMANENT) {
            return new Delivery.Refusal(words);
        }
        boolean answered = reply >= TRANSIENT;
        return lastLineIsOut && !answered ? new Delivery.Unclear(words) : new Delivery.NotYet(words);
    }

    /** The server's reply about this message or its address; 0 when it gave none. What it says to a sign-in is no such reply. */
    private static int reply(MessagingException fault) {
        for (Throwable part = fault; part != null; part = next(part)) {
            if (part instanceof SMTPAddressFailedException address) {
                return address.getReturnCode();
            }
            if (part instanceof SMTPSenderFailedException sender) {
                return sender.getReturnCode();
            }
            if (part instanceof SMTPSendFailedException send && send.getReturnCode() > 0) {
                return send.getReturnCode();
            }
        }
        return 0;
    }

    static String words(MessagingException fault) {
        String deepest = "";
        for (Throwable part = fault; part != null; part = next(part)) {
            String said = part.getMessage() == null ? "" : part.getMessage().strip();
            if (!said.isEmpty() && !(part instanceof AuthenticationFailedException && !deepest.isEmpty())) {
                deepest = said;
            }
        }
        String words = deepest.isEmpty() ? fault.getClass().getSimpleName() : deepest.replaceAll("\\s+", " ");
        return words.length() > MOST_WORDS ? words.substring(0, MOST_WORDS) + "…" : words;
    }

    /** Why it could not be connected, so said that it is clear what to change; else in the server's words. */
    static Sentence why(MessagingException fault, MailAccount account) {
        for (Throwable part = fault; part != null; part = next(part)) {
            if (part instanceof AuthenticationFailedException) {
                return Sentence.of("letters.account.tried.sign-in", words(fault));
            }
            if (part instanceof UnknownHostException) {
                return Sentence.of("letters.account.tried.host", account.host());
            }
            if (part instanceof ConnectException || part instanceof SocketTimeoutException) {
                return Sentence.of("letters.account.tried.port", account.host(), Integer.toString(account.port()));
            }
            if (part instanceof SSLException) {
                return Sentence.of("letters.account.tried.security", words(fault));
            }
        }
        return Sentence.of("letters.account.tried", words(fault));
    }

    private static Throwable next(Throwable part) {
        return part instanceof MessagingException chained && chained.getNextException() != null
                ? chained.getNextException()
                : part.getCause();
    }

    private static void close(Transport transport) {
        if (transport != null) {
            try {
                transport.close();
            } catch (MessagingException gone) {
                // The server went first; what it answered to the message counts.
            }
        }
    }

    /** Spring's sender with its settings from the account; connections are ours, to see how far a try has come. */
    private static final class Sender extends JavaMailSenderImpl {

        Sender(Access access, Optional<SSLSocketFactory> sockets) {
            MailAccount account = access.account();
            setProtocol("smtp");
            setHost(account.host());
            setPort(account.port());
            if (!account.user().isEmpty()) {
                setUsername(account.user());
                setPassword(access.password());
            }
            Properties settings = new Properties();
            settings.setProperty(
                    "mail.smtp.auth", String.valueOf(!account.user().isEmpty()));
            settings.setProperty("mail.smtp.connectiontimeout", String.valueOf(TO_CONNECT.toMillis()));
            settings.setProperty("mail.smtp.timeout", String.valueOf(TO_ANSWER.toMillis()));
            settings.setProperty("mail.smtp.writetimeout", String.valueOf(TO_ANSWER.toMillis()));
            settings.setProperty("mail.smtp.quitwait", "false");
            settings.setProperty("mail.smtp.ssl.checkserveridentity", "true");
            settings.setProperty("mail.smtp.ssl.protocols", "TLSv1.2 TLSv1.3");
            boolean tls = account.security() == MailAccount.Security.TLS;
            boolean upgraded = account.security() == MailAccount.Security.STARTTLS;
            settings.setProperty("mail.smtp.ssl.enable", String.valueOf(tls));
            settings.setProperty("mail.smtp.starttls.enable", String.valueOf(upgraded));
            settings.setProperty("mail.smtp.starttls.required", String.valueOf(upgraded));
            sockets.ifPresent(trusting -> settings.put("mail.smtp.ssl.socketFactory", trusting));
            setJavaMailProperties(settings);
        }

        WatchedTransport connected() throws MessagingException {
            return (WatchedTransport) connectTransport();
        }

        @Override
        protected Transport getTransport(Session session) {
            return new WatchedTransport(session, new URLName("smtp", getHost(), getPort(), null, null, null));
        }
    }

    /** Knows whether the line that ends the message has gone out. */
    private static final class WatchedTransport extends SMTPTransport {

        private Runnable lastLine = () -> {};
        private boolean lastLineIsOut;

        WatchedTransport(Session session, URLName url) {
            super(session, url);
        }

        @Override
        protected void finishData() throws IOException, MessagingException {
            try {
                lastLine.run();
            } catch (RuntimeException stopped) {
                // ends the connection in the middle of the message, which a server then throws away
                throw new IOException("The outbox took the letter back", stopped);
            }
            lastLineIsOut = true;
            super.finishData();
        }
    }
}
