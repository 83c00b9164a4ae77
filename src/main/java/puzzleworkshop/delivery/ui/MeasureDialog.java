package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.Optional;
import java.util.function.Function;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingPrice;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.workshop.Workshop;

/** What scale and tape say of a packed parcel, and, for who may see money, what the carrier takes. */
class MeasureDialog extends Dialog {

    private static final double MOST_GRAMS = 1_000_000;

    private final transient Formatter figures;

    MeasureDialog(
            Parcel parcel,
            Optional<ParcelMeasure> reckoned,
            SendingWay way,
            Parcels parcels,
            Workshop workshop,
            boolean tellsMoney,
            Formatter figures,
            Runnable again) {
        this.figures = figures;
        setHeaderTitle(getTranslation("delivery.measure.title"));
        Optional<ParcelMeasure> now = parcel.measure().or(() -> reckoned);
        NumberField grams = new NumberField(getTranslation("delivery.measure.grams"));
        grams.setMin(1);
        grams.setMax(MOST_GRAMS);
        now.ifPresent(measure -> grams.setValue((double) Math.round(measure.grams())));
        LengthField longest = side("delivery.sending.longest", now, ParcelMeasure::longest);
        LengthField middle = side("delivery.sending.middle", now, ParcelMeasure::middle);
        LengthField shortest = side("delivery.sending.shortest", now, ParcelMeasure::shortest);
        AmountField postage = AmountField.money(
                getTranslation("delivery.measure.postage", workshop.currency().getCurrencyCode()), workshop.currency());
        postage.setVisible(tellsMoney);
        parcel.postage()
                .or(() -> now.flatMap(way::price).map(SendingPrice::price))
                .ifPresent(money -> postage.setValue(money.rounded().amount()));
        Button keep = new Button(getTranslation("workshop.save"), e -> {
            boolean kept = Feedback.unlessRefused(figures, "workshop.saved", () -> {
                if (grams.getValue() == null
                        || grams.isInvalid()
                        || unreadable(longest)
                        || unreadable(middle)
                        || unreadable(shortest)) {
                    throw new Refused("delivery.measure.incomplete");
                }
                Optional<Money> cost = tellsMoney ? postage.typed(workshop.currency()) : Optional.empty();
                parcels.weighed(
                        parcel.id(),
                        ParcelMeasure.of(grams.getValue(), longest.getValue(), middle.getValue(), shortest.getValue()));
                if (tellsMoney) {
                    parcels.costs(parcel.id(), cost);
                }
            });
            if (kept) {
                close();
                again.run();
            }
        });
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        Div form = new Div(
                new Paragraph(getTranslation("delivery.measure.lead")), grams, longest, middle, shortest, postage);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), keep);
        setWidth("min(30rem, 95vw)");
    }

    private LengthField side(String key, Optional<ParcelMeasure> now, Function<ParcelMeasure, Length> which) {
        LengthField field = new LengthField(getTranslation(key), figures.units());
        now.map(which).ifPresent(field::setValue);
        return field;
    }

    private static boolean unreadable(LengthField field) {
        boolean wrong = field.getValue() == null || !field.getValue().isPositive();
        field.setInvalid(wrong);
        return wrong;
    }
}
