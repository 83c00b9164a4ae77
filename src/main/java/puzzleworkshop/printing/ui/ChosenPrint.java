package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import java.util.stream.IntStream;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;

/** The print chosen in the drawing: by numbers what the hand does by drawing. */
class ChosenPrint extends Div {

    /** What the person wants with it. */
    interface Wishes {
        void move(RunItem item, int sheet, Length x, Length y, boolean turned);

        void pin(RunItem item, boolean pinned);

        void drop(RunItem item);
    }

    private final transient Formatter figures;
    private final transient Wishes wishes;

    ChosenPrint(Formatter figures, Wishes wishes) {
        this.figures = figures;
        this.wishes = wishes;
        addClassName("printing-chosen");
        getElement().setAttribute("aria-live", "polite");
    }

    /** @param item null when none is chosen */
    void show(PrintRun run, RunItem item) {
        removeAll();
        if (item == null) {
            SmallText hint = new SmallText(getTranslation("printing.choose"));
            add(hint);
            return;
        }
        Span name = new Span(figures.text("printing.chosen", item.order().number()));
        LengthField x = field("printing.move-x", item.x());
        LengthField y = field("printing.move-y", item.y());
        Select<Integer> sheet = new Select<>();
        sheet.setLabel(getTranslation("printing.move-sheet"));
        sheet.setItems(IntStream.rangeClosed(1, run.sheets() + 1).boxed().toList());
        sheet.setValue(item.sheet() + 1);
        sheet.setVisible(!run.isRoll());
        Button there = new Button(getTranslation("printing.move-there"), event -> {
            x.setInvalid(x.getValue() == null);
            y.setInvalid(y.getValue() == null);
            if (x.getValue() != null && y.getValue() != null) {
                wishes.move(item, sheet.getValue() - 1, x.getValue(), y.getValue(), item.turned());
            }
        });
        Button turn = new Button(
                getTranslation("printing.turn"),
                event -> wishes.move(item, item.sheet(), item.x(), item.y(), !item.turned()));
        Button pin = new Button(
                getTranslation(item.pinned() ? "printing.unpin" : "printing.pin"),
                event -> wishes.pin(item, !item.pinned()));
        Button drop = new Button(getTranslation("printing.drop"), event -> wishes.drop(item));
        add(name, x, y, sheet, there, turn, pin, drop);
    }

    private LengthField field(String key, Length value) {
        LengthField field = new LengthField(getTranslation(key), figures.units());
        field.setValue(value);
        return field;
    }
}
