package puzzleworkshop.orders;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PatternSpec;

/**
 * Faces painted lately, each painted once however many ask at the same time. Some megabytes; those not looked at for the
 * longest time go first.
 */
final class KeptFaces {

    private static final long MOST_BYTES = 16 << 20;

    private final Map<Look, CompletableFuture<byte[]>> faces = new LinkedHashMap<>(64, 0.75f, true);
    private long bytes;

    /** All that a face shows; pictures never change under their number. */
    record Look(PatternSpec pattern, Size finished, Optional<FramedPicture> framed, int longerSide) {}

    byte[] of(Look look, Supplier<byte[]> paint) {
        CompletableFuture<byte[]> fresh = new CompletableFuture<>();
        CompletableFuture<byte[]> known;
        synchronized (this) {
            known = faces.putIfAbsent(look, fresh);
        }
        if (known == null) {
            return paint(look, paint, fresh);
        }
        try {
            return known.join();
        } catch (CompletionException failed) {
            throw failed.getCause() instanceof RuntimeException cause ? cause : failed;
        }
    }

    private byte[] paint(Look look, Supplier<byte[]> paint, CompletableFuture<byte[]> fresh) {
        try {
            byte[] face = paint.get();
            fresh.complete(face);
            keep(face.length);
            return face;
        } catch (RuntimeException | Error failed) {
            synchronized (this) {
                faces.remove(look);
            }
            fresh.completeExceptionally(failed);
            throw failed;
        }
    }

    private synchronized void keep(int more) {
        bytes += more;
        var oldest = faces.values().iterator();
        while (bytes > MOST_BYTES && oldest.hasNext()) {
            CompletableFuture<byte[]> face = oldest.next();
            if (face.isDone()) {
                bytes -= face.join().length;
                oldest.remove();
            }
        }
    }
}
