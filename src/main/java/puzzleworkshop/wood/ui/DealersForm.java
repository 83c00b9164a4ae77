package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import java.util.OptionalInt;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.wood.Dealers;
import puzzleworkshop.wood.Dealing;

/** For each board that can be bought when it comes, and what its dealer takes for cutting it to size. */
class DealersForm extends Div {

    private final transient Dealers dealers;
    private final transient Formatter figures;
    private final transient Runnable saved;

    DealersForm(Dealers dealers, Formatter figures, Runnable saved) {
        this.dealers = dealers;
        this.figures = figures;
        this.saved = saved;
        addClassName("pw-section");
        add(new H2(getTranslation("wood.dealing")), new Paragraph(getTranslation("wood.dealing.text")));
        var boards = dealers.boards();
        if (boards.isEmpty()) {
            add(new Paragraph(getTranslation("wood.dealing.none")));
        }
        boards.forEach(board -> add(row(board)));
    }

    /** What cannot be read is refused, not taken as empty. */
    private static OptionalInt given(IntegerField weeks) {
        if (weeks.isInvalid()) {
            throw new Refused("wood.dealing.weeks");
        }
        return weeks.getValue() == null ? OptionalInt.empty() : OptionalInt.of(weeks.getValue());
    }

    private Div row(BoardOffer board) {
        Dealing known = dealers.of(board);
        Span name = new Span(board.name());
        name.addClassName("wood-strong");
        IntegerField weeks = new IntegerField(getTranslation("wood.dealing.field.weeks"));
        weeks.setPlaceholder(getTranslation("wood.dealing.usual"));
        weeks.setClearButtonVisible(true);
        known.deliveryWeeks().ifPresent(weeks::setValue);
        AmountField fee = AmountField.money(
                getTranslation("wood.dealing.field.fee"), board.price().currency());
        fee.setPlaceholder(getTranslation("wood.dealing.whole"));
        fee.setClearButtonVisible(true);
        known.cutFee().ifPresent(fee::show);
        Button save = new Button(getTranslation("wood.dealing.save"), event -> {
            boolean done = Feedback.unlessRefused(
                    figures,
                    "wood.rules.saved",
                    () -> dealers.save(new Dealing(board.id(), given(weeks), fee.typed())));
            if (done) {
                saved.run();
            }
        });
        save.addThemeVariants(ButtonVariant.SMALL);
        save.setAriaLabel(figures.text("wood.dealing.save.of", board.name()));
        Div fields = new Div(weeks, fee, save);
        fields.addClassName("wood-fields");
        Div row = new Div(name, fields);
        row.addClassName("wood-kind");
        return row;
    }
}
