package puzzleworkshop.delivery.ui.setup;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.util.Optional;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.CountryFormat;
import puzzleworkshop.delivery.labels.Gtin;
import puzzleworkshop.delivery.labels.LabelKind;
import puzzleworkshop.delivery.labels.LabelSettings;
import puzzleworkshop.delivery.labels.ParcelPapers;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Refused;

/** From where parcels leave, and the owner's words on labels, cards and customs data. */
class LabelsForm extends Div {

    LabelsForm(ParcelPapers papers, Addresses addresses, Formatter figures) {
        addClassName("pw-section");
        LabelSettings now = papers.settings();
        ComboBox<String> home = new ComboBox<>(getTranslation("delivery.labels.home"));
        home.setItems(CountryFormat.countries(Texts.LOCALE));
        home.setItemLabelGenerator(code -> CountryFormat.name(code, Texts.LOCALE));
        home.setValue(addresses.home());
        Select<LabelKind> kind = new Select<>();
        kind.setLabel(getTranslation("delivery.labels.kind"));
        kind.setItems(LabelKind.values());
        kind.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        kind.setValue(now.kind());
        TextArea words = new TextArea(getTranslation("delivery.labels.words"), now.labelWords(), "");
        TextArea care = new TextArea(getTranslation("delivery.labels.care"), now.careWords(), "");
        TextField contents = new TextField(getTranslation("delivery.labels.contents"), now.contents(), "");
        TextField hs = new TextField(getTranslation("delivery.labels.hs"), now.hsCode(), "");
        hs.setHelperText(getTranslation("delivery.labels.hs.help"));
        TextField gtin = new TextField(
                getTranslation("delivery.labels.gtin"),
                now.gtin().map(Gtin::digits).orElse(""),
                "");
        gtin.setHelperText(getTranslation("delivery.labels.gtin.help"));
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    if (home.getValue() == null) {
                        throw new Refused("delivery.labels.home-missing");
                    }
                    papers.save(new LabelSettings(
                            words.getValue().strip(),
                            care.getValue().strip(),
                            hs.getValue().strip(),
                            contents.getValue().strip(),
                            Optional.of(gtin.getValue())
                                    .filter(typed -> !typed.isBlank())
                                    .map(Gtin::typed),
                            kind.getValue()));
                    addresses.home(home.getValue());
                    gtin.setValue(papers.settings().gtin().map(Gtin::digits).orElse(""));
                }));
        Div form = new Div(home, kind, words, care, contents, hs, gtin);
        form.addClassName("pw-form");
        add(
                new H2(getTranslation("delivery.labels")),
                new Paragraph(getTranslation("delivery.labels.lead")),
                form,
                save);
    }
}
