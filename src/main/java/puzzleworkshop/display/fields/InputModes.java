package puzzleworkshop.display.fields;

import com.vaadin.flow.component.textfield.TextField;

/** Which keys a phone shows for a field. */
public final class InputModes {

    private InputModes() {}

    /** Figures only, with a point where fractions make sense. Vaadin does not hand the attribute on to its input. */
    public static void numbers(TextField field, boolean fractions) {
        field.addAttachListener(event -> field.getElement()
                .executeJs("this.inputElement.setAttribute('inputmode', $0)", fractions ? "decimal" : "numeric"));
    }
}
