package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.IntegerField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.wood.BoardsOnTheWay;
import puzzleworkshop.wood.BuyAdvice;
import puzzleworkshop.workshop.SignedIn;

/** Says of an advised board that so many were ordered. */
class OrderedForm extends Div {

    OrderedForm(BoardsOnTheWay boards, BuyAdvice.Line line, SignedIn who, Formatter figures, Runnable booked) {
        String name = WoodView.name(figures, line);
        IntegerField count = new IntegerField(getTranslation("wood.ordered.count.field"));
        count.setValue(line.count());
        count.setAriaLabel(figures.text("wood.ordered.count.of", name));
        BookingKey key = BookingKey.fresh();
        BookButton ordered = new BookButton(getTranslation("wood.ordered.book"), () -> {
            boolean done = Feedback.unlessRefused(figures, "wood.ordered.done", () -> {
                if (count.isInvalid() || count.getValue() == null) {
                    throw new Refused("wood.ordered.count");
                }
                boards.ordered(key, line, count.getValue(), who.name());
            });
            if (done) {
                booked.run();
            }
            return done;
        });
        ordered.addThemeVariants(ButtonVariant.SMALL);
        ordered.setAriaLabel(figures.text("wood.ordered.book.of", name));
        add(count, ordered);
        addClassName("wood-fields");
    }
}
