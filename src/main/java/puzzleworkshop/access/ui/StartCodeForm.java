package puzzleworkshop.access.ui;

import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.access.StartCode;

/** Asks for the code that the program said at its start; nothing else is shown before it. */
class StartCodeForm extends Div {

    StartCodeForm(StartCode code, Runnable opened) {
        addClassName("pw-stack");
        TextField typed = new TextField(getTranslation("access.code"));
        typed.setHelperText(getTranslation("access.code.help"));
        typed.setWidthFull();
        typed.setMaxLength(40);
        typed.setAutofocus(true);
        typed.getElement().setAttribute("autocomplete", "off");
        Button go = new Button(getTranslation("access.code.go"), click -> {
            if (code.opens(typed.getValue())) {
                opened.run();
                return;
            }
            typed.setErrorMessage(getTranslation("access.code.wrong"));
            typed.setInvalid(true);
            typed.focus();
        });
        go.addThemeVariants(ButtonVariant.PRIMARY);
        go.addClickShortcut(Key.ENTER);
        add(new Paragraph(getTranslation("access.code.lead")), typed, go);
    }
}
