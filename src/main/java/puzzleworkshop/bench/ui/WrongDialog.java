package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import java.util.Arrays;
import java.util.Optional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Rework.What;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Something went wrong: what, from where it is made again, and what is lost by it. */
public class WrongDialog extends Dialog {

    private final transient Order order;
    private final transient Bench bench;
    private final transient Formatter figures;
    private final transient Workshop workshop;
    private final Select<What> what = new Select<>();
    private final Select<Stage> from = new Select<>();
    private final TextArea note = new TextArea();
    private final Select<Rework.Board> board = new Select<>();
    private final AmountField material;
    private final Paragraph loss = new Paragraph();
    private boolean corrected;
    /** Whether somebody has said what became of the board. */
    private boolean told;

    public WrongDialog(
            Order order,
            Stage stage,
            Bench bench,
            Formatter figures,
            SignedIn signedIn,
            Workshop workshop,
            Runnable again) {
        this.order = order;
        this.bench = bench;
        this.figures = figures;
        this.workshop = workshop;
        material = AmountField.money(
                getTranslation("bench.wrong.material", workshop.currency().getCurrencyCode()), workshop.currency());
        setHeaderTitle(getTranslation("bench.wrong.title", order.number(), getTranslation(stage.textKey())));
        what.setLabel(getTranslation("bench.wrong.what"));
        what.setItems(What.at(stage));
        what.setItemLabelGenerator(w -> getTranslation(w.textKey()));
        from.setLabel(getTranslation("bench.wrong.from"));
        from.setItems(Arrays.stream(Stage.values())
                .filter(s -> s.compareTo(stage) <= 0)
                .toList());
        from.setItemLabelGenerator(s -> getTranslation(s.textKey()));
        what.addValueChangeListener(e -> from.setValue(e.getValue().usuallyAgainFrom(stage)));
        from.addValueChangeListener(e -> {
            if (!told && e.getValue() != null) {
                board.setValue(Rework.Board.likely(stage, e.getValue()));
            }
            reckon();
        });
        note.setLabel(getTranslation("bench.wrong.note"));
        board.setLabel(getTranslation("bench.wrong.board"));
        board.setItems(Rework.Board.values());
        board.setItemLabelGenerator(b -> getTranslation(b.textKey()));
        board.setValue(Rework.Board.KEPT);
        board.setVisible(stage.compareTo(Stage.CUT) <= 0);
        board.addValueChangeListener(e -> {
            told |= e.isFromClient();
            reckon();
        });
        material.setVisible(!signedIn.isMaker());
        material.addValueChangeListener(e -> corrected |= e.isFromClient());
        loss.addClassName("pw-small");
        what.setValue(What.likelyAt(stage, bench.findingOfCut(order.id())));
        BookingKey key = BookingKey.seen(
                "went-wrong", order.number(), bench.mishaps(order.id()).size());
        BookButton book = new BookButton(getTranslation("bench.wrong.book"), () -> {
            boolean booked = Feedback.unlessRefused(
                    figures,
                    Sentence.of(
                            "bench.wrong.booked",
                            order.number(),
                            Sentence.of(from.getValue().textKey())),
                    () -> bench.wentWrong(key, order.id(), report(), signedIn.name()));
            if (booked) {
                close();
                again.run();
            }
            return booked;
        });
        book.addThemeVariants(ButtonVariant.PRIMARY, ButtonVariant.ERROR);
        Div form = new Div(what, from, board, note, material, loss);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), book);
        setWidth("min(30rem, 95vw)");
    }

    /** What is most likely, where it is known already; the maker may still say something else. */
    public void propose(What likely, Stage again) {
        what.setValue(likely);
        from.setValue(again);
    }

    private Rework.Report report() {
        return new Rework.Report(
                what.getValue(),
                from.getValue(),
                note.getValue(),
                board.getValue(),
                corrected ? material.typed(workshop.currency()) : Optional.empty());
    }

    private void reckon() {
        if (what.getValue() == null || from.getValue() == null) {
            return;
        }
        try {
            Rework lost = bench.reckoned(order.id(), report());
            if (!corrected) {
                material.setValue(lost.materialLost().rounded().amount());
            }
            loss.setText(
                    lost.laserLost().value() > 0
                            ? figures.text("bench.wrong.lost-laser", lost.workLost(), lost.laserLost())
                            : figures.text("bench.wrong.lost", lost.workLost()));
        } catch (Refused refused) {
            loss.setText(figures.say(refused));
        }
    }
}
