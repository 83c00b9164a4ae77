package puzzleworkshop.proofs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;

/** The workshop's side of customers' links: hands them out, withdraws them, and reads what customers said. */
@Service
public class Proofs {

    /** Long enough for a slow answer and the time until the parcel is there. */
    public static final Duration LASTS = Duration.ofDays(60);

    private final ProofStore store;
    private final Orders orders;
    private final Clock clock;

    Proofs(ProofStore store, Orders orders, Clock clock) {
        this.store = store;
        this.orders = orders;
        this.clock = clock;
    }

    /** Makes a link; an older one of the same order stops working. */
    @Transactional
    public Token makeLink(OrderId id, String who) {
        orders.lock(id);
        Token token = Token.fresh();
        Instant now = clock.instant();
        store.withdraw(id, now);
        store.add(id, token, now, who, now.plus(LASTS));
        orders.note(id, Sentence.of("proofs.history.made"), who);
        return token;
    }

    /** The link that works now, to be told to its customer once more; empty for one made before links could be shown again. */
    public Optional<Token> shownAgain(Optional<ProofLink> link) {
        return link.filter(this::isOpen).flatMap(open -> store.token(open.id()));
    }

    /** From now on the link shows nothing any more. */
    @Transactional
    public void withdrawLink(OrderId id, String who) {
        orders.lock(id);
        if (store.withdraw(id, clock.instant())) {
            orders.note(id, Sentence.of("proofs.history.withdrawn"), who);
        }
    }

    /** The newest link of an order, open or not. */
    public Optional<ProofLink> linkOf(OrderId id) {
        return store.latest(id);
    }

    public boolean isOpen(ProofLink link) {
        return link.isOpen(clock.instant());
    }

    /** Newest first. */
    public List<ProofApproval> approvals(OrderId id) {
        return store.approvals(id);
    }

    /** Newest first. */
    public List<ProofWish> wishes(OrderId id) {
        return store.wishes(id);
    }

    /** Somebody saw to a wish. */
    @Transactional
    public void settle(Order order, ProofWish wish, String who) {
        orders.lock(order.id());
        store.settle(order.id(), wish.id(), who, clock.instant());
        orders.note(order.id(), Sentence.of("proofs.history.settled"), who);
    }
}
