package puzzleworkshop.cutfiles.ui;

import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

/** How to look at a cut file: pixels an inch, the bed, the print, and the speed that tells how much time doubles cost. */
class CheckChoices extends Div {

    /** Pixels an inch in use: CSS, and what older drawing programs wrote. */
    private static final List<Integer> DENSITIES = List.of(96, 90, 72);

    /** A 20 W diode on 3 mm plywood; common practice. */
    private static final double USUAL_MM_PER_MINUTE = 300;

    private final Select<Integer> density = new Select<>();
    private final NumberField speed = new NumberField();
    private final LengthField bedWidth;
    private final LengthField bedHeight;
    private final LengthField printWidth;
    private final LengthField printHeight;

    /** What was chosen; a size counts when both its sides are given. */
    record Chosen(double pxPerInch, Optional<Size> bed, Optional<Size> print, Speed speed) {}

    CheckChoices(Formatter figures, Optional<Size> bed, Runnable changed) {
        addClassName("pattern-check-choices");
        bedWidth = new LengthField(getTranslation("pattern.check.bed-width"), figures.units());
        bedHeight = new LengthField(getTranslation("pattern.check.bed-height"), figures.units());
        printWidth = new LengthField(getTranslation("pattern.check.print-width"), figures.units());
        printHeight = new LengthField(getTranslation("pattern.check.print-height"), figures.units());
        bed.ifPresent(size -> {
            bedWidth.setValue(size.width());
            bedHeight.setValue(size.height());
        });
        density.setLabel(getTranslation("pattern.check.density"));
        density.setItems(DENSITIES);
        density.setValue((int) DrawnFile.USUAL_PX_PER_INCH);
        speed.setLabel(getTranslation("pattern.check.speed"));
        speed.setMin(1);
        speed.setValue(USUAL_MM_PER_MINUTE);
        speed.setValueChangeMode(ValueChangeMode.ON_CHANGE);
        density.addValueChangeListener(event -> changed.run());
        speed.addValueChangeListener(event -> changed.run());
        for (LengthField field : List.of(bedWidth, bedHeight, printWidth, printHeight)) {
            field.addValueChangeListener(event -> {
                field.setInvalid(!field.typed().isBlank() && !isLength(field.getValue()));
                changed.run();
            });
        }
        Div row = new Div(bedWidth, bedHeight, printWidth, printHeight, density, speed);
        row.addClassName("pattern-check-fields");
        add(new Details(getTranslation("pattern.check.choices"), row));
    }

    Chosen chosen() {
        Double typed = speed.getValue();
        return new Chosen(
                density.getValue(),
                size(bedWidth, bedHeight),
                size(printWidth, printHeight),
                Speed.mmPerMinute(typed == null || typed < 1 ? USUAL_MM_PER_MINUTE : typed));
    }

    private static Optional<Size> size(LengthField width, LengthField height) {
        return isLength(width.getValue()) && isLength(height.getValue())
                ? Optional.of(new Size(width.getValue(), height.getValue()))
                : Optional.empty();
    }

    private static boolean isLength(Length length) {
        return length != null && length.isPositive();
    }
}
