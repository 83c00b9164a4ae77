package puzzleworkshop.support;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.textfield.BigDecimalField;

/** A screen without a browser, found by the words that a person sees or hears. */
public abstract class ScreenTest extends SpringBrowserlessTest {

    /** The number field under this label. */
    protected BigDecimalField number(String label) {
        return find(BigDecimalField.class).all().stream()
                .filter(field -> label.equals(field.getLabel()))
                .findFirst()
                .orElseThrow();
    }

    /** Presses the button that a screen reader calls so. */
    protected void pressSpoken(String words) {
        test(find(Button.class).all().stream()
                        .filter(button -> button.getAriaLabel().orElse("").equals(words))
                        .findFirst()
                        .orElseThrow())
                .click();
    }
}
