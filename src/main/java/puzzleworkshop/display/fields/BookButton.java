package puzzleworkshop.display.fields;

import com.vaadin.flow.component.button.Button;
import java.util.function.BooleanSupplier;

/**
 * A button that books: from the press until the booking was refused it cannot be pressed again. In the browser it is off
 * at once, on the server before the next press is looked at; the booking's key is what counts when both were too late.
 */
public class BookButton extends Button {

    /** @param book true when it is booked and nothing is left to press */
    public BookButton(String words, BooleanSupplier book) {
        super(words);
        setDisableOnClick(true);
        addClickListener(press -> {
            boolean booked = false;
            try {
                booked = book.getAsBoolean();
            } finally {
                if (!booked) {
                    setEnabled(true);
                }
            }
        });
    }
}
