package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H4;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.ExpectedMark;
import puzzleworkshop.geometry.align.InsidePrint;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.placing.DrawnPrint;
import puzzleworkshop.placing.LearnedPlace;
import puzzleworkshop.placing.LearnedPlaces;
import puzzleworkshop.placing.MarkVisit;
import puzzleworkshop.placing.Measuring;
import puzzleworkshop.placing.Positions;

/** The marks to visit, what the machine shows at each, and at once what that says; nothing is kept before it is asked for. */
class MarkForm extends Div {

    private final transient CutJob job;
    private final int copy;
    private final transient DrawnPrint print;
    private final transient Positions positions;
    private final transient Machine machine;
    private final transient LearnedPlace byHand;
    private final transient LearnedPlace inFence;
    private final transient Formatter figures;
    private final List<Row> rows = new ArrayList<>();
    private final LiesTurned turned;
    private final Checkbox inJig;
    private final Div drawing = new Div();
    private final Div said = new Div();
    private final Button keep;

    MarkForm(
            CutJob job,
            int copy,
            DrawnPrint print,
            Positions positions,
            LearnedPlaces learned,
            Formatter figures,
            java.util.function.Consumer<Positions.Typed> kept) {
        this.job = job;
        this.copy = copy;
        this.print = print;
        this.positions = positions;
        this.figures = figures;
        machine = job.setting().machine();
        byHand = learned.byHand(machine);
        inFence = learned.fence(machine);
        addClassName("placing-form");
        MachineAxes axes = machine.control().axes();
        turned = new LiesTurned(0, figures);
        turned.addValueChangeListener(event -> look());
        inJig = new Checkbox(figures.text("placing.in-jig"));
        inJig.addValueChangeListener(event -> look());
        for (int i = 0; i < print.marks().size(); i++) {
            rows.add(new Row(i + 1, print.marks().get(i), axes));
        }
        Div list = new Div();
        list.addClassName("placing-rows");
        rows.forEach(list::add);
        keep = new Button(figures.text("placing.keep"), event -> kept.accept(typed()));
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        keep.setEnabled(false);
        said.addClassName("pw-stack");
        said.getElement().setAttribute("aria-live", "polite");
        SmallText counts = new SmallText(figures.text(
                "placing.counts",
                figures.text("placing.corner." + axes.origin()),
                figures.text(axes.xToRight() ? "placing.x.right" : "placing.x.left"),
                figures.text(axes.yToBack() ? "placing.y.back" : "placing.y.front"),
                figures.text("placing.unit." + axes.unit())));
        Paragraph which = new Paragraph(figures.text("placing.which"));
        Div words = new Div(new H4(figures.text("placing.way.marks")), which, counts, turned, list, said, inJig, keep);
        words.addClassName("pw-stack");
        add(drawing, words);
        look();
    }

    private Positions.Typed typed() {
        List<MarkVisit> visits =
                rows.stream().flatMap(row -> row.visit().stream()).toList();
        return new Positions.Typed(copy, turned.getValue(), inJig.getValue(), visits);
    }

    /** Says at once what the numbers mean. */
    private void look() {
        said.removeAll();
        drawing.removeAll();
        rows.forEach(Row::clear);
        keep.setEnabled(false);
        Positions.Typed typed = typed();
        usual().expected(print, typed.turns(), typed.visits(), machine, positions.rules())
                .forEach((mark, at) -> rows.get(mark - 1).expects(at));
        if (typed.visits().size() < Measuring.FEWEST) {
            drawing.add(PositionDrawing.of(print, typed.turns(), Optional.empty(), Optional.empty(), 0, figures));
            Span missing = new Span(figures.text(
                    "placing.missing", Measuring.FEWEST - typed.visits().size()));
            missing.addClassName("pw-small");
            said.add(missing);
            return;
        }
        try {
            show(positions.look(job, print, typed), typed);
        } catch (Refused refused) {
            said.add(new Verdict(Verdict.Kind.BAD, figures.say(refused)));
        }
    }

    private LearnedPlace usual() {
        return inJig.getValue() ? inFence : byHand;
    }

