package puzzleworkshop.letters.mail;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Workshop;

/** Puts letters into the outbox and takes a person's answer for those that could not go. */
@Service
public class MailDesk {

    /** A letter is tried within the minute; what waits this long untried waits for something else. */
    private static final Duration PATIENCE = Duration.ofMinutes(10);

    private final OutboxStore store;
    private final MailAccounts accounts;
    private final Workshop workshop;
    private final AfterCommit afterCommit;
    private final Clock clock;

    MailDesk(OutboxStore store, MailAccounts accounts, Workshop workshop, AfterCommit afterCommit, Clock clock) {
        this.store = store;
        this.accounts = accounts;
        this.workshop = workshop;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /**
     * Within the transaction that keeps the letter: from now on it is sent, once.
     *
     * @throws Refused when no mail server is set up
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void put(long letter, Message message) {
        MailAccount account = accounts.account();
        if (!account.sending()) {
            throw new Refused("letters.send.off");
        }
        String id = MimeWriter.newId(account);
        byte[] bytes = MimeWriter.write(message, account, id, clock.instant().atZone(workshop.zone()));
        store.put(letter, id, bytes, clock.instant());
        afterCommit.tell(new OutboxMoved());
    }

    /** It is tried again, once more from the beginning. */
    @Transactional
    public void again(long letter, MailState seen) {
        settle(letter, seen, MailState.WAITING);
    }

    /** A person found out that it has arrived. */
    @Transactional
    public void arrived(long letter, MailState seen) {
        settle(letter, seen, MailState.SENT);
    }

    /** It is not sent any more. */
    @Transactional
    public void withdraw(long letter, MailState seen) {
        settle(letter, seen, MailState.WITHDRAWN);
    }

    /** Letters that could not go, or not yet, oldest first: those that nothing has tried for ten minutes too. */
    public List<Long> withFaults() {
        return store.withFaults(clock.instant().minus(PATIENCE));
    }

    /** Whether anything is sent; turned off, letters wait in the outbox. */
    public boolean sends() {
        return accounts.account().sending();
    }

    private void settle(long letter, MailState seen, MailState to) {
        boolean may = seen.needsPerson() || seen == MailState.WAITING && to != MailState.SENT;
        if (!may || !store.settle(letter, seen, to, clock.instant())) {
            throw new Refused("letters.settle.meanwhile");
        }
        afterCommit.tell(new OutboxMoved());
    }
}
