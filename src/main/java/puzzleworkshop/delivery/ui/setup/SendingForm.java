package puzzleworkshop.delivery.ui.setup;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.MultiSelectComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import puzzleworkshop.delivery.address.CountryFormat;
import puzzleworkshop.delivery.sending.Kilograms;
import puzzleworkshop.delivery.sending.Reach;
import puzzleworkshop.delivery.sending.SendingLimits;
import puzzleworkshop.delivery.sending.SendingPrice;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.workshop.Workshop;

/** What each way of sending takes and costs, from the carrier's price list. */
class SendingForm extends Div {

    private static final double MOST_KG = 1000;

    private final transient Workshop workshop;
    private final transient Formatter figures;

    SendingForm(SendingWays ways, Workshop workshop, Formatter figures) {
        this.workshop = workshop;
        this.figures = figures;
        addClassName("pw-section");
        add(new H2(getTranslation("delivery.sending")), new Paragraph(getTranslation("delivery.sending.lead")));
        ways.all().forEach(way -> add(new OneWay(way, ways)));
    }

    /** One line of the price list in fields. */
    private record Line(
            Div row,
            NumberField kilograms,
            LengthField longest,
            LengthField middle,
            LengthField shortest,
            LengthField girth,
            AmountField price) {}

    private final class OneWay extends Div {

        private final Select<WayKind> kind = new Select<>();
        private final NumberField heaviest = kilograms("delivery.sending.heaviest");
        private final LengthField longest = length("delivery.sending.longest");
        private final LengthField girth = length("delivery.sending.girth");
        private final IntegerField divisor = new IntegerField(getTranslation("delivery.sending.divisor"));
        private final TextField link = new TextField(getTranslation("delivery.sending.link"));
        private final TextField window = new TextField(getTranslation("delivery.sending.window"));
        private final IntegerField keeps = new IntegerField(getTranslation("delivery.sending.keeps"));
        private final Select<Reach.Kind> reach = new Select<>();
        private final MultiSelectComboBox<String> countries =
                new MultiSelectComboBox<>(getTranslation("delivery.sending.countries"));
        private final List<Line> lines = new ArrayList<>();
        private final Div rows = new Div();
        private final Div ofParcel = new Div();
        private final Div ofCollection = new Div();

        OneWay(SendingWay way, SendingWays ways) {
            addClassName("delivery-way");
            kind.setLabel(getTranslation("delivery.sending.kind"));
            kind.setItems(WayKind.values());
            kind.setItemLabelGenerator(one -> getTranslation(one.textKey()));
            kind.addValueChangeListener(e -> {
                ofParcel.setVisible(e.getValue() == WayKind.PARCEL);
                ofCollection.setVisible(e.getValue() == WayKind.COLLECTION);
            });
            way.limits().heaviestGrams().ifPresent(grams -> heaviest.setValue(Kilograms.of(grams)));
            way.limits().longest().ifPresent(longest::setValue);
            way.limits().lengthAndGirth().ifPresent(girth::setValue);
            way.divisor().ifPresent(divisor::setValue);
            divisor.setMin(1);
            reach.setLabel(getTranslation("delivery.sending.reach"));
            reach.setItems(Reach.Kind.values());
            reach.setItemLabelGenerator(one -> getTranslation(one.textKey()));
            reach.addValueChangeListener(e -> countries.setVisible(e.getValue() == Reach.Kind.COUNTRIES));
            reach.setValue(way.reach().kind());
            countries.setItems(CountryFormat.countries(Texts.LOCALE));
            countries.setItemLabelGenerator(code -> CountryFormat.name(code, Texts.LOCALE));
            countries.setValue(way.reach().countries());
            countries.setVisible(way.reach().kind() == Reach.Kind.COUNTRIES);
            link.setValue(way.linkPattern());
            link.setHelperText(getTranslation("delivery.sending.link.help"));
            window.setValue(way.collectWindow());
            window.setHelperText(getTranslation("delivery.sending.window.help"));
            reach.addClassName("delivery-long");
            link.addClassName("delivery-long");
            window.addClassName("delivery-long");
            keeps.setValue(way.keepsDays());
            keeps.setMin(1);
            keeps.setMax(365);
            Button more = new Button(getTranslation("delivery.sending.more"), e -> line(Optional.empty()));
            more.addThemeVariants(ButtonVariant.TERTIARY);
            Div limits = new Div(reach, countries, heaviest, longest, girth, divisor, link);
            limits.addClassName("pw-form");
            rows.addClassName("pw-stack");
            ofParcel.addClassName("pw-stack");
            ofParcel.add(limits, new H3(getTranslation("delivery.sending.prices")), rows, more);
            ofCollection.addClassName("pw-form");
            ofCollection.add(window, keeps);
            way.prices().forEach(price -> line(Optional.of(price)));
            kind.setValue(way.kind());
            ofParcel.setVisible(way.kind() == WayKind.PARCEL);
            ofCollection.setVisible(way.kind() == WayKind.COLLECTION);
            Button save = new Button(
                    getTranslation("workshop.save"),
                    e -> Feedback.unlessRefused(figures, "workshop.saved", () -> ways.save(typed(way))));
            add(new H3(way.name()), kind, ofParcel, ofCollection, save);
        }

