package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextArea;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.proofs.ProofWish;

/** The customer writes what should be otherwise. */
class WishForm extends Div {

    public WishForm(ProofView view) {
        addClassName("pw-section");
        TextArea wish = new TextArea(getTranslation("proofs.wish"));
        wish.setMaxLength(ProofWish.LONGEST);
        wish.setWidthFull();
        wish.setMinRows(3);
        Paragraph said = new Paragraph();
        said.addClassName("pw-note");
        said.getElement().setAttribute("role", "status");
        said.setVisible(false);
        add(
                new H2(getTranslation("proofs.wish.title")),
                wish,
                view.button("proofs.wish.send", false, () -> {
                    try {
                        view.desk().wish(view.token(), view.from(), wish.getValue());
                        wish.clear();
                        said.getElement().setAttribute("data-kind", "good");
                        said.setText(getTranslation("proofs.wish.sent"));
                    } catch (Refused refused) {
                        said.getElement().setAttribute("data-kind", "bad");
                        said.setText(view.figures().say(refused));
                    }
                    said.setVisible(true);
                }),
                said);
    }
}
