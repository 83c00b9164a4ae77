package puzzleworkshop.papers;

import java.time.Instant;
import java.util.Optional;

/**
 * A paper as it was given away: the very bytes.
 *
 * @param invoice which it is the paper of; empty for a quote
 * @param running of a quote within its order, from 1
 * @param about what a quote offered, as a digest: an offer that differs gets a paper of its own
 * @param late whether it was set after the day of issue, because the program did not keep papers then
 */
public record KeptPaper(
        long number,
        Optional<InvoiceId> invoice,
        int running,
        String about,
        boolean late,
        Instant keptAt,
        byte[] pdf) {}
