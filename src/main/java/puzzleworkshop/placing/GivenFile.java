package puzzleworkshop.placing;

import java.time.Instant;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;

/**
 * A file that was given out for a position.
 *
 * @param sha256 digest of its bytes, 64 hexadecimal digits (FIPS 180-4)
 * @param setting what it says or carries, in words and the machine's own unit
 */
public record GivenFile(
        long id,
        long jobId,
        long positionId,
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
