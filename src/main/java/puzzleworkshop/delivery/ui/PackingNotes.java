package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.boxes.Box;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.delivery.boxes.PackedWeight;
import puzzleworkshop.delivery.labels.Customs;
import puzzleworkshop.delivery.labels.GoodsCategory;
import puzzleworkshop.delivery.labels.LabelKind;
import puzzleworkshop.delivery.labels.ParcelPapers;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.SignedIn;

/** What an order is packed in, what it should weigh, and what is printed for it; at the bench and on the order's page. */
@Service
class PackingNotes {

    private final Boxes boxes;
    private final ParcelPapers papers;
    private final Customs customs;
    private final SignedIn signedIn;
    private final Formatter figures;

    PackingNotes(Boxes boxes, ParcelPapers papers, Customs customs, SignedIn signedIn, Formatter figures) {
        this.boxes = boxes;
        this.papers = papers;
        this.customs = customs;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    Component show(Order order, Boxes.Notes notes, Runnable changed) {
        Div part = new Part();
        part.addClassNames("pw-stack", "delivery-packing");
        Boxes.Packing packing = boxes.packing(order, notes);
        part.add(new Paragraph(figures.say(packing.proposed().reason())));
        List<Box> all = boxes.all();
        if (!all.isEmpty()) {
            Select<Box> box = new Select<>();
            box.setLabel(figures.text("delivery.box"));
            box.setItems(all);
            box.setEmptySelectionAllowed(true);
            box.setEmptySelectionCaption(figures.text("delivery.box.smallest"));
            box.setItemLabelGenerator(one -> one == null
                    ? figures.text("delivery.box.smallest")
                    : one.item().name());
            if (packing.chosen()) {
                packing.box()
                        .ifPresent(chosen -> all.stream()
                                .filter(one ->
                                        one.item().id().equals(chosen.item().id()))
                                .findFirst()
                                .ifPresent(box::setValue));
            }
            box.addValueChangeListener(e -> {
                Feedback.unlessRefused(
                        figures,
                        "workshop.saved",
                        () -> boxes.choose(
                                order.id(),
                                Optional.ofNullable(e.getValue())
                                        .flatMap(one -> one.item().id()),
                                signedIn.name()));
                changed.run();
            });
            part.add(box);
        }
        part.add(weight(order, notes));
        return part;
    }

    private Component weight(Order order, Boxes.Notes notes) {
        try {
            PackedWeight weight = boxes.weight(order, notes);
            List<String> parts = new ArrayList<>();
            parts.add(figures.text("delivery.weight.pieces", figures.number(weight.piecesGrams(), 0)));
            if (weight.trayGrams() > 0) {
                parts.add(figures.text("delivery.weight.tray", figures.number(weight.trayGrams(), 0)));
            }
            if (weight.boxGrams() > 0) {
                parts.add(figures.text("delivery.weight.box", figures.number(weight.boxGrams(), 0)));
            }
            return new Paragraph(figures.text(
                    "delivery.weight",
                    figures.number(weight.grams(), 0),
                    figures.number(weight.scatterGrams(), 0),
                    String.join(", ", parts)));
        } catch (Refused unknown) {
            return new Paragraph(figures.say(unknown));
        }
    }

    /**
     * Everything that is printed for the order, on the labels and from the place that are chosen here.
     *
     * @param to where it goes
     */
    Component papers(Order order, Optional<PostalAddress> to) {
        Select<LabelKind> kind = new Select<>();
        kind.setLabel(figures.text("delivery.labels.kind"));
        kind.setItems(LabelKind.values());
        kind.setItemLabelGenerator(one -> figures.text(one.textKey()));
        kind.setValue(papers.settings().kind());
        IntegerField first = new IntegerField(figures.text("delivery.labels.first"));
        first.setMin(1);
        first.setValue(1);
        first.setStepButtonsVisible(true);
        Anchor all = ParcelPanel.pdf("", figures.text("delivery.papers.all"));
        Anchor labels = ParcelPanel.pdf("", figures.text("delivery.papers.labels"));
        Optional<GoodsCategory> usual = customs.usual(order, to);
        Select<GoodsCategory> declared = new Select<>();
        declared.setLabel(figures.text("delivery.cn22.declared"));
        declared.setItemLabelGenerator(one -> figures.text(one.textKey()));
        usual.ifPresent(category -> {
            declared.setItems(GoodsCategory.values());
            declared.setValue(category);
        });
        declared.setVisible(usual.isPresent());
        Runnable aim = () -> {
            LabelKind chosen = kind.getValue();
            first.setMax(chosen.places());
            first.setVisible(chosen.isSheet());
            int from = first.getValue() == null || first.isInvalid() || !chosen.isSheet() ? 1 : first.getValue();
            String rest = ".pdf?kind=" + chosen.name() + "&first=" + from;
            String passing =
                    usual.isPresent() ? "&declared=" + declared.getValue().name() : "";
            all.setHref("parcels/" + order.number() + "/parcel" + rest + passing);
            labels.setHref("parcels/" + order.number() + "/labels" + rest);
        };
        kind.addValueChangeListener(e -> aim.run());
        first.addValueChangeListener(e -> aim.run());
        declared.addValueChangeListener(e -> aim.run());
        aim.run();
        Div row = new Part(kind, first, declared, all, labels);
        row.addClassName("delivery-papers");
        return row;
    }

    /** Brings its own look along, wherever it is shown. */
    @StyleSheet("context://delivery.css")
    private static final class Part extends Div {
        Part(Component... parts) {
            super(parts);
        }
    }
}
