package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.MarkingOut;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.orders.ui.StageStrip;
import puzzleworkshop.progress.Running;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** The order that is being worked on: its picture, its board and where it lies, what to look at, and large buttons. */
class JobCard extends Div {

    private final transient Waiting waiting;
    private final Stage stage;
    private final transient Bench bench;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable again;
    private final Div parts = new Div();
    private final Div checklist = new Div();
    private final Button done;
    private final Component clock;

    JobCard(
            Waiting waiting,
            Stage stage,
            Bench bench,
            Formatter figures,
            SignedIn signedIn,
            Workshop workshop,
            Runnable tick,
            Runnable again,
            Runnable afterWrong) {
        this.waiting = waiting;
        this.stage = stage;
        this.bench = bench;
        this.figures = figures;
        this.signedIn = signedIn;
        this.again = again;
        addClassNames("pw-section", "bench-work");
        parts.addClassName("bench-parts");
        add(head(), new StageStrip(waiting.order(), figures), pictures());
        waiting.restsUntil().ifPresent(until -> add(note("bench.rests", figures.moment(until))));
        waiting.unpaidSince().ifPresent(since -> add(note("bench.unpaid", figures.day(since))));
        if (!waiting.order().note().isBlank()) {
            add(note("bench.note", waiting.order().note()));
        }
        checklist(Checklist.of(stage));
        done = new Button(getTranslation("bench.tick", getTranslation(stage.textKey())), e -> {
            tick.run();
            // Disabled at the press, so that a second one is no second tick; where it only asked, it may be pressed
            // again.
            e.getSource().setEnabled(true);
        });
        clock = clock();
        add(parts, checklist, buttons(workshop, afterWrong));
        waiting.mayNot().ifPresent(this::mayNot);
    }

    /** What is not allowed is not offered: its reason stands there, with the way to what has to happen first. */
    private void mayNot(Sentence why) {
        done.setVisible(false);
        boolean inRun = waiting.openRun().isPresent();
        clock.setVisible(inRun);
        Anchor way = inRun
                ? new Anchor("print-runs", getTranslation("bench.print.runs"))
                : new Anchor("orders/" + waiting.order().number(), getTranslation("bench.may-not.see"));
        Div reason = new Div(new Paragraph(figures.say(why)), way);
        reason.addClassNames("pw-note", "bench-may-not");
        reason.getElement().setAttribute("data-kind", "warn");
        addComponentAtIndex(1, reason);
    }

    void put(Component part) {
        parts.add(part);
    }

    /** What to look at, in place of what stood there; without lines it is not shown. */
    final void checklist(List<Checklist.Line> lines) {
        checklist.removeAll();
        checklist.setVisible(!lines.isEmpty());
        checklist.addClassName("bench-checklist");
        checklist.add(new H3(getTranslation("bench.checklist")));
        for (Checklist.Line line : lines) {
            Checkbox box = new Checkbox(getTranslation(line.textKey()));
            if (line.caution()) {
                box.addClassName("bench-caution");
                box.setLabel(getTranslation("bench.caution", getTranslation(line.textKey())));
            }
            checklist.add(box);
        }
        checklist.add(new SmallText(getTranslation("bench.defer")));
    }

    void withoutClock() {
        clock.setVisible(false);
    }

    void ticking(StagePart.Tick tick) {
        done.setVisible(tick != StagePart.Tick.NOT_YET && waiting.mayNot().isEmpty());
        done.setThemeVariant(ButtonVariant.PRIMARY, tick == StagePart.Tick.NEXT);
    }

    private Component head() {
        Order order = waiting.order();
        Anchor link = new Anchor("orders/" + order.number(), order.number());
        Div head = new Div(new H2(order.customer().name()), link);
        head.add(new Span(getTranslation(
                "bench.card.size",
                figures.size(order.puzzle().finished()),
                order.puzzle().pieces(),
                order.quantity())));
        head.addClassName("bench-work-head");
        return head;
    }

    private Component pictures() {
        Div pictures = new Div(new OrderPreview(waiting.order(), OrderPreview.Width.MIDDLE, figures));
        pictures.addClassName("bench-pictures");
        if (stage.compareTo(Stage.SHEET_PREP) >= 0 && stage.compareTo(Stage.CUT) <= 0) {
            for (Sheet board : waiting.boards()) {
                Span where = new Span(getTranslation(
                        "bench.board",
                        board.id().value(),
                        board.facts().place().isBlank()
                                ? getTranslation("bench.board.no-place")
                                : board.facts().place()));
                where.addClassName("bench-board-place");
                Div sheet = new Div(new SheetDrawing(figures).show(board), where);
                board.reservation()
                        .filter(held -> !MarkingOut.isStraight(held.placement()))
                        .ifPresent(held -> sheet.add(new MarkingTable(board, held, figures)));
                sheet.addClassName("bench-board");
                pictures.add(sheet);
            }
            if (waiting.boards().isEmpty()) {
                pictures.add(note("bench.no-board", waiting.order().number()));
            }
        }
        return pictures;
    }

    private Component note(String key, Object... arguments) {
        Note note = new Note(Note.Kind.WARN, getTranslation(key, arguments));
        return note;
    }

    private Component buttons(Workshop workshop, Runnable afterWrong) {
        Order order = waiting.order();
        done.addThemeVariants(ButtonVariant.PRIMARY);
        done.addClassName("bench-big");
        done.setDisableOnClick(true);
        Button wrong = new Button(
                getTranslation("bench.wrong"),
                e -> new WrongDialog(order, stage, bench, figures, signedIn, workshop, afterWrong).open());
        wrong.addClassName("bench-big");
        Div buttons = new Div(done, clock, wrong, new PhotoButton(order, stage, bench, figures, signedIn, again));
        buttons.addClassName("bench-buttons");
        Div all = new Div(buttons, photos());
        all.addClassName("pw-stack");
        return all;
    }

    private Component clock() {
        Order order = waiting.order();
        Optional<Running> running = waiting.running();
        Button button = new Button(
                getTranslation(running.isPresent() ? "bench.clock.stop" : "bench.clock.start"),
                e -> Feedback.unlessRefused(
                        figures, running.isPresent() ? "bench.clock.done" : "bench.clock.begun", () -> {
                            if (running.isPresent()) {
                                bench.stop(order.id(), signedIn.name());
                            } else {
                                bench.start(order.id(), stage, signedIn.name());
                            }
                            again.run();
                        }));
        button.addClassName("bench-big");
        running.ifPresent(r -> {
            Span elapsed = new Span();
            elapsed.addClassName("bench-elapsed");
            elapsed.getElement()
                    .setAttribute("data-bench-since", Long.toString(r.since().toEpochMilli()));
            elapsed.getElement()
                    .setAttribute("data-bench-now", Long.toString(bench.now().toEpochMilli()));
            button.setSuffixComponent(elapsed);
        });
        return button;
    }

    private Component photos() {
        Div photos = new Div();
        photos.addClassName("bench-photos");
        for (Bench.PhotoNote photo : bench.photos(waiting.order().id())) {
            Image image = new Image(
                    "bench-photos/" + photo.id(),
                    getTranslation(
                            "bench.photo.of",
                            getTranslation(photo.stage().textKey()),
                            photo.who(),
                            figures.moment(photo.at())));
            Anchor full = new Anchor("bench-photos/" + photo.id(), image);
            full.setTarget("_blank");
            photos.add(full);
        }
        return photos;
    }
}
