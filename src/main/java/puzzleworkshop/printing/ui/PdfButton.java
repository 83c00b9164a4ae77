package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.DetachEvent;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.server.streams.DownloadHandler;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.printing.pdf.RunPrinter;

/** Draws the PDF of a run beside the screen's thread, shows how far it is, and offers it when it is done. */
class PdfButton extends Div {

    private static final Logger LOG = LoggerFactory.getLogger(PdfButton.class);
    private static final double STEP = 0.02;

    private final transient RunPrinter printer;
    private final transient Formatter figures;
    private final long run;
    private final Button start;
    private final ProgressBar progress = new ProgressBar();
    private transient Path made;

    PdfButton(RunPrinter printer, long run, Formatter figures) {
        this.printer = printer;
        this.figures = figures;
        this.run = run;
        addClassName("printing-actions");
        start = new Button(getTranslation("printing.download"), event -> draw());
        progress.getElement().setAttribute("aria-label", getTranslation("printing.making"));
        add(start);
    }

    private void draw() {
        UI ui = UI.getCurrent();
        discard();
        removeAll();
        progress.setValue(0);
        add(progress);
        UiPush.beside("draw print run " + run, () -> {
            try {
                Path file = Files.createTempFile("print-run", ".pdf");
                try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
                    printer.write(run, out, share -> tellProgress(ui, share));
                } catch (IOException | RuntimeException wrong) {
                    Files.deleteIfExists(file);
                    throw wrong;
                }
                UiPush.tell(ui, () -> offer(file));
            } catch (Refused refused) {
                UiPush.tell(ui, () -> failed(figures.say(refused)));
            } catch (IOException | RuntimeException wrong) {
                LOG.error("Print run {} could not be drawn", run, wrong);
                UiPush.tell(ui, () -> failed(getTranslation("printing.failed")));
            }
        });
    }

    private void tellProgress(UI ui, double share) {
        UiPush.tell(ui, () -> {
            if (share - progress.getValue() >= STEP || share >= 1) {
                progress.setValue(share);
            }
        });
    }

    private void offer(Path file) {
        made = file;
        removeAll();
        Anchor save = new Anchor(
                DownloadHandler.forFile(file.toFile(), printer.fileName(run)), getTranslation("printing.ready"));
        save.addClassName("printing-save");
        add(save);
        save.getElement().callJsFunction("focus");
    }

    private void failed(String sentence) {
        removeAll();
        add(start);
        Feedback.tell(sentence, true);
    }

    @Override
    protected void onDetach(DetachEvent event) {
        super.onDetach(event);
        discard();
    }

    private void discard() {
        if (made != null) {
            try {
                Files.deleteIfExists(made);
            } catch (IOException stays) {
                LOG.warn("A drawn PDF stays in the temporary folder", stays);
            }
            made = null;
        }
    }
}
