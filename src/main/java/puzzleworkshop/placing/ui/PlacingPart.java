package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.ui.CutJobPart;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.placing.DrawnPrint;
import puzzleworkshop.placing.LearnedPlace;
import puzzleworkshop.placing.LearnedPlaces;
import puzzleworkshop.placing.PlacingRules;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.PositionFiles;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.workshop.SignedIn;

/** At a cut: where its print lies, measured by marks or known from the jig, and the files for that very place. */
@org.springframework.stereotype.Component
class PlacingPart implements CutJobPart {

    private final Positions positions;
    private final LearnedPlaces learned;
    private final PositionFiles files;
    private final Formatter figures;
    private final SignedIn who;

    PlacingPart(Positions positions, LearnedPlaces learned, PositionFiles files, Formatter figures, SignedIn who) {
        this.positions = positions;
        this.learned = learned;
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

    /** The form for a board and the place it was made at; another place asks for another form. */
    private record Asked(Optional<Long> at, Component component) {

        boolean answers(Optional<Position> place) {
            return at.equals(place.map(Position::id));
        }
    }

    /** The section on the panel of one cut. What is typed for a board stays until its place is kept or given up. */
    @StyleSheet("context://placing.css")
    @StyleSheet("context://pattern.css")
    private final class Section extends Div implements CutJobPart.Renewable {

        private transient CutJob job;
        private final transient DrawnPrint print;
        private final transient Runnable changed;
        private final Div board = new Div();
        private final Div marks = new Div();
        private final Div together = new Div();
        private final Div record = new Div();
        private final Map<Integer, Asked> asked = new HashMap<>();
        private int copy = 1;

        Section(CutJob job, DrawnPrint print, Runnable changed) {
            this.job = job;
            this.print = print;
            this.changed = changed;
            addClassNames("placing", "pw-stack");
            List<Position> all = positions.of(job.id());
            if (job.ended().isPresent()) {
                PlaceRecord record = places(all);
                setVisible(!record.isEmpty());
                add(new H3(figures.text("placing.title")), record);
                return;
            }
            add(new H3(figures.text("placing.title")));
            Note caution = new Note(Note.Kind.WARN, figures.text("placing.caution"));
            add(caution);
            int copies = positions.copies(job);
            if (copies > 1) {
                copy = all.isEmpty() ? 1 : all.getLast().copy();
                add(chooser(copies));
            }
            List.of(board, marks, together, record).forEach(group -> group.addClassName("pw-stack"));
            add(board, marks, together, record);
            show();
        }

        @Override
        public boolean renew(CutJob now) {
            boolean same = job.ended().isEmpty()
                    && now.ended().isEmpty()
                    && positions.print(now).filter(print::isPrintedLike).isPresent();
            if (same) {
                job = now;
                show();
            }
            return same;
        }

        private PlaceRecord places(List<Position> all) {
            return new PlaceRecord(all, positions.rules(), positions.traced(job), positions.given(job.id()), figures);
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
            Optional<Position> place = positions.current(job.id(), copy);
            place.ifPresentOrElse(this::known, this::unknown);
            Asked form = asked.compute(
                    copy, (number, before) -> before != null && before.answers(place) ? before : ask(place));
            if (form.component().getParent().filter(marks::equals).isEmpty()) {
                marks.removeAll();
                marks.add(form.component());
            }
            together();
            record();
        }

        /** The marks to be typed where nothing is known, and folded away where a place is. */
        private Asked ask(Optional<Position> place) {
            Div form = new Div();
            form.addClassName("pw-stack");
            if (!print.marks().isEmpty()) {
                form.add(place.isPresent() ? new Details(figures.text("placing.again"), form()) : form());
            } else if (place.isEmpty()) {
                form.add(new Paragraph(figures.text("placing.no-crosses")));
            }
            if (place.isEmpty()) {
                SmallText typing = new SmallText(figures.text("placing.typing"));
                form.add(typing);
            }
            return new Asked(place.map(Position::id), form);
        }

        private void record() {
            record.removeAll();
            PlaceRecord kept = places(positions.of(job.id()));
            if (!kept.isEmpty()) {
                record.add(new Details(figures.text("placing.record"), kept));
            }
        }

        private void unknown() {
            Machine machine = job.setting().machine();
            board.add(PlaceWords.byEye(learned.byEye(print, machine), machine, figures));
            LearnedPlace fence = learned.fence(machine);
            if (fence.since() > 0) {
                board.add(new FenceTake(
                        fence,
                        figures,
                        turns -> change(
                                "placing.jig.taken", () -> positions.takeJig(job.id(), copy, turns, who.name()))));
            }
        }

        private MarkForm form() {
            return new MarkForm(
                    job,
                    copy,
                    print,
                    positions,
                    learned,
                    figures,
                    typed -> change("placing.kept", () -> positions.measure(job.id(), typed, who.name())));
        }

        private void known(Position position) {
            boolean jig = position.source() == Position.Source.JIG;
            PlacingRules rules = positions.rules();
            Div words = new Div(
                    PlaceWords.verdict(position.spare(), position.uncertainty(), jig, figures),
                    new Paragraph(PlaceWords.lies(position, rules, figures)),
                    new Paragraph(figures.text(PlaceWords.finished(position, rules), position.cutSize())));
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
            moved.addClassName("placing-moved");
            board.add(row);
            if (position.asksToBeTraced(job, positions.copies(job))) {
                board.add(tracing(position));
            }
            board.add(new FilesForPlace(job, List.of(position.id()), files, figures, who.name()), moved);
        }

        /** One of several boards, or one measured while the cut runs: its frame has a tick of its own. */
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
            together.removeAll();
            List<Position> placed = IntStream.rangeClosed(1, positions.copies(job))
                    .boxed()
                    .flatMap(number -> positions.current(job.id(), number).stream())
                    .toList();
            if (placed.size() > 1) {
                Div all = new Div(
                        new Paragraph(figures.text("placing.together.why")),
                        new FilesForPlace(job, placed.stream().map(Position::id).toList(), files, figures, who.name()));
                all.addClassName("pw-stack");
                together.add(new Details(figures.text("placing.together", placed.size()), all));
            }
        }

        private void change(String done, Runnable deed) {
            if (Feedback.unlessRefused(figures, done, deed)) {
                changed.run();
            }
        }
    }
}
