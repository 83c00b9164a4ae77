package puzzleworkshop.support;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.internal.nodefeature.ElementPropertyMap;
import com.vaadin.flow.internal.nodefeature.PropertyChangeDeniedException;

/** A screen without a browser, found by the words that a person sees or hears. */
public abstract class ScreenTest extends SpringBrowserlessTest {

    /** The number field under this label. */
    protected BigDecimalField number(String label) {
        return find(BigDecimalField.class).all().stream()
                .filter(field -> label.equals(field.getLabel()))
                .findFirst()
                .orElseThrow();
    }

    /** What a person types that is no number, as the browser tells it. */
    protected static void typeUnreadable(BigDecimalField field, String text) {
        try {
            field.getElement()
                    .getNode()
                    .getFeature(ElementPropertyMap.class)
                    .deferredUpdateFromClient("value", text)
                    .run();
        } catch (PropertyChangeDeniedException hidden) {
            throw new IllegalStateException(hidden);
        }
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
