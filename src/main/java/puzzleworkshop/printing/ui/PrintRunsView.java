package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.Copy;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.printing.pdf.RunPrinter;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Pictures that wait for the printer, the runs they are put together in, and what was printed. */
@Route("print-runs")
@Menu(title = "printing.title", order = 35)
@PermitAll
@StyleSheet("context://printing.css")
public class PrintRunsView extends Div implements HasDynamicTitle {

    private static final Logger LOG = LoggerFactory.getLogger(PrintRunsView.class);
    private static final int DAYS_AHEAD = 7;

    private final transient GangRuns runs;
    private final transient PrintRoom room;
    private final transient List<PrintMedium> media;
    private final transient RunPrinter printer;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final WaitingList waiting;
    private final Div open = new Div();
    private final Map<Long, RunPanel> panels = new HashMap<>();
    private final PastRuns past;
    private final Select<PrintMedium> medium = new Select<>();
    private final DayField dueBy = new DayField();
    private final Button propose = new Button();
    private final ProgressBar busy = new WorkingBar();

    public PrintRunsView(
            GangRuns runs,
            PrintRoom room,
            PrintMedia media,
            RunPrinter printer,
            Formatter figures,
            SignedIn signedIn,
            Workshop workshop) {
        this.runs = runs;
        this.room = room;
        this.media = media.owned();
        this.printer = printer;
        this.figures = figures;
        this.signedIn = signedIn;
        waiting = new WaitingList(figures);
        past = new PastRuns(runs, room, figures, signedIn, this::refresh);
        addClassName("pw-page");
        PageHead head = new PageHead(getTranslation("printing.title"), new Paragraph(getTranslation("printing.lead")));
        open.addClassName("printing-main");
        Div side = new Div(section("printing.waiting", waiting, proposing(workshop.today())), caution());
        side.addClassName("printing-side");
        Div main = new Div(open, past);
        main.addClassName("printing-main");
        Div page = new Div(side, main);
        page.addClassName("printing-page");
        add(head, page);
        refresh();
    }

    private Component proposing(LocalDate today) {
        medium.setLabel(getTranslation("printing.medium"));
        medium.setItemLabelGenerator(PrintMedium::name);
        medium.setItems(media);
        media.stream().findFirst().ifPresent(medium::setValue);
        medium.addValueChangeListener(event -> showWaiting());
        dueBy.setLabel(getTranslation("printing.due-by"));
        dueBy.setValue(today.plusDays(DAYS_AHEAD));
        propose.setText(getTranslation("printing.propose"));
        propose.addThemeVariants(ButtonVariant.PRIMARY);
        propose.addClickListener(event -> propose());
        busy.setIndeterminate(true);
        busy.setVisible(false);
        busy.getElement().setAttribute("aria-label", getTranslation("printing.proposing"));
        Div form = new Div(medium, dueBy, propose, busy);
        form.addClassName("printing-propose");
        return form;
    }

    private Component caution() {
        Note caution = new Note(Note.Kind.WARN, getTranslation("printing.caution"));
        return caution;
    }

    private Component section(String titleKey, Component... parts) {
        Div section = new Div(new H2(getTranslation(titleKey)));
        section.add(parts);
        section.addClassName("pw-section");
        return section;
    }

    /** Laying out takes seconds: off the screen's thread, with a bar that runs. */
    private void propose() {
        if (dueBy.isEmpty()) {
            dueBy.refuse();
            return;
        }
        if (medium.isEmpty()) {
            return;
        }
        long on = medium.getValue().id().orElseThrow();
        LocalDate day = dueBy.getValue();
        String who = signedIn.name();
        UI ui = UI.getCurrent();
        working(true);
        UiPush.beside("lay out a print run", () -> {
            try {
                PrintRun run = runs.propose(on, day, who);
                UiPush.tell(ui, () -> {
                    refresh();
                    Feedback.tell(figures.text("printing.proposed", run.id()), false);
                    working(false);
                });
            } catch (RuntimeException wrong) {
                UiPush.tell(ui, () -> {
                    tell(wrong);
                    working(false);
                    refresh();
                });
            }
        });
    }

    private void working(boolean now) {
        propose.setEnabled(!now);
        busy.setVisible(now);
    }

    private void tell(RuntimeException wrong) {
        if (wrong instanceof Refused refused) {
            Feedback.tell(figures.say(refused), true);
        } else {
            LOG.error("A print run could not be laid out", wrong);
            Feedback.tell(getTranslation("printing.failed"), true);
        }
    }

    private void refresh() {
        showWaiting();
        List<PrintRun> now = runs.open();
        List<Component> shown = new ArrayList<>();
        for (PrintRun run : now) {
            RunPanel panel = panels.computeIfAbsent(
                    run.id(), id -> new RunPanel(runs, room, printer, figures, signedIn, this::refresh));
            panel.show(run);
            shown.add(panel);
        }
        panels.keySet().retainAll(now.stream().map(PrintRun::id).toList());
        if (shown.isEmpty()) {
            EmptyState empty =
                    new EmptyState(getTranslation("printing.open-none"), getTranslation("printing.open-none-next"));
            shown.add(empty);
        }
        if (!open.getChildren().toList().equals(shown)) {
            open.removeAll();
            open.add(shown);
        }
        past.refresh();
    }

    private void showWaiting() {
        List<Copy> copies = runs.waiting();
        PrintMedium chosen = medium.getValue();
        Map<OrderId, Sentence> heldBack = runs.heldBack();
        waiting.show(copies, chosen, media, heldBack);
        propose.setEnabled(copies.stream()
                .filter(copy -> !heldBack.containsKey(copy.item().order().id()))
                .anyMatch(copy -> chosen == null || chosen.takes(copy.item().sticker())));
    }

    @Override
    public String getPageTitle() {
        return getTranslation("printing.title");
    }
}
