package puzzleworkshop.letters.mail;

import java.util.Set;
import puzzleworkshop.measure.Refused;

/**
 * The mail server through which letters leave. Its password is no part of it: it is kept encrypted and never shown again.
 *
 * @param sending whether letters are sent at all
 * @param fromName as customers see the sender; may be empty
 * @param hasPassword whether a password is kept that can still be read
 */
public record MailAccount(
        boolean sending,
        String host,
        int port,
        Security security,
        String user,
        String fromName,
        String fromAddress,
        boolean hasPassword) {

    private static final Set<String> THIS_COMPUTER = Set.of("localhost", "127.0.0.1", "::1");
    public static final int LAST_PORT = 65_535;

    /** How the connection is kept secret (RFC 8314: TLS from the first byte is to be preferred). */
    public enum Security {
        /** Encrypted from the first byte, usually port 465. */
        TLS,
        /** Asks for encryption before anything is said, usually port 587; without it nothing is sent. */
        STARTTLS,
        /** Plain; only to a server on this computer. */
        NONE;

        public String textKey() {
            return "letters.security." + name();
        }
    }

    /** @throws Refused when it cannot be sent through */
    MailAccount checked() {
        if (port < 1 || port > LAST_PORT) {
            throw new Refused("letters.account.port", LAST_PORT);
        }
        if (sending && (host.isBlank() || !host.matches("[A-Za-z0-9.:-]+"))) {
            throw new Refused("letters.account.host");
        }
        if (sending && MailAddress.of(fromAddress).isEmpty()) {
            throw new Refused("letters.account.from");
        }
        if (security == Security.NONE && sending && !THIS_COMPUTER.contains(host)) {
            throw new Refused("letters.account.open");
        }
        return this;
    }
}
