package puzzleworkshop.offers.ui.fields;

import com.vaadin.flow.component.combobox.ComboBox;

/** How many pieces: one of the numbers that lie well on the size, or any other. */
public class PiecesField extends ComboBox<Integer> {

    /** What stands in the field though it is no number. */
    private String unreadable = "";

    public PiecesField(Runnable changed) {
        setId("pieces");
        setLabel(getTranslation("orders.fact.pieces"));
        setAllowCustomValue(true);
        addCustomValueSetListener(event -> typed(event.getDetail(), changed));
        addValueChangeListener(event -> {
            unreadable = event.getValue() == null ? unreadable : "";
            setInvalid(!unreadable.isEmpty());
            changed.run();
        });
    }

    private void typed(String text, Runnable changed) {
        Integer number = null;
        try {
            number = Integer.valueOf(text.strip());
        } catch (NumberFormatException notANumber) {
            unreadable = text;
        }
        boolean stillNone = number == null && getValue() == null;
        // a number typed before must not stand for words typed now
        setValue(number);
        if (number == null) {
            setInvalid(true);
            // the browser clears a field without a value; what was typed is to be mended, not typed again
            getElement().executeJs("setTimeout(() => { this.inputElement.value = $0; })", text);
        }
        if (stillNone) {
            changed.run();
        }
    }

    /** Why it has no value. */
    public String complaint() {
        return unreadable.isEmpty()
                ? getTranslation("offers.new.pieces.missing")
                : getTranslation("offers.new.pieces.not-a-number", unreadable);
    }
}
