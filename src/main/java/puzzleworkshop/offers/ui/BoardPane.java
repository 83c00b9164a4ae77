package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.orders.Order;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.sheets.ui.SheetDrawing;

/** Which boards: each drawn to scale with the blank and what remains, the reason in a sentence, and the runners-up. */
class BoardPane extends Div {

    private final transient Formatter figures;
    private final transient Runnable changed;
    private final FieldError none;
    private final Div blocks = new Div();
    private final Div others = new Div();
    private final Div setting = new Div();
    private transient Optional<SheetId> chosen = Optional.empty();

    BoardPane(Formatter figures, Runnable changed) {
        this.figures = figures;
        this.changed = changed;
        addClassName("pw-section");
        none = new FieldError(Offer.Question.BOARD, figures);
        blocks.addClassName("neworder-boards");
        others.addClassName("neworder-others");
        setting.addClassName("pw-stack");
        add(new H2(getTranslation("offers.new.board")), none, blocks, others, setting);
    }

    void take(Order order) {
        chosen = Optional.empty();
    }

    Optional<SheetId> chosen() {
        return chosen;
    }

    void clearAnswer() {
        none.say("");
        blocks.removeAll();
        others.removeAll();
        setting.removeAll();
    }

    void show(Offer offer) {
        clearAnswer();
        none.show(offer);
        offer.boards().ifPresent(plan -> plan.blocks().forEach(block -> blocks.add(card(block))));
        if (offer.wish().quantity() == 1) {
            showOthers(offer);
        }
        offer.setting().ifPresent(s -> {
            Verdict.Kind kind = s.isProven() ? Verdict.Kind.GOOD : Verdict.Kind.WARN;
            Div line = new Div(
                    new Verdict(kind, getTranslation(s.state().textKey())),
                    new Paragraph(figures.text(
                            s.isProven() ? "offers.new.setting.proven" : "offers.new.setting.unproven",
                            s.speed(),
                            s.parameters().power(),
                            s.passes())));
            line.addClassName("pw-verdict-line");
            setting.add(line);
        });
    }

    private Div card(BlankPlan.Block block) {
        Div card = new Div();
        card.addClassName("neworder-board");
        block.sheet()
                .ifPresent(suggestion -> card.add(
                        new SheetDrawing(figures).show(suggestion),
                        words(title(suggestion), figures.say(suggestion.reason()), block)));
        block.board()
                .ifPresent(offer -> card.add(
                        new SheetDrawing(figures).show(offer, block.size()),
                        words(getTranslation("offers.new.to-buy"), figures.say(offer.reason()), block)));
        return card;
    }

    private Div words(String title, String reason, BlankPlan.Block block) {
        Span head = new Span(title);
        head.addClassName("neworder-board-title");
        Div words = new Div(head, new Paragraph(reason));
        words.addClassName("pw-stack");
        if (block.count() > 1 || block.part() == BlankPlan.Part.TRAY) {
            Paragraph several =
                    new Paragraph(getTranslation(block.part().textKey(), block.count(), block.across(), block.down()));
            several.addClassName("pw-small");
            words.add(several);
        }
        return words;
    }

    private String title(Suggestion suggestion) {
        String place = suggestion.sheet().facts().place();
        return place.isBlank()
                ? figures.text(
                        "orders.sheet", String.valueOf(suggestion.sheet().id().value()))
                : figures.text(
                        "orders.sheet-at",
                        String.valueOf(suggestion.sheet().id().value()),
                        place);
    }

    private void showOthers(Offer offer) {
        Optional<SheetId> used = offer.boards()
                .flatMap(plan -> plan.blocks().stream().findFirst())
                .flatMap(BlankPlan.Block::sheet)
                .map(suggestion -> suggestion.sheet().id());
        for (Suggestion other : offer.otherSheets()) {
            if (used.equals(Optional.of(other.sheet().id()))) {
                continue;
            }
            SheetDrawing drawing = new SheetDrawing(figures);
            drawing.show(other);
            Button choose = new Button(drawing, event -> {
                chosen = Optional.of(other.sheet().id());
                changed.run();
            });
            choose.addThemeVariants(ButtonVariant.TERTIARY);
            choose.setAriaLabel(title(other) + ". " + figures.say(other.reason()));
            choose.setTooltipText(title(other) + ": " + figures.say(other.reason()));
            others.add(choose);
        }
        if (others.getChildren().findAny().isPresent()) {
            Span label = new Span(getTranslation("offers.new.others"));
            label.addClassName("pw-small");
            others.addComponentAsFirst(label);
        }
    }
}
