package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.placing.LocatingJig;
import puzzleworkshop.workshop.Workshop;

/** The fence for a machine's bed: sizes of blanks in, drawing and cut files out. */
@StyleSheet("context://pattern.css")
class JigSection extends Div {

    private static final int MOST_SIZES = 12;
    private static final Pattern SIZE = Pattern.compile("([\\d.]+)\\s*[x×*]\\s*([\\d.]+)");

    private final transient Machine machine;
    private final transient Formatter figures;
    private final LengthField arm;
    private final TextField blanks;
    private final Div drawn = new Div();

    JigSection(Machine machine, Workshop workshop, Formatter figures) {
        this.machine = machine;
        this.figures = figures;
        addClassName("pw-section");
        arm = new LengthField(figures.text("placing.jig.arm-width"), figures.units());
        arm.setValue(LocatingJig.USUAL_ARM);
        arm.addValueChangeListener(event -> draw());
        blanks =
                new TextField(figures.text("placing.jig.blanks", figures.units().symbol()));
        blanks.setHelperText(figures.text("placing.jig.blanks.help"));
        blanks.addClassName("placing-jig-sizes");
        blanks.setMaxLength(200);
        blanks.setValueChangeMode(ValueChangeMode.LAZY);
        blanks.setValue(usual(workshop.tradeNumbers().blankFor(Size.mm(200, 150))));
        blanks.addValueChangeListener(event -> draw());
        Div fields = new Div(arm, blanks);
        fields.addClassName("pw-form");
        Paragraph lead = new Paragraph(figures.text("placing.jig.lead"));
        lead.addClassName("pw-soft");
        Note caution = new Note(Note.Kind.WARN, figures.text("placing.jig.caution"));
        drawn.addClassName("pw-stack");
        add(new H2(figures.text("placing.jig")), lead, fields, drawn, caution);
        draw();
    }

    private String usual(Size blank) {
        UnitSystem units = figures.units();
        return Svg.n(Math.round(units.valueOf(blank.width()) * 100) / 100.0) + " × "
                + Svg.n(Math.round(units.valueOf(blank.height()) * 100) / 100.0);
    }

    private void draw() {
        drawn.removeAll();
        Optional<List<Size>> sizes = sizes();
        blanks.setInvalid(sizes.isEmpty());
        blanks.setErrorMessage(figures.text("placing.jig.blanks.unreadable", MOST_SIZES));
        if (sizes.isEmpty() || arm.getValue() == null) {
            return;
        }
        try {
            LocatingJig jig = new LocatingJig(machine.bed(), arm.getValue(), sizes.get());
            drawn.add(
                    drawing(jig),
                    files(
                            "placing.jig.fence",
                            "jig-" + machine.name(),
                            jig.fence(figures.text("placing.jig.title", machine.name()))),
                    files(
                            "placing.jig.marking",
                            "jig-marks-" + machine.name(),
                            jig.marking(figures.text("placing.jig.title", machine.name()))));
        } catch (Refused refused) {
            drawn.add(new Verdict(Verdict.Kind.BAD, figures.say(refused)));
        }
    }

    /** Pairs of numbers, in the house's units. */
    private Optional<List<Size>> sizes() {
        List<Size> sizes = new ArrayList<>();
        for (String typed : blanks.getValue().replace(',', '.').split(";")) {
            Matcher pair = SIZE.matcher(typed.strip());
            if (!pair.matches() || sizes.size() == MOST_SIZES) {
                return Optional.empty();
            }
            try {
                Length width = figures.units().length(Double.parseDouble(pair.group(1)));
                Length height = figures.units().length(Double.parseDouble(pair.group(2)));
                if (!width.isPositive() || !height.isPositive()) {
                    return Optional.empty();
                }
                sizes.add(new Size(width, height));
            } catch (NumberFormatException twoPoints) {
                return Optional.empty();
            }
        }
        return Optional.of(sizes);
    }

    private Div files(String key, String name, CutPlan plan) {
        Span words = new Span(figures.text(key));
        words.addClassName("pw-soft");
        Div row = new Div(words, new CutFileLinks(name, () -> plan));
        row.addClassNames("pw-apart", "placing-jig-files");
        return row;
    }

    private SvgBox drawing(LocatingJig jig) {
        double w = jig.bed().width().mm();
        double h = jig.bed().height().mm();
        double room = Math.max(w, h) * 0.03;
        Svg svg = Svg.of(
                        -room,
                        -room,
                        w + 2 * room,
                        h + 2 * room,
                        figures.text("placing.jig.drawing"),
                        figures.text("placing.jig.drawing.words"))
                .rect(0, 0, w, h, "placing-jig-bed");
        Point corner = jig.corner();
        for (CurvePath line : jig.fence("").outline()) {
            svg.path(line.svgPathData(), "placing-jig-fence");
        }
        for (CurvePath line : jig.marking("").inner()) {
            svg.path(line.svgPathData(), "placing-jig-line");
        }
        for (Size blank : jig.blanks()) {
            svg.rect(
                    corner.xMm(),
                    corner.yMm() - blank.height().mm(),
                    blank.width().mm(),
                    blank.height().mm(),
                    "placing-jig-blank");
        }
        return new SvgBox("placing-jig").draw(svg);
    }
}
