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
import puzzleworkshop.artwork.rows.Pixels;
import puzzleworkshop.artwork.rows.ScreenColours;

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
            return unpacked(unpacked, facts, unpack(picture, facts, unpacked));
        } catch (IOException | RuntimeException | Error failed) {
            Files.deleteIfExists(unpacked);
            throw failed;
        }
    }

    /** Decodes into a file: row after row, channels side by side. */
    public static Pixels.Channels unpack(Path picture, ImageHeader facts, Path into) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(into), 1 << 20)) {
            return Pixels.of(picture, facts).each(read -> (y, samples) -> write(out, samples, facts, read));
        }
    }

    /** Such a file; it is gone when this is closed. */
    public static UnpackedPixels unpacked(Path file, ImageHeader facts, Pixels.Channels channels) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            long wanted = (long) facts.storedWidth() * facts.storedHeight() * channels.count();
            if (channel.size() != wanted) {
                throw new IOException(channel.size() + " bytes of pixels, not " + wanted);
            }
            MappedByteBuffer bytes = channel.map(FileChannel.MapMode.READ_ONLY, 0, wanted);
            return new UnpackedPixels(file, bytes, facts, channels);
        }
    }

    private static void write(OutputStream out, byte[] samples, ImageHeader facts, Pixels.Channels read) {
        try {
            out.write(samples, 0, facts.storedWidth() * read.count());
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    public ImageHeader facts() {
        return facts;
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
