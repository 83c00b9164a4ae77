package puzzleworkshop.letters.mail;

import jakarta.mail.MessagingException;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.letters.mail.SmtpCourier.Access;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.SignedIn;

/** The owner's mail server. Its password can be set and cleared, and is never given out again. */
@Service
public class MailAccounts {

    private final MailAccountStore store;
    private final PasswordSeal seal;
    private final SignedIn signedIn;
    private final AfterCommit afterCommit;

    MailAccounts(MailAccountStore store, PasswordSeal seal, SignedIn signedIn, AfterCommit afterCommit) {
        this.store = store;
        this.seal = seal;
        this.signedIn = signedIn;
        this.afterCommit = afterCommit;
    }

    public MailAccount account() {
        MailAccountStore.Row row = store.read();
        MailAccount bare = row.account();
        return new MailAccount(
                bare.sending(),
                bare.host(),
                bare.port(),
                bare.security(),
                bare.user(),
                bare.fromName(),
                bare.fromAddress(),
                row.sealed().flatMap(seal::open).isPresent());
    }

    /** Whether letters can be given to the outbox. */
    public boolean sends() {
        return store.read().account().sending();
    }

    /**
     * Keeps how letters are sent.
     *
     * @param password a new one; empty: the one that is kept stays, unless the server or its user is another
     * @throws Refused when it cannot be sent through, or the signed-in person is no owner
     */
    @Transactional
    public void save(MailAccount account, String password) {
        ownerOnly();
        MailAccount checked = account.checked();
        MailAccount before = store.read().account();
        store.save(checked);
        boolean elsewhere =
                !before.host().equals(checked.host()) || !before.user().equals(checked.user());
        if (!password.isEmpty()) {
            store.savePassword(Optional.of(seal.seal(password)));
        } else if (elsewhere || checked.user().isEmpty()) {
            // a password is never sent to a server it was not typed for
            store.savePassword(Optional.empty());
        }
        if (checked.sending() && !checked.user().isEmpty() && !account().hasPassword()) {
            throw new Refused("letters.account.password");
        }
        afterCommit.tell(new OutboxMoved());
    }

    /**
     * Connects to the server and signs in; takes up to a minute and a quarter, so not in a screen's own thread.
     *
     * @throws Refused with the server's words when it cannot be done
     */
    public void tryConnection() {
        try {
            new SmtpCourier(this::access).tryConnection();
        } catch (MessagingException fault) {
            throw new Refused(SmtpCourier.why(fault, store.read().account()));
        }
    }

    Access access() {
        return new Access(
                store.read().account(),
                store.read().sealed().flatMap(seal::open).orElse(""));
    }

    private void ownerOnly() {
        if (!signedIn.isOwner()) {
            throw new Refused("letters.owner-only");
        }
    }
}
