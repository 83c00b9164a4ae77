package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextArea;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.proofs.ProofWish;

/** The customer writes what should be otherwise. */
class WishForm extends Div {

    private final TextArea wish = new TextArea();

    public WishForm(ProofView view) {
        addClassName("pw-section");
        wish.setLabel(getTranslation("proofs.wish"));
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

    /**
     * Writes into the wish that a place of the picture is to stay whole; the words are the customer's to change and to send.
     *
     * @param across of the picture's width, 0 to 1
     * @param down of its height
     */
    void keepWhole(double across, double down) {
        String place = getTranslation("proofs.mark.words", Math.round(100 * across), Math.round(100 * down));
        String before = wish.getValue().isBlank() ? "" : wish.getValue().stripTrailing() + "\n";
        if (before.length() + place.length() <= ProofWish.LONGEST) {
            wish.setValue(before + place);
        }
    }
}
