package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.ui.CutJobPart;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.placing.DrawnPrint;
import puzzleworkshop.placing.GivenFile;
import puzzleworkshop.placing.LearnedFence;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.PositionFiles;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.workshop.SignedIn;

/** At a cut: where its print lies, measured by marks or known from the jig, and the files for that very place. */
@org.springframework.stereotype.Component
class PlacingPart implements CutJobPart {

    private final Positions positions;
    private final PositionFiles files;
    private final Formatter figures;
    private final SignedIn who;

    PlacingPart(Positions positions, PositionFiles files, Formatter figures, SignedIn who) {
        this.positions = positions;
        this.files = files;
        this.figures = figures;
        this.who = who;
    }

    @Override
    public Optional<Component> show(CutJob job, Runnable changed) {
        if (job.order().isEmpty()) {
            return Optional.empty();
        }
        try {
            return positions.print(job).map(print -> new Section(job, print, changed));
        } catch (Refused noPattern) {
            return Optional.of(new Paragraph(figures.say(noPattern)));
        }
    }

    /** The section on the panel of one cut. */
    @StyleSheet("context://placing.css")
    @StyleSheet("context://pattern.css")
    private final class Section extends Div {

        private final transient CutJob job;
        private final transient DrawnPrint print;
        private final transient Runnable changed;
        private final Div board = new Div();
        private int copy = 1;

        Section(CutJob job, DrawnPrint print, Runnable changed) {
            this.job = job;
            this.print = print;
            this.changed = changed;
            addClassNames("placing", "pw-stack");
            List<Position> all = positions.of(job.id());
            List<GivenFile> given = positions.given(job.id());
            if (job.ended().isPresent()) {
                setVisible(!all.isEmpty());
                add(new H3(figures.text("placing.title")), new PlaceRecord(all, positions.traced(job), given, figures));
                return;
            }
            add(new H3(figures.text("placing.title")));
            Paragraph caution = new Paragraph(figures.text("placing.caution"));
            caution.addClassName("pw-note");
            caution.getElement().setAttribute("data-kind", "warn");
            add(caution);
            int copies = positions.copies(job);
            if (copies > 1) {
                copy = all.isEmpty() ? 1 : all.getLast().copy();
                add(chooser(copies));
            }
            board.addClassName("pw-stack");
            add(board);
            if (!all.isEmpty()) {
                add(new Details(
                        figures.text("placing.record"), new PlaceRecord(all, positions.traced(job), given, figures)));
            }
            show();
        }

        private Select<Integer> chooser(int copies) {
            Select<Integer> select = new Select<>();
            select.setLabel(figures.text("placing.copy"));
            select.setItems(IntStream.rangeClosed(1, copies).boxed().toList());
            select.setItemLabelGenerator(number -> figures.text("placing.copy.of", number, copies));
            select.setValue(copy);
            select.addValueChangeListener(event -> {
                copy = event.getValue();
                show();
            });
            return select;
        }

        private void show() {
            board.removeAll();
            positions.current(job.id(), copy).ifPresentOrElse(this::known, this::unknown);
            together();
        }

        private void unknown() {
            LearnedFence fence = positions.fence(job.setting().machine());
            if (fence.since() > 0) {
                Button take = new Button(
                        figures.text("placing.jig.take"),
                        event -> change("placing.jig.taken", () -> positions.takeJig(job.id(), copy, who.name())));
                Paragraph why =
                        new Paragraph(figures.text("placing.jig.take.why") + " " + FenceSection.words(fence, figures));
                why.addClassName("pw-small");
                board.add(new Div(take, why));
            }
            if (print.marks().isEmpty()) {
                board.add(new Paragraph(figures.text("placing.no-crosses")));
            } else {
                board.add(form());
            }
            Paragraph typing = new Paragraph(figures.text("placing.typing"));
            typing.addClassName("pw-small");
            board.add(typing);
        }

        private MarkForm form() {
            return new MarkForm(
                    job,
                    copy,
                    print,
                    positions,
                    figures,
                    typed -> change("placing.kept", () -> positions.measure(job.id(), typed, who.name())));
        }

        private void known(Position position) {
            boolean jig = position.source() == Position.Source.JIG;
            Div words = new Div(
                    PlaceWords.verdict(position.spare(), position.uncertainty(), jig, figures),
                    new Paragraph(figures.text(
                            "placing.lies",
                            figures.number(Math.toDegrees(position.place().turn()), 2),
                            figures.number(100 * (position.place().stretch() - 1), 2))),
                    new Paragraph(figures.text(
                            position.followed() && Math.abs(position.place().stretch() - 1) > 5e-5
                                    ? "placing.finished.followed"
                                    : "placing.finished",
                            position.cutSize())));
            words.addClassName("pw-stack");
            Div row = new Div(
                    PositionDrawing.of(
                            print,
                            position.turns(),
                            Optional.of(position.place()),
                            Optional.empty(),
                            position.uncertainty().mm(),
                            figures),
                    words);
            row.addClassName("placing-known");
            Button moved = new Button(
                    figures.text("placing.moved"),
                    event -> change("placing.moved.noted", () -> positions.moved(job.id(), copy, who.name())));
            moved.addThemeVariants(ButtonVariant.TERTIARY);
            board.add(row);
            if (position.asksToBeTraced(job)) {
                board.add(tracing(position));
            }
            board.add(new FilesForPlace(job, List.of(position.id()), files, figures, who.name()), moved);
            if (!print.marks().isEmpty()) {
                board.add(new Details(figures.text("placing.again"), form()));
            }
        }

        /** A further board while the cut runs: its frame has a tick of its own. */
        private Component tracing(Position position) {
            Checkbox tick = new Checkbox(
                    figures.text("placing.traced", position.copy()),
                    positions.traced(job).contains(position.id()));
            tick.setReadOnly(tick.getValue());
            tick.setId("frame-traced");
            tick.addValueChangeListener(event -> {
                if (event.isFromClient()) {
                    change("placing.traced.noted", () -> positions.traced(position.id(), who.name()));
                }
            });
            return tick;
        }

        /** All boards that are measured and lie on the bed together. */
        private void together() {
            List<Position> placed = IntStream.rangeClosed(1, positions.copies(job))
                    .boxed()
                    .flatMap(number -> positions.current(job.id(), number).stream())
                    .toList();
            if (placed.size() > 1) {
                Div all = new Div(
                        new Paragraph(figures.text("placing.together.why")),
                        new FilesForPlace(job, placed.stream().map(Position::id).toList(), files, figures, who.name()));
                all.addClassName("pw-stack");
                board.add(new Details(figures.text("placing.together", placed.size()), all));
            }
        }

        private void change(String done, Runnable deed) {
            if (Feedback.unlessRefused(figures, done, deed)) {
                changed.run();
            }
        }
    }
}
