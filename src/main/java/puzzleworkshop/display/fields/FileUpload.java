package puzzleworkshop.display.fields;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.component.upload.UploadI18N;
import com.vaadin.flow.server.Command;
import com.vaadin.flow.server.streams.UploadEvent;
import com.vaadin.flow.server.streams.UploadHandler;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.measure.Refused;

/**
 * The one way a file comes in through a screen. It goes to disk as it arrives and never into memory; the server itself
 * stops at the limit, whatever the browser has let through. What is wrong is told in a sentence with the true reason: too
 * large, of another kind, another one still on its way, or what the reader of the file says.
 */
public class FileUpload extends Upload {

    private static final Logger LOG = LoggerFactory.getLogger(FileUpload.class);
    private static final int MEGABYTE = 1_000_000;

    private final transient Formatter figures;
    private final transient Consumer<String> refuse;
    private final long mostBytes;

    /** Looks at a file in the request's own thread, which may take its time, and says what to do on the screen then. */
    @FunctionalInterface
    public interface Reader {

        /** @throws Refused with the reason that is told */
        Command read(ReceivedFile file) throws IOException;
    }

    /**
     * @param mostBytes of one file
     * @param kinds endings that are offered and taken, such as ".svg"; none: all
     * @param refuse shows a sentence, on the screen's thread; an empty one takes it away
     */
    public FileUpload(Formatter figures, long mostBytes, Consumer<String> refuse, Reader reader, String... kinds) {
        this.figures = figures;
        this.mostBytes = mostBytes;
        this.refuse = refuse;
        setMaxFiles(1);
        setMaxFileSize((int) Math.min(Integer.MAX_VALUE, mostBytes));
        if (kinds.length > 0) {
            setAcceptedFileExtensions(kinds);
        }
        UploadI18N words = new UploadI18N();
        words.setError(new UploadI18N.Error()
                .setTooManyFiles(figures.text("display.upload.one-at-a-time"))
                .setFileIsTooBig(figures.text("display.upload.too-large", megabytes()))
                .setIncorrectFileType(figures.text("display.upload.kind", String.join(", ", kinds))));
        setI18n(words);
        addFileRejectedListener(event -> refuse.accept(rejection(event.getFileName(), event.getErrorMessage())));
        setUploadHandler((UploadHandler) event -> receive(event, reader));
    }

    /** Words of the button and of the place where files may be dropped. */
    public FileUpload labelled(String button, String drop) {
        setUploadButton(new Button(button));
        setDropLabel(new Span(drop));
        return this;
    }

    /** For a phone: the camera opens, and nothing can be dropped. */
    public FileUpload camera(Button button) {
        setUploadButton(button);
        setDropAllowed(false);
        getElement().setAttribute("capture", "environment");
        return this;
    }

    private String rejection(String fileName, String why) {
        return fileName == null || fileName.isEmpty() ? why : figures.text("display.upload.rejected", fileName, why);
    }

    private long megabytes() {
        return Math.max(1, mostBytes / MEGABYTE);
    }

    private void receive(UploadEvent event, Reader reader) {
        UI ui = event.getUI();
        Path file = null;
        try {
            file = Files.createTempFile("puzzle-upload-", ".part");
            Command then = isTooLarge(event, file)
                    ? () -> refuse.accept(
                            rejection(event.getFileName(), figures.text("display.upload.too-large", megabytes())))
                    : reader.read(new ReceivedFile(event.getFileName(), file));
            UiPush.tell(ui, () -> finish(then));
        } catch (Refused refused) {
            UiPush.tell(ui, () -> finish(() -> refuse.accept(figures.say(refused))));
        } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError fault) {
            String mark = UUID.randomUUID().toString().substring(0, 8);
            LOG.error("Fault {}: the file {} could not be taken in", mark, event.getFileName(), fault);
            String words = figures.text("display.upload.fault", event.getFileName(), mark);
            UiPush.tell(ui, () -> finish(() -> refuse.accept(words)));
        } finally {
            delete(file);
        }
    }

    /** On the screen: another file can be chosen from now on. */
    private void finish(Command then) {
        clearFileList();
        refuse.accept("");
        try {
            then.execute();
        } catch (Refused refused) {
            refuse.accept(figures.say(refused));
        }
    }

    /** How large the sender says it is counts only when that is too much already. */
    private boolean isTooLarge(UploadEvent event, Path file) throws IOException {
        if (event.getFileSize() > mostBytes) {
            return true;
        }
        try (InputStream in = event.getInputStream()) {
            return !copied(in, file, mostBytes);
        }
    }

    /** Whether all of it is there; reading stops at the block that passes the limit. */
    static boolean copied(InputStream in, Path file, long mostBytes) throws IOException {
        long length = 0;
        try (OutputStream out = Files.newOutputStream(file)) {
            byte[] block = new byte[1 << 16];
            for (int got = in.read(block); got >= 0; got = in.read(block)) {
                length += got;
                if (length > mostBytes) {
                    return false;
                }
                out.write(block, 0, got);
            }
        }
        return true;
    }

    private static void delete(Path file) {
        try {
            if (file != null) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            LOG.warn("The file {} that was sent could not be deleted; delete it by hand", file, e);
        }
    }
}
