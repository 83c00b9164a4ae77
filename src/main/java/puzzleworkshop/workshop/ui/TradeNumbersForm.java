package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** The trade's usual numbers: overhang, margins, resolutions and the like. */
class TradeNumbersForm extends Div {

    private final Formatter figures;
    private final Div form = new Div();
    private final List<Runnable> checks = new ArrayList<>();
    private boolean complete;

    TradeNumbersForm(Workshop workshop, Formatter figures, List<OverhangUse> uses) {
        this.figures = figures;
        addClassName("pw-section");
        TradeNumbers now = workshop.tradeNumbers();
        form.addClassName("pw-form");
        LengthField overhang = length("overhang", now.overhang(), 0, 20);
        Note lost = Note.hidden(Note.Kind.WARN);
        lost.setId("lost-in-overhang");
        Runnable look = () -> {
            String words = Optional.ofNullable(overhang.getValue()).stream()
                    .flatMap(typed -> uses.stream().flatMap(use -> use.lostIn(typed).stream()))
                    .map(figures::say)
                    .collect(Collectors.joining(" "));
            lost.setText(words);
            lost.setVisible(!words.isEmpty());
        };
        overhang.addValueChangeListener(event -> look.run());
        look.run();
        LengthField margin = length("margin", now.holdDownMargin(), 0, 100);
        LengthField shift = length("shift", now.stickShift(), 0, 20);
        NumberField turn = new NumberField(getTranslation("workshop.trade.turn"));
        turn.setMin(0);
        turn.setMax(5);
        turn.setStep(0.1);
        turn.setValue(now.stickTurnDegrees());
        form.add(turn);
        IntegerField sharp = whole("sharp", now.sharpPpi(), 1, 2400);
        IntegerField good = whole("good", now.goodPpi(), 1, 2400);
        IntegerField soft = whole("soft", now.softPpi(), 1, 2400);
        LengthField piece = length("piece", now.smallestPiece(), 10, 50);
        LengthField thickness = length("thickness", now.boardThickness(), 0.5, 20);
        LengthField usefulWidth = length("useful-width", now.smallestUseful().width(), 10, 1000);
        LengthField usefulHeight = length("useful-height", now.smallestUseful().height(), 10, 1000);
        IntegerField buffer = whole("buffer", now.bufferDays(), 0, 30);
        IntegerField validity = whole("validity", now.quoteValidDays(), 1, 365);
        Checkbox outlineLast = new Checkbox(getTranslation("workshop.trade.outline-last"), now.outlineLast());
        form.add(outlineLast);

        Button save = new Button(getTranslation("workshop.save"), event -> {
            complete = turn.getValue() != null && !turn.isInvalid();
            checks.forEach(Runnable::run);
            if (complete) {
                Feedback.unlessRefused(
                        figures,
                        "workshop.saved",
                        () -> workshop.save(new TradeNumbers(
                                overhang.getValue(),
                                margin.getValue(),
                                shift.getValue(),
                                turn.getValue(),
                                sharp.getValue(),
                                good.getValue(),
                                soft.getValue(),
                                piece.getValue(),
                                thickness.getValue(),
                                new Size(usefulWidth.getValue(), usefulHeight.getValue()),
                                buffer.getValue(),
                                validity.getValue(),
                                outlineLast.getValue())));
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        add(
                new H2(getTranslation("workshop.trade")),
                new Paragraph(getTranslation("workshop.trade.lead")),
                form,
                lost,
                save);
    }

    private LengthField length(String name, Length value, double least, double most) {
        LengthField field = new LengthField(getTranslation("workshop.trade." + name), figures.units());
        field.setValue(value);
        checks.add(() -> {
            Length typed = field.getValue();
            boolean fits = typed != null && typed.mm() >= least && typed.mm() <= most;
            field.setInvalid(!fits);
            field.setErrorMessage(figures.text("workshop.trade.length-range", Length.mm(least), Length.mm(most)));
            complete &= fits;
        });
        form.add(field);
        return field;
    }

    private IntegerField whole(String name, int value, int least, int most) {
        IntegerField field = new IntegerField(getTranslation("workshop.trade." + name));
        field.setMin(least);
        field.setMax(most);
        field.setValue(value);
        checks.add(() -> {
            boolean fits = field.getValue() != null && field.getValue() >= least && field.getValue() <= most;
            field.setInvalid(!fits);
            field.setErrorMessage(getTranslation("workshop.trade.whole-range", least, most));
            complete &= fits;
        });
        form.add(field);
        return field;
    }
}
