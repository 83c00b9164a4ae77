package puzzleworkshop.database.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.database.Restoring;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.measure.Refused;

/** Takes a backup from the browser and reads it back into a workshop that is not open yet. */
public class RestoreUpload extends Div {

    /** What the server lets through in one request; larger backups are given at the start of the program. */
    private static final int MOST_MEGABYTES = 75;

    private static final Logger LOG = LoggerFactory.getLogger(RestoreUpload.class);

    private final transient Restoring restoring;
    private final transient Formatter figures;
    private final transient Runnable done;
    private final Upload upload;
    private final Paragraph outcome = new Paragraph();
    private final ProgressBar working = new ProgressBar();

    /** @param done is called on the screen's thread when the backup was read back */
    public RestoreUpload(Restoring restoring, Formatter figures, Runnable done) {
        this.restoring = restoring;
        this.figures = figures;
        this.done = done;
        addClassName("pw-stack");
        upload = new Upload(UploadHandler.toTempFile((what, file) -> read(file)));
        upload.setMaxFiles(1);
        upload.setMaxFileSize(MOST_MEGABYTES * 1024 * 1024);
        upload.setAcceptedFileExtensions(".zip");
        upload.setUploadButton(new Button(figures.text("database.restore.choose")));
        upload.setDropLabel(new Span(figures.text("database.restore.drop")));
        upload.addFileRejectedListener(rejected -> refuse(figures.text("database.restore.too-large", MOST_MEGABYTES)));
        working.setIndeterminate(true);
        working.setVisible(false);
        outcome.addClassName("pw-note");
        outcome.getElement().setAttribute("role", "status");
        outcome.setVisible(false);
        add(new Paragraph(figures.text("database.restore.lead")), upload, working, outcome);
    }

    private void read(File file) {
        UI ui = UI.getCurrentOrThrow();
        upload.setVisible(false);
        working.setVisible(true);
        say(figures.text("database.restore.working"), "wait");
        Thread.ofVirtual().name("restore").start(() -> {
            try {
                restoring.from(file.toPath());
                UiPush.tell(ui, done::run);
            } catch (Refused refused) {
                UiPush.tell(ui, () -> refuse(figures.say(refused)));
            } catch (RuntimeException fault) {
                LOG.error("A backup could not be read back", fault);
                UiPush.tell(
                        ui,
                        () -> refuse(figures.text(
                                "database.restore.damaged", fault.getClass().getSimpleName())));
            } finally {
                delete(file.toPath());
            }
        });
    }

    private void refuse(String words) {
        working.setVisible(false);
        upload.clearFileList();
        upload.setVisible(true);
        say(words, "bad");
    }

    private void say(String words, String kind) {
        outcome.setText(words);
        outcome.getElement().setAttribute("data-kind", kind);
        outcome.setVisible(true);
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            LOG.warn("The uploaded backup {} could not be deleted; delete it by hand", file, e);
        }
    }
}
