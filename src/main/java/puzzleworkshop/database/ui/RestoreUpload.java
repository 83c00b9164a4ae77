package puzzleworkshop.database.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.server.Command;
import puzzleworkshop.database.Restoring;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.display.fields.ReceivedFile;
import puzzleworkshop.display.progress.WorkingBar;

/** Takes a backup from the browser and reads it back into a workshop that is not open yet. */
public class RestoreUpload extends Div {

    /** What the server lets through in one request; larger backups are given at the start of the program. */
    private static final int MOST_MEGABYTES = 75;

    private final transient Restoring restoring;
    private final transient Formatter figures;
    private final transient Runnable done;
    private final FileUpload upload;
    private final Paragraph outcome = new Paragraph();
    private final ProgressBar working = new WorkingBar();

    /** @param done is called on the screen's thread when the backup was read back */
    public RestoreUpload(Restoring restoring, Formatter figures, Runnable done) {
        this.restoring = restoring;
        this.figures = figures;
        this.done = done;
        addClassName("pw-stack");
        upload = new FileUpload(figures, MOST_MEGABYTES * 1_000_000L, this::refuse, this::read, ".zip")
                .labelled(figures.text("database.restore.choose"), figures.text("database.restore.drop"));
        working.setIndeterminate(true);
        working.setVisible(false);
        outcome.addClassName("pw-note");
        outcome.getElement().setAttribute("role", "status");
        outcome.setVisible(false);
        SmallText larger = new SmallText(figures.text("database.restore.too-large", MOST_MEGABYTES));
        add(new Paragraph(figures.text("database.restore.lead")), upload, larger, working, outcome);
    }

    /** In the request's own thread, which takes seconds to minutes; the screen says so meanwhile. */
    private Command read(ReceivedFile file) {
        UI ui = getUI().orElseThrow();
        UiPush.tell(ui, () -> {
            upload.setVisible(false);
            working.setVisible(true);
            say(figures.text("database.restore.working"), "wait");
        });
        restoring.from(file.path());
        return done::run;
    }

    private void refuse(String words) {
        working.setVisible(false);
        upload.setVisible(true);
        say(words, "bad");
        outcome.setVisible(!words.isEmpty());
    }

    private void say(String words, String kind) {
        outcome.setText(words);
        outcome.getElement().setAttribute("data-kind", kind);
        outcome.setVisible(true);
    }
}