    private void show(Measuring measured, Positions.Typed typed) {
        List<Double> residuals = measured.reading().fit().residuals();
        for (int i = 0; i < measured.visits().size(); i++) {
            boolean named = measured.reading().concerned().contains(i);
            // two marks always fit each other: nothing that is off by 0 mm is to look checked
            if (residuals.size() > Measuring.FEWEST || named) {
                rows.get(measured.visits().get(i).mark() - 1).says(Length.mm(residuals.get(i)), named);
            }
        }
        boolean placed = measured.reading().isPlaced();
        keep.setEnabled(placed);
        drawing.add(PositionDrawing.of(
                print,
                typed.turns(),
                placed ? Optional.of(measured.reading().fit().place()) : Optional.empty(),
                measured.proof().map(InsidePrint::tightest),
                measured.proof().map(InsidePrint::uncertainty).orElse(0.0),
                figures));
        if (!placed) {
            said.add(new Verdict(Verdict.Kind.BAD, figures.say(measured.said())));
            return;
        }
        said.add(new Span(figures.say(measured.said())));
        measured.reading().shear().ifPresent(shear -> {
            SmallText square = new SmallText(figures.text(
                    "placing.shear",
                    figures.number(100 * shear.uneven(), 2),
                    figures.number(Math.toDegrees(shear.skew()), 2),
                    figures.number(100 * shear.deviation(), 2)));
            said.add(square);
        });
        measured.proof()
                .ifPresent(proof -> said.add(
                        PlaceWords.verdict(Length.mm(proof.spare()), Length.mm(proof.uncertainty()), false, figures)));
        if (typed.visits().size() == Measuring.FEWEST) {
            String key = usual().mayTurn(measured.reading().fit().place().turn())
                    ? "placing.two-only"
                    : "placing.two-turned";
            said.add(new Verdict(Verdict.Kind.WARN, figures.text(key)));
        }
    }

    /** One mark: its number, X and Y, and how well it fits the others. */
    private final class Row extends Div {

        private final int mark;
        private final transient Point drawn;
        private final NumberField x;
        private final NumberField y;
        private final Span residual = new Span();

        Row(int mark, Point drawn, MachineAxes axes) {
            this.mark = mark;
            this.drawn = drawn;
            addClassName("placing-row");
            Span number = new Span(Integer.toString(mark));
            number.addClassName("placing-row-number");
            x = field("X", axes);
            y = field("Y", axes);
            residual.addClassName("pw-small");
            add(number, x, y, residual);
        }

        private NumberField field(String axis, MachineAxes axes) {
            NumberField field = new NumberField(axis);
            field.setAriaLabel(figures.text("placing.axis", axis, Integer.toString(mark)));
            Span unit = new Span(axes.unit() == MachineAxes.Unit.MM ? "mm" : "in");
            unit.addClassName("pw-unit");
            field.setSuffixComponent(unit);
            field.setMin(-Measuring.MOST_SHOWN);
            field.setMax(Measuring.MOST_SHOWN);
            field.setValueChangeMode(ValueChangeMode.LAZY);
            field.addValueChangeListener(event -> look());
            return field;
        }

        Optional<MarkVisit> visit() {
            return x.getValue() == null || y.getValue() == null
                    ? Optional.empty()
                    : Optional.of(new MarkVisit(mark, drawn, x.getValue(), y.getValue()));
        }

        void clear() {
            residual.setText("");
            getElement().removeAttribute("data-named");
        }

        /** Only where nothing was typed yet: whoever looks for a cross drives there first. */
        void expects(ExpectedMark look) {
            MachineAxes axes = machine.control().axes();
            int digits = axes.unit() == MachineAxes.Unit.MM ? 1 : 2;
            String shownX = figures.number(axes.shownX(look.at(), machine.bed()), digits);
            String shownY = figures.number(axes.shownY(look.at(), machine.bed()), digits);
            residual.setText(
                    look.within().isPresent()
                            ? figures.text(
                                    "placing.expected.within",
                                    shownX,
                                    shownY,
                                    Length.mm(look.within().getAsDouble()))
                            : figures.text("placing.expected", shownX, shownY));
        }

        void says(Length off, boolean named) {
            residual.setText(figures.text("placing.residual", off));
            getElement().setAttribute("data-named", named);
        }
    }
}
