package puzzleworkshop.proofs;

import java.time.Instant;

/**
 * A customer's approval by link.
 *
 * @param fingerprint of what was approved, see {@link ApprovedSnapshot#fingerprint()}
 */
public record ProofApproval(Instant at, String by, String fingerprint) {}
