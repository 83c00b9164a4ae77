package puzzleworkshop.offers.ui.fields;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.UnitSystem;

/** Width and height of a puzzle, with sizes that are often asked for. */
public class SizeFields extends Div {

    /** A size that is often asked for; A sizes are those of ISO 216. */
    private record Preset(String name, Size size) {}

    private static final List<Preset> PRESETS = List.of(
            new Preset("A5", Size.mm(210, 148)),
            new Preset("A4", Size.mm(297, 210)),
            new Preset("A3", Size.mm(420, 297)),
            new Preset("15 × 10 cm", Size.mm(150, 100)),
            new Preset("20 × 20 cm", Size.mm(200, 200)),
            new Preset("30 × 20 cm", Size.mm(300, 200)),
            new Preset("50 × 35 cm", Size.mm(500, 350)));

    /** The same where people measure in inches; usual sizes of prints and frames there (common practice). */
    private static final List<Preset> IN_INCHES = List.of(
            inches(7, 5), inches(8, 8), inches(10, 8), inches(14, 11), inches(16, 12), inches(12, 8), inches(20, 16));

    /** The one a new order begins with. */
    private static final int USUAL_SIZE = 5;

    private static Preset inches(double width, double height) {
        return new Preset(
                "%.0f × %.0f in".formatted(width, height),
                new Size(UnitSystem.INCHES.length(width), UnitSystem.INCHES.length(height)));
    }

    /** No board is longer; a picture framed for more, or for less than a thumb, would be a sliver without a pixel. */
    private static final Length SHORTEST = Length.mm(10);

    private static final Length LONGEST = Length.mm(3000);

    private final transient Formatter figures;
    private final LengthField width;
    private final LengthField height;
    private final Select<Preset> preset = new Select<>();
    private boolean filling;

    /** @param changed told of what a person chose or typed, not of what is put in here */
    public SizeFields(Formatter figures, Runnable changed) {
        this.figures = figures;
        addClassName("neworder-size");
        width = new LengthField(getTranslation("offers.new.width"), figures.units());
        height = new LengthField(getTranslation("offers.new.height"), figures.units());
        width.setId("width");
        height.setId("height");
        for (LengthField side : List.of(width, height)) {
            side.addValueChangeListener(event -> {
                if (!filling) {
                    otherSize();
                    changed.run();
                }
            });
        }
        preset.setLabel(getTranslation("offers.new.preset"));
        List<Preset> presets = figures.units() == UnitSystem.INCHES ? IN_INCHES : PRESETS;
        preset.setItems(presets);
        preset.setItemLabelGenerator(Preset::name);
        preset.addValueChangeListener(event -> {
            if (event.getValue() != null && event.isFromClient()) {
                put(event.getValue().size());
                changed.run();
            }
        });
        Button turn = new Button("⇄", event -> {
            read().ifPresent(size -> take(size.turned()));
            changed.run();
        });
        turn.setAriaLabel(getTranslation("offers.new.turn"));
        turn.setTooltipText(getTranslation("offers.new.turn"));
        add(preset, width, turn, height);
        Preset usual = presets.get(USUAL_SIZE);
        preset.setValue(usual);
        put(usual.size());
    }

    /** A usual size stays named only while it is the size. */
    private void otherSize() {
        Preset named = preset.getValue();
        if (named != null && !value().equals(Optional.of(named.size()))) {
            preset.clear();
        }
    }

    private void put(Size size) {
        filling = true;
        width.setValue(size.width());
        height.setValue(size.height());
        filling = false;
    }

    /** Another size, of no usual name unless it is one's. */
    public void take(Size size) {
        put(size);
        otherSize();
    }

    /** Empty while one of the two cannot be read or is not above zero. */
    public Optional<Size> value() {
        return readable(width) && readable(height)
                ? Optional.of(new Size(width.getValue(), height.getValue()))
                : Optional.empty();
    }

    private static boolean readable(LengthField field) {
        return field.getValue() != null && field.getValue().isPositive();
    }

    /** The same, with the field marked that cannot be read or is no size of a puzzle. */
    public Optional<Size> read() {
        boolean wide = mark(width);
        boolean high = mark(height);
        return wide && high ? value() : Optional.empty();
    }

    private boolean mark(LengthField field) {
        boolean readable = readable(field);
        boolean sensible = readable
                && field.getValue().compareTo(SHORTEST) >= 0
                && field.getValue().compareTo(LONGEST) <= 0;
        field.setInvalid(!sensible);
        field.setErrorMessage(
                !readable
                        ? getTranslation("offers.new.length.unreadable")
                        : sensible ? "" : figures.text("offers.new.length.outside", SHORTEST, LONGEST));
        return sensible;
    }
}
