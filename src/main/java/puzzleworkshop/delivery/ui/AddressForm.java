package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.textfield.TextFieldBase;
import java.util.EnumMap;
import java.util.Map;
import puzzleworkshop.delivery.address.CountryFormat;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Sentence;

/** The parts of an address as its country asks for them; what is wrong stands beside its field. */
class AddressForm extends Div {

    private final transient Formatter figures;
    private final ComboBox<String> country = new ComboBox<>();
    private final Map<Part, TextFieldBase<?, String>> fields = new EnumMap<>(Part.class);

    AddressForm(PostalAddress now, Formatter figures) {
        this.figures = figures;
        addClassName("delivery-address");
        country.setLabel(getTranslation("delivery.address.country"));
        country.setItems(CountryFormat.countries(Texts.LOCALE));
        country.setItemLabelGenerator(code -> CountryFormat.name(code, Texts.LOCALE));
        country.setValue(now.country());
        country.addValueChangeListener(e -> ask());
        add(country);
        for (Part part : Part.values()) {
            TextFieldBase<?, String> field = part == Part.STREET ? new TextArea() : new TextField();
            field.setLabel(getTranslation(part.textKey()));
            field.setValue(now.part(part));
            fields.put(part, field);
            add(field);
        }
        ask();
    }

    private void ask() {
        if (country.getValue() == null) {
            return;
        }
        CountryFormat format = CountryFormat.of(country.getValue());
        fields.forEach((part, field) -> {
            field.setVisible(format.parts().contains(part) || !field.getValue().isBlank());
            field.setRequiredIndicatorVisible(format.needs(part));
            field.setInvalid(false);
        });
    }

    /** What stands in the fields. */
    PostalAddress address() {
        Map<Part, String> parts = new EnumMap<>(Part.class);
        fields.forEach((part, field) -> parts.put(part, field.getValue()));
        return new PostalAddress(country.getValue() == null ? "" : country.getValue(), parts);
    }

    /** Marks what is wrong; true when nothing is. */
    boolean isRight() {
        country.setErrorMessage(getTranslation("delivery.address.country-missing"));
        country.setInvalid(country.getValue() == null);
        if (country.getValue() == null) {
            return false;
        }
        Map<Part, Sentence> faults = address().faults();
        fields.forEach((part, field) -> {
            Sentence fault = faults.get(part);
            field.setErrorMessage(fault == null ? "" : figures.say(fault));
            field.setInvalid(fault != null);
        });
        return faults.isEmpty();
    }
}
