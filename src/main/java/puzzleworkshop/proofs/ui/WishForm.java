package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import java.util.Optional;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.proofs.CustomerWish;
import puzzleworkshop.proofs.ProofWish;

/** What should be otherwise: in the customer's words, as places marked on the picture, or as the age of a child. */
class WishForm extends Div {

    private final transient ProofView view;
    private final TextArea wish = new TextArea();
    private final IntegerField years = new IntegerField();
    private final SmallText forYears = new SmallText();
    private final Paragraph said = new Paragraph();
    private final MarksOnPicture marks;

    public WishForm(ProofView view) {
        this.view = view;
        marks = new MarksOnPicture(view);
        addClassName("pw-section");
        wish.setLabel(getTranslation("proofs.wish"));
        wish.setMaxLength(ProofWish.LONGEST);
        wish.setWidthFull();
        wish.setMinRows(3);
        years.setId("not-too-hard-for");
        years.setLabel(getTranslation("proofs.years"));
        years.setHelperText(getTranslation("proofs.years.help"));
        years.setMin(Difficulty.YOUNGEST);
        years.setMax(Difficulty.OLDEST);
        years.setStepButtonsVisible(true);
        years.setWidthFull();
        years.addValueChangeListener(event -> sayForYears());
        forYears.getElement().setAttribute("role", "status");
        forYears.setVisible(false);
        said.addClassName("pw-note");
        said.getElement().setAttribute("role", "status");
        said.setVisible(false);
        add(
                new H2(getTranslation("proofs.wish.title")),
                wish,
                years,
                forYears,
                marks,
                view.button("proofs.wish.send", false, this::send),
                said);
    }

    MarksOnPicture marks() {
        return marks;
    }

    private Optional<Integer> years() {
        return Optional.ofNullable(years.getValue())
                .filter(age -> age >= Difficulty.YOUNGEST && age <= Difficulty.OLDEST);
    }

    private void send() {
        if (years.isInvalid()) {
            years.focus();
            return;
        }
        try {
            view.desk().wish(view.token(), view.from(), new CustomerWish(wish.getValue(), marks.places(), years()));
            wish.clear();
            years.clear();
            marks.clear();
            say("good", getTranslation("proofs.wish.sent"));
        } catch (Refused refused) {
            say("bad", view.figures().say(refused));
        }
    }

    private void say(String kind, String sentence) {
        said.getElement().setAttribute("data-kind", kind);
        said.setText(sentence);
        said.setVisible(true);
    }

    /** At once what the workshop would make of it: a customer sees what they ask for. */
    private void sayForYears() {
        forYears.setText(years().map(this::forYears).orElse(""));
        forYears.setVisible(years().isPresent());
    }

    private String forYears(int age) {
        Order order = view.sight().order();
        if (view.difficulty().suits(age)) {
            return view.figures().text("proofs.years.suits", age);
        }
        try {
            Difficulty.ForAge found = view.forAge(age);
            return view.figures()
                    .text(
                            "proofs.years.would",
                            age,
                            found.grid().pieces(),
                            getTranslation("orders.style." + found.style().name()),
                            order.puzzle().pieces());
        } catch (Refused refused) {
            return view.figures().say(refused);
        }
    }
}
