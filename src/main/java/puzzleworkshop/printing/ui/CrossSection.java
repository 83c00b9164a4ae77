package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.crosses.PrintedCrosses;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.ui.OverhangUse;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** In Set-up: the crosses in the overhang by which the laser finds a print, with one corner drawn. */
@org.springframework.stereotype.Component
class CrossSection implements SetUpSection, OverhangUse {

    private static final int PLACE = 41;

    private final PrintedCrosses crosses;
    private final Workshop workshop;
    private final Formatter figures;

    CrossSection(PrintedCrosses crosses, Workshop workshop, Formatter figures) {
        this.crosses = crosses;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public Optional<Sentence> lostIn(Length overhang) {
        return crosses.setting()
                .wanted()
                .filter(wanted -> !wanted.fit(overhang))
                .map(wanted -> Sentence.of("printing.crosses.lost", overhang, wanted.leastOverhang()));
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("printing.crosses", Form::new));
    }

    /** The setting; made new for each screen. */
    @StyleSheet("context://printing.css")
    private final class Form extends Div {

        private final Checkbox printed;
        private final LengthField span;
        private final LengthField away;
        private final SvgBox corner = new SvgBox("printing-cross");

        Form() {
            addClassName("pw-section");
            PrintedCrosses.Setting now = crosses.setting();
            printed = new Checkbox(getTranslation("printing.crosses.printed"), now.printed());
            span = field("span", now.crosses().span());
            away = field("away", now.crosses().away());
            span.addValueChangeListener(event -> draw());
            away.addValueChangeListener(event -> draw());
            Button save = new Button(getTranslation("printing.crosses.keep"), event -> keep());
            save.addThemeVariants(ButtonVariant.PRIMARY);
            Paragraph lead = new Paragraph(getTranslation("printing.crosses.lead"));
            lead.addClassName("pw-soft");
            Div fields = new Div(printed, span, away);
            fields.addClassName("pw-form");
            add(new H2(getTranslation("printing.crosses")), lead, fields, corner, save);
            draw();
        }

        private LengthField field(String key, Length value) {
            LengthField field = new LengthField(getTranslation("printing.crosses." + key), figures.units());
            field.setValue(value);
            return field;
        }

        private boolean inRange(LengthField field, double least, double most) {
            Length typed = field.getValue();
            boolean fits = typed != null && typed.mm() >= least && typed.mm() <= most;
            field.setErrorMessage(figures.text("printing.crosses.range", Length.mm(least), Length.mm(most)));
            field.setInvalid(!fits);
            return fits;
        }

        private void keep() {
            if (inRange(span, 1, 10) & inRange(away, 0.5, 20)) {
                PrintedCrosses.Setting typed =
                        new PrintedCrosses.Setting(printed.getValue(), new Crosses(span.getValue(), away.getValue()));
                Feedback.unlessRefused(
                        figures,
                        "printing.crosses.kept",
                        () -> crosses.keep(typed, workshop.tradeNumbers().overhang()));
            }
        }

        /** The top left corner of a sticker: edge of the print, outer cut, cross. */
        private void draw() {
            if (span.getValue() == null || away.getValue() == null) {
                return;
            }
            double overhang = workshop.tradeNumbers().overhang().mm();
            double room =
                    Math.max(overhang, away.getValue().mm() + span.getValue().mm() / 2) + 1;
            double a = -away.getValue().mm();
            double half = span.getValue().mm() / 2;
            Svg svg = Svg.of(
                            -room,
                            -room,
                            room + 6,
                            room + 4,
                            getTranslation("printing.crosses.drawing"),
                            getTranslation("printing.crosses.drawing.words"))
                    .path("M" + Svg.n(-overhang) + ",4V" + Svg.n(-overhang) + "H6V4Z", "printing-cross-print")
                    .path("M0,4V0H6", "printing-cross-cut")
                    .line(a - half, a, a + half, a, "printing-cross-line")
                    .line(a, a - half, a, a + half, "printing-cross-line");
            corner.draw(svg);
        }
    }
}
