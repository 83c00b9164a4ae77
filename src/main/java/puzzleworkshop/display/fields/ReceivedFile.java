package puzzleworkshop.display.fields;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file that somebody sent, on disk for as long as it is being looked at.
 *
 * @param name as the sender calls it; shown, never trusted
 */
public record ReceivedFile(String name, Path path) {

    public byte[] content() throws IOException {
        return Files.readAllBytes(path);
    }

    public InputStream open() throws IOException {
        return Files.newInputStream(path);
    }
}
