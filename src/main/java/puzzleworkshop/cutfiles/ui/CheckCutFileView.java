package puzzleworkshop.cutfiles.ui;

import com.vaadin.flow.component.DetachEvent;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.Command;
import jakarta.annotation.security.PermitAll;
import java.io.IOException;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.cutfiles.Inspection;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.display.fields.ReceivedFile;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Refused;

/** Drop a cut file from elsewhere: its real size, what is wrong with it, and a cleaned one to take away. */
@Route("check-cut-file")
@Menu(title = "pattern.check.title", order = 65)
@PermitAll
@StyleSheet("context://pattern.css")
public class CheckCutFileView extends Div implements HasDynamicTitle {

    private static final Logger LOG = LoggerFactory.getLogger(CheckCutFileView.class);

    private final transient Formatter figures;
    private final Paragraph refusal = new Paragraph();
    private final ProgressBar working = new WorkingBar();
    private final CheckChoices choices;
    private final InspectionDrawing drawing = new InspectionDrawing();
    private final Div drawn = new Div(drawing);
    private final InspectionList list;
    private transient byte[] bytes = {};
    private transient String name = "";
    /** The look that is under way, or the last one. */
    private transient Thread looking = Thread.ofVirtual().unstarted(() -> {});

    public CheckCutFileView(Formatter figures, Machines machines) {
        this.figures = figures;
        this.choices = new CheckChoices(figures, machines.standard().map(Machine::bed), this::again);
        this.list = new InspectionList(figures, drawing::show);
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("pattern.check.title"), new Paragraph(getTranslation("pattern.check.lead")));

        FileUpload upload = new FileUpload(figures, DrawnFile.MOST_BYTES, this::told, this::receive, ".svg", ".dxf")
                .labelled(getTranslation("pattern.choose-file"), getTranslation("pattern.check.drop"));
        upload.setId("cut-file-upload");
        upload.setWidthFull();
        refusal.addClassName("pw-note");
        refusal.getElement().setAttribute("data-kind", "bad");
        refusal.getElement().setAttribute("role", "alert");
        working.setIndeterminate(true);
        working.setVisible(false);
        refuse("");
        Div intake = new Div(upload, choices, working, refusal);
        intake.addClassName("pw-section");

        drawn.addClassNames("pw-section", "pattern-check-drawing");
        Div result = new Div(drawn, list);
        result.addClassName("pattern-check-result");
        drawn.setVisible(false);
        list.setVisible(false);
        add(head, intake, result);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("pattern.check.title");
    }

    /** In the request's own thread, which may read the file but none of the screen's fields. */
    private Command receive(ReceivedFile file) throws IOException {
        byte[] received = file.content();
        return () -> {
            bytes = received;
            name = file.name();
            again();
        };
    }

    /** Looks at the file with what is chosen now; a look that is still under way for earlier choices is given up. */
    private void again() {
        if (bytes.length == 0) {
            return;
        }
        UI ui = UI.getCurrent();
        byte[] same = bytes;
        String sameName = name;
        CheckChoices.Chosen chosen = choices.chosen();
        working.setVisible(true);
        looking.interrupt();
        looking = Thread.ofVirtual().unstarted(() -> {
            Command answer = inspected(sameName, same, chosen);
            Thread looked = Thread.currentThread();
            UiPush.tell(ui, () -> {
                // an answer for choices or a file that are no longer on the screen is not shown
                if (looked == looking) {
                    answer.execute();
                }
            });
        });
        looking.start();
    }

    @Override
    protected void onDetach(DetachEvent event) {
        looking.interrupt();
        super.onDetach(event);
    }

    /** What to show of a file. */
    private Command inspected(String fileName, byte[] received, CheckChoices.Chosen chosen) {
        try {
            DrawnFile file = DrawnFile.read(fileName, received, chosen.pxPerInch());
            Inspection inspection = CutInspector.inspect(file, chosen.bed(), chosen.print());
            return () -> show(inspection, chosen);
        } catch (Refused refused) {
            return () -> notRead(figures.say(refused));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError fault) {
            LOG.error("The cut file {} could not be inspected", fileName, fault);
            return () -> notRead(getTranslation("pattern.check.fault", fileName));
        }
    }

    private void told(String sentence) {
        if (sentence.isEmpty()) {
            refuse("");
        } else {
            notRead(sentence);
        }
    }

    private void show(Inspection inspection, CheckChoices.Chosen chosen) {
        refuse("");
        drawn.setVisible(true);
        list.setVisible(true);
        drawing.show(inspection, Optional.empty());
        list.show(inspection, chosen.speed());
    }

    /** What was found in the file before must not be taken for this one's. */
    private void notRead(String sentence) {
        drawn.setVisible(false);
        list.setVisible(false);
        refuse(sentence);
    }

    private void refuse(String sentence) {
        working.setVisible(false);
        refusal.setText(sentence);
        refusal.setVisible(!sentence.isEmpty());
    }
}
