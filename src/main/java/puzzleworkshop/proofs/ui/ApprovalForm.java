package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.proofs.CustomerDesk.Sight;

/** The customer says: make it so. */
class ApprovalForm extends Div {

    ApprovalForm(ProofView view, TextField name) {
        addClassName("pw-section");
        Sight sight = view.sight();
        Checkbox mayUse = new Checkbox(getTranslation("proofs.may-use"));
        Checkbox softWillDo = new Checkbox(getTranslation("proofs.soft"));
        softWillDo.setVisible(sight.needsWordOnSoftness());
        name.setMaxLength(120);
        name.setWidthFull();
        add(new H2(getTranslation("proofs.approve.title")), new Paragraph(getTranslation("proofs.approve.lead")),
                mayUse, softWillDo, name,
                view.button("proofs.approve", true, () -> view.ask(() -> view.desk().approve(view.token(), view.from(),
                        sight.fingerprint(), name.getValue(), mayUse.getValue(), softWillDo.getValue()))));
    }
}