        private SendingWay typed(SendingWay way) {
            if (divisor.isInvalid() || keeps.getValue() == null || keeps.isInvalid() || heaviest.isInvalid()) {
                throw new Refused("delivery.sending.incomplete");
            }
            List<SendingPrice> prices = new ArrayList<>();
            for (Line line : lines) {
                if (line.kilograms().getValue() == null || line.kilograms().isInvalid()) {
                    throw new Refused("delivery.sending.line");
                }
                prices.add(new SendingPrice(
                        grams(line.kilograms().getValue()),
                        read(line.longest()),
                        read(line.middle()),
                        read(line.shortest()),
                        read(line.girth()),
                        line.price().needed(workshop.currency())));
            }
            return new SendingWay(
                    way.way(),
                    kind.getValue(),
                    new SendingLimits(
                            heaviest.getValue() == null
                                    ? OptionalInt.empty()
                                    : OptionalInt.of(grams(heaviest.getValue())),
                            read(longest),
                            read(girth)),
                    divisor.getValue() == null ? OptionalInt.empty() : OptionalInt.of(divisor.getValue()),
                    link.getValue().strip(),
                    window.getValue().strip(),
                    keeps.getValue(),
                    prices,
                    new Reach(reach.getValue(), countries.getValue()));
        }

        private void line(Optional<SendingPrice> now) {
            Line line = new Line(
                    new Div(),
                    kilograms("delivery.sending.up-to"),
                    length("delivery.sending.longest"),
                    length("delivery.sending.middle"),
                    length("delivery.sending.shortest"),
                    length("delivery.sending.girth"),
                    AmountField.money(
                            getTranslation(
                                    "delivery.sending.price",
                                    workshop.currency().getCurrencyCode()),
                            workshop.currency()));
            now.ifPresent(price -> {
                line.kilograms().setValue(Kilograms.of(price.upToGrams()));
                price.longest().ifPresent(line.longest()::setValue);
                price.middle().ifPresent(line.middle()::setValue);
                price.shortest().ifPresent(line.shortest()::setValue);
                price.lengthAndGirth().ifPresent(line.girth()::setValue);
                line.price().setValue(price.price().rounded().amount());
            });
            Button remove = new Button(getTranslation("planning.way.remove"), e -> {
                lines.remove(line);
                rows.remove(line.row());
            });
            remove.addThemeVariants(ButtonVariant.TERTIARY);
            line.row()
                    .add(
                            line.kilograms(),
                            line.longest(),
                            line.middle(),
                            line.shortest(),
                            line.girth(),
                            line.price(),
                            (Component) remove);
            line.row().addClassName("delivery-price-line");
            lines.add(line);
            rows.add(line.row());
        }
    }

    private NumberField kilograms(String key) {
        NumberField field = new NumberField(getTranslation(key));
        field.setMin(0.001);
        field.setMax(MOST_KG);
        field.setStep(0.001);
        return field;
    }

    private LengthField length(String key) {
        return new LengthField(getTranslation(key), figures.units());
    }

    private static int grams(double kilograms) {
        return (int) Math.round(kilograms * 1000);
    }

    /** What cannot be read stays in its field, marked. */
    private static Optional<Length> read(LengthField field) {
        boolean unreadable = field.getValue() == null && !field.typed().isBlank()
                || field.getValue() != null && !field.getValue().isPositive();
        field.setInvalid(unreadable);
        if (unreadable) {
            throw new Refused("delivery.sending.length");
        }
        return Optional.ofNullable(field.getValue());
    }
}
