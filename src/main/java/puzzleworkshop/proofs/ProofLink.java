package puzzleworkshop.proofs;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.measure.OrderId;

/**
 * A customer's private link to one order.
 *
 * @param seenAt when the customer last looked
 * @param withdrawnAt when it was withdrawn, or replaced by a newer one
 */
public record ProofLink(
        long id,
        OrderId order,
        Instant madeAt,
        String madeBy,
        Instant expiresAt,
        Optional<Instant> seenAt,
        Optional<Instant> withdrawnAt) {

    public boolean isOpen(Instant now) {
        return withdrawnAt.isEmpty() && now.isBefore(expiresAt);
    }
}
