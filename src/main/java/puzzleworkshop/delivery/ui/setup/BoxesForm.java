package puzzleworkshop.delivery.ui.setup;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.delivery.boxes.Box;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.workshop.SignedIn;

/** The inside of boxes and bags, and how much room loose pieces take in them. */
class BoxesForm extends Div {

    private static final Length USUAL_WALL = Length.mm(1.5);

    private final transient Boxes boxes;
    private final transient Orders orders;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;
    private final Div rows = new Div();

    BoxesForm(Boxes boxes, Orders orders, SignedIn signedIn, Formatter figures) {
        this.boxes = boxes;
        this.orders = orders;
        this.signedIn = signedIn;
        this.figures = figures;
        addClassName("pw-section");
        add(new H2(getTranslation("delivery.boxes")), new Paragraph(getTranslation("delivery.boxes.lead")), rows);
        read();
    }

    private void read() {
        rows.removeAll();
        List<Box> known = boxes.all();
        List<SupplyItem> items = boxes.supplies();
        if (items.isEmpty()) {
            rows.add(new Paragraph(getTranslation("delivery.boxes.none")));
        }
        for (SupplyItem item : items) {
            rows.add(row(
                    item,
                    known.stream()
                            .filter(box -> box.item().id().equals(item.id()))
                            .findFirst()));
        }
    }

    private Div row(SupplyItem item, Optional<Box> known) {
        LengthField a = side("delivery.boxes.long", known.map(Box::longest));
        LengthField b = side("delivery.boxes.middle", known.map(Box::middle));
        LengthField c = side("delivery.boxes.short", known.map(Box::shortest));
        LengthField wall = side("delivery.boxes.wall", known.map(Box::wall).or(() -> Optional.of(USUAL_WALL)));
        NumberField empty = new NumberField(getTranslation("delivery.boxes.empty"));
        empty.setMin(0.1);
        known.ifPresent(box -> empty.setValue(box.emptyGrams()));
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    if (a.getValue() == null
                            || b.getValue() == null
                            || c.getValue() == null
                            || wall.getValue() == null
                            || empty.getValue() == null) {
                        throw new Refused("delivery.box.sides");
                    }
                    boxes.save(Box.of(
                            item,
                            a.getValue(),
                            b.getValue(),
                            c.getValue(),
                            wall.getValue(),
                            empty.getValue(),
                            Optional.empty()));
                    read();
                }));
        Div form = new Div(a, b, c, wall, empty, save);
        form.addClassName("delivery-price-line");
        Div row = new Div(new H3(item.name()), form);
        row.addClassName("delivery-way");
        known.ifPresent(box -> {
            Button measure = new Button(getTranslation("delivery.boxes.measure"), e -> new Measuring(box).open());
            measure.addThemeVariants(ButtonVariant.TERTIARY);
            SmallText factor = new SmallText(figures.text(
                    box.factor().isPresent() ? "delivery.boxes.factor" : "delivery.boxes.factor-usual",
                    box.factorUsed()));
            Div line = new Div(factor, measure);
            line.addClassName("pw-row");
            row.add(line);
        });
        return row;
    }

    private LengthField side(String key, Optional<Length> now) {
        LengthField field = new LengthField(getTranslation(key), figures.units());
        now.ifPresent(field::setValue);
        return field;
    }

    /** Pieces of a known puzzle poured into the box and levelled. */
    private final class Measuring extends Dialog {

        Measuring(Box box) {
            setHeaderTitle(
                    getTranslation("delivery.boxes.measure-title", box.item().name()));
            TextField order = new TextField(getTranslation("delivery.boxes.order"));
            LengthField width = side("delivery.boxes.base-width", Optional.of(box.longest()));
            LengthField depth = side("delivery.boxes.base-depth", Optional.of(box.middle()));
            LengthField filled = side("delivery.boxes.filled", Optional.empty());
            Div form =
                    new Div(new Paragraph(getTranslation("delivery.boxes.measure.how")), order, width, depth, filled);
            form.addClassName("pw-stack");
            add(form);
            Button keep = new Button(getTranslation("workshop.save"), e -> {
                boolean kept = Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    if (width.getValue() == null || depth.getValue() == null || filled.getValue() == null) {
                        throw new Refused("delivery.boxes.measure.missing");
                    }
                    boxes.measured(
                            box.item().id().orElseThrow(),
                            orders.findByNumber(order.getValue())
                                    .orElseThrow(() -> new Refused("delivery.boxes.no-order"))
                                    .id(),
                            new Size(width.getValue(), depth.getValue()),
                            filled.getValue(),
                            signedIn.name());
                });
                if (kept) {
                    close();
                    read();
                }
            });
            keep.addThemeVariants(ButtonVariant.PRIMARY);
            getFooter().add(new Button(getTranslation("planning.close"), e -> close()), keep);
            setWidth("min(30rem, 95vw)");
        }
    }
}
