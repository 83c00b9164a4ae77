package puzzleworkshop.letters.mail;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.letters.mail.OutboxStore.Claimed;

/**
 * Sends what lies in the outbox: claim the row, hand the message over, mark the row, each step safe in the database before
 * the next. A message has its identity and all its bytes before the first try. Wherever the program is cut off, the row
 * tells at the next start how far it had come: unclaimed or claimed means not sent, and it is tried again; cut off between
 * the last line and the mark nobody can know, and a person is asked. So no letter is lost and none is sent twice.
 */
class Outbox {

    private static final Logger LOG = LoggerFactory.getLogger(Outbox.class);

    private final OutboxStore store;
    private final Courier courier;
    private final Clock clock;
    /** How a try ended, until the database knows it. */
    private record Unmarked(Claimed claimed, Delivery delivery) {}

    private Unmarked unmarked;

    private final String claim = UUID.randomUUID().toString();

    Outbox(OutboxStore store, Courier courier, Clock clock) {
        this.store = store;
        this.courier = courier;
        this.clock = clock;
    }

    /** At the start, before anything is sent: sees to claims of a program that ended without a word. */
    void recover() {
        int again = store.backInTheBox(claim, clock.instant());
        int asked = store.asks(claim);
        if (again + asked > 0) {
            LOG.warn(
                    "{} letters go back into the outbox; {} may have been sent when the program ended, which a person"
                            + " has to find out",
                    again,
                    asked);
        }
    }

    /** One try for one letter; false when none is due. */
    synchronized boolean sendNext() {
        markWhatIsKnown();
        Optional<Claimed> claimed = store.claim(claim, clock.instant());
        claimed.ifPresent(this::send);
        return claimed.isPresent();
    }

    private void send(Claimed claimed) {
        long letter = claimed.letter();
        AtomicBoolean handedOver = new AtomicBoolean();
        Delivery delivery;
        try {
            delivery = courier.deliver(claimed.message(), () -> {
                if (!store.handingOver(letter, claim, clock.instant())) {
                    throw new IllegalStateException("another program has this letter");
                }
                handedOver.set(true);
            });
        } catch (RuntimeException fault) {
            LOG.error("Letter {} could not be sent", letter, fault);
            String words = String.valueOf(fault.getMessage());
            delivery = handedOver.get() ? new Delivery.Unclear(words) : new Delivery.NotYet(words);
        }
        unmarked = new Unmarked(claimed, delivery);
        markWhatIsKnown();
    }

    /** A mark that the database did not take is made before anything else is claimed. */
    private void markWhatIsKnown() {
        if (unmarked != null) {
            mark(unmarked.claimed(), unmarked.delivery());
            unmarked = null;
        }
    }

    private void mark(Claimed claimed, Delivery delivery) {
        long letter = claimed.letter();
        Instant now = clock.instant();
        switch (delivery) {
            case Delivery.Accepted accepted -> store.sent(letter, claim, now);
            case Delivery.NotYet later -> {
                Optional<Duration> wait = Backoff.after(claimed.tries());
                if (wait.isPresent()) {
                    store.waits(letter, claim, later.fault(), now.plus(wait.get()));
                } else {
                    store.needsPerson(letter, claim, MailState.FAILED, later.fault());
                }
            }
            case Delivery.Refusal refusal -> store.needsPerson(letter, claim, MailState.FAILED, refusal.fault());
            case Delivery.Unclear unclear -> store.needsPerson(letter, claim, MailState.ASKS, unclear.fault());
        }
    }
}
