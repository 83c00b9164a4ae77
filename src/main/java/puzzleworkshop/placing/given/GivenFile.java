package puzzleworkshop.placing.given;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.measure.OrderId;

/**
 * A file that was given out: for a position, or the usual one of an order.
 *
 * @param order it is for; none for a test cut
 * @param jobId of the cut; none when no cut was prepared yet
 * @param positionId none for a usual file, which is laid by eye
 * @param sha256 digest of its bytes, 64 hexadecimal digits (FIPS 180-4)
 * @param setting what it says or carries, in words and the machine's own unit
 */
public record GivenFile(
        long id,
        Optional<OrderId> order,
        Optional<Long> jobId,
        Optional<Long> positionId,
        Purpose purpose,
        FileForm form,
        String name,
        String sha256,
        int bytes,
        String setting,
        String by,
        Instant at) {

    /** The first digits, enough to tell two files apart by eye. */
    public String shortDigest() {
        return sha256.substring(0, 16);
    }
}
