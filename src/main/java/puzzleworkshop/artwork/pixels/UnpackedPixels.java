package puzzleworkshop.artwork.pixels;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import puzzleworkshop.artwork.reading.ImageHeader;

/**
 * All pixels of a picture, unpacked into a temporary file that is mapped into memory: any of them can be had, in any
 * order, without filling the heap. 200 megapixels of four channels are 800 MB of disk.
 */
public final class UnpackedPixels implements AutoCloseable {

    private final Path unpacked;
    private final MappedByteBuffer bytes;
    private final ImageHeader facts;
    private final Pixels.Channels channels;

    private UnpackedPixels(Path unpacked, MappedByteBuffer bytes, ImageHeader facts, Pixels.Channels channels) {
        this.unpacked = unpacked;
        this.bytes = bytes;
        this.facts = facts;
        this.channels = channels;
    }

    /** Decodes once; close it to be rid of the file. */
    public static UnpackedPixels of(Path picture, ImageHeader facts) throws IOException {
        Path unpacked = Files.createTempFile("puzzle-pixels-", ".raw");
        try {
            Pixels.Channels channels;
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(unpacked), 1 << 20)) {
                channels = Pixels.of(picture, facts).each(read -> (y, samples) -> write(out, samples, facts, read));
            }
            try (FileChannel channel = FileChannel.open(unpacked, StandardOpenOption.READ)) {
                MappedByteBuffer bytes = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size());
                return new UnpackedPixels(unpacked, bytes, facts, channels);
            }
        } catch (IOException | RuntimeException failed) {
            Files.deleteIfExists(unpacked);
            throw failed;
        }
    }

    private static void write(OutputStream out, byte[] samples, ImageHeader facts, Pixels.Channels read) {
        try {
            out.write(samples, 0, facts.storedWidth() * read.count());
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    TurnedRows turned(int quarterTurns) {
        return new TurnedPixels(
                facts.storedWidth(),
                facts.storedHeight(),
                channels.count(),
                facts.orientation(),
                quarterTurns,
                (index, length, into, at) -> bytes.get(index, into, at, length));
    }

    ScreenColours colours() {
        return channels.colours();
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(unpacked);
    }
}
