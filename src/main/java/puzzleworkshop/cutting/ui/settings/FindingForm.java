package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.textfield.TextArea;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;

/** What came of a cut, asked the same way after a try and after a real cut; big enough for a dusty thumb. */
public class FindingForm extends Div {

    private final transient Formatter figures;
    private final RadioButtonGroup<Result> result = new RadioButtonGroup<>();
    private final RadioButtonGroup<Integer> charring = new RadioButtonGroup<>();
    private final LengthField gap;
    private final TextArea note = new TextArea();
    private final PhotoField photo;

    public FindingForm(Formatter figures) {
        this.figures = figures;
        addClassName("cutting-finding");
        result.setLabel(figures.text("cutting.finding.result"));
        result.setItems(List.of(Result.values()));
        result.setItemLabelGenerator(value -> figures.text(value.textKey()));
        result.addClassName("cutting-big-choice");
        charring.setLabel(figures.text("cutting.finding.charring"));
        charring.setItems(
                IntStream.rangeClosed(0, Finding.WORST_CHARRING).boxed().toList());
        charring.setItemLabelGenerator(value -> figures.text("cutting.charring." + value));
        charring.addClassName("cutting-big-choice");
        gap = new LengthField(figures.text("cutting.finding.gap"), figures.units());
        gap.setHelperText(figures.text("cutting.finding.gap.help"));
        note.setLabel(figures.text("cutting.finding.note"));
        note.setMaxLength(2000);
        note.setWidthFull();
        photo = new PhotoField(figures);
        add(result, charring, gap, note, photo);
    }

    /** What was said, or none with the missing parts marked. */
    public Optional<Finding> read() {
        boolean gapReadable = gap.typed().isBlank()
                || gap.getValue() != null && gap.getValue().mm() >= 0;
        mark(result, result.getValue() == null, "cutting.finding.result.missing");
        mark(charring, charring.getValue() == null, "cutting.finding.charring.missing");
        gap.setInvalid(!gapReadable);
        gap.setErrorMessage(figures.text("cutting.finding.gap.unreadable"));
        Component first =
                result.getValue() == null ? result : charring.getValue() == null ? charring : gapReadable ? null : gap;
        if (first != null) {
            // On a phone the button lies a screen below the question.
            first.getElement().executeJs("""
                this.scrollIntoView({block: 'center'});
                (this.querySelector('vaadin-radio-button') ?? this).focus({preventScroll: true});
                """);
            return Optional.empty();
        }
        return Optional.of(new Finding(
                result.getValue(), charring.getValue(), Optional.ofNullable(gap.getValue()), note.getValue()));
    }

    public Optional<TrialPhoto> photo() {
        return photo.photo();
    }

    void clear() {
        result.clear();
        charring.clear();
        gap.setValue(null);
        note.clear();
        photo.clear();
    }

    private void mark(RadioButtonGroup<?> field, boolean missing, String key) {
        field.setInvalid(missing);
        field.setErrorMessage(figures.text(key));
    }
}
