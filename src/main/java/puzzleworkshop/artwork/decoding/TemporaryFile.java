package puzzleworkshop.artwork.decoding;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that is gone when the work on it is done. */
public final class TemporaryFile implements AutoCloseable {

    private final Path path;

    private TemporaryFile(Path path) {
        this.path = path;
    }

    public static TemporaryFile empty() throws IOException {
        return new TemporaryFile(Files.createTempFile("puzzle-picture-", ".part"));
    }

    /** Holds the stream's bytes, at most so many; the rest is not read. */
    public static TemporaryFile of(InputStream content, long mostBytes) throws IOException {
        TemporaryFile file = empty();
        try (OutputStream out = Files.newOutputStream(file.path)) {
            byte[] block = new byte[64 * 1024];
            long left = mostBytes;
            while (left > 0) {
                int got = content.read(block, 0, (int) Math.min(block.length, left));
                if (got < 0) {
                    break;
                }
                out.write(block, 0, got);
                left -= got;
            }
        } catch (IOException | RuntimeException failed) {
            file.close();
            throw failed;
        }
        return file;
    }

    public Path path() {
        return path;
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(path);
    }
}
