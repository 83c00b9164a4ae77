package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.Focusable;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.shared.HasValidationProperties;
import com.vaadin.flow.component.textfield.TextField;
import java.util.Set;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.proofs.CustomerDesk.Sight;

/** The customer says: make it so. What is missing is said beside its field. */
class ApprovalForm extends Div {

    private static final String NO_RIGHT = "proofs.may-use.missing";
    private static final String NO_WORD_ON_SOFTNESS = "proofs.soft.missing";
    private static final String NO_NAME = "proofs.name.missing";
    private static final Set<String> MISSING = Set.of(NO_RIGHT, NO_WORD_ON_SOFTNESS, NO_NAME);

    private final Checkbox mayUse = new Checkbox(getTranslation("proofs.may-use"));
    private final Checkbox softWillDo = new Checkbox(getTranslation("proofs.soft"));
    private final TextField name;

    ApprovalForm(ProofView view, TextField name) {
        this.name = name;
        addClassNames("pw-section", "proofs-approval");
        Sight sight = view.sight();
        softWillDo.setVisible(sight.needsWordOnSoftness());
        name.setMaxLength(120);
        name.setWidthFull();
        add(
                new H2(getTranslation("proofs.approve.title")),
                new Paragraph(getTranslation("proofs.approve.lead")),
                mayUse,
                softWillDo,
                name,
                view.button(
                        "proofs.approve",
                        true,
                        () -> view.ask(
                                () -> view.desk()
                                        .approve(
                                                view.token(),
                                                view.from(),
                                                sight.fingerprint(),
                                                name.getValue(),
                                                mayUse.getValue(),
                                                softWillDo.getValue()),
                                this::mark)));
    }

    /** Marks every field that is still missing, not only the one that was refused, and goes to the first. */
    private boolean mark(Refused refused) {
        if (!MISSING.contains(refused.sentence().key())) {
            return false;
        }
        boolean marked = mark(name, NO_NAME, name.getValue().isBlank());
        marked |= mark(softWillDo, NO_WORD_ON_SOFTNESS, softWillDo.isVisible() && !softWillDo.getValue());
        marked |= mark(mayUse, NO_RIGHT, !mayUse.getValue());
        return marked;
    }

    private <C extends Component & HasValidationProperties & Focusable<?>> boolean mark(
            C field, String key, boolean missing) {
        field.setErrorMessage(missing ? getTranslation(key) : "");
        field.setInvalid(missing);
        if (missing) {
            field.focus();
        }
        return missing;
    }
}
