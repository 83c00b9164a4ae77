package puzzleworkshop.letters.mail;

import java.util.Optional;
import java.util.regex.Pattern;

/** Whether a customer's contact is an e-mail address, and not a telephone number or a remark. */
public final class MailAddress {

    /** An addr-spec of RFC 5322 with a dot-atom on both sides; quoted local parts are rare enough to be sent by hand. */
    private static final Pattern FORM = Pattern.compile(
            "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+(\\.[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+)*@[A-Za-z0-9-]+(\\.[A-Za-z0-9-]+)+");

    private static final int MOST = 254;

    private MailAddress() {}

    public static Optional<String> of(String contact) {
        String text = contact.strip();
        return text.length() <= MOST && FORM.matcher(text).matches() ? Optional.of(text) : Optional.empty();
    }

    static String domain(String address) {
        return address.substring(address.indexOf('@') + 1);
    }
}
