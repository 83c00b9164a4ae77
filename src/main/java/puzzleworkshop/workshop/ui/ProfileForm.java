package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.time.ZoneId;
import java.util.Currency;
import puzzleworkshop.display.Currencies;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** Who the workshop is: name and address for papers, money, units, zone. */
class ProfileForm extends Div {

    private final TextField name = new TextField(getTranslation("workshop.profile.name"));
    private final TextArea address = new TextArea(getTranslation("workshop.profile.address"));
    private final TextField email = new TextField(getTranslation("workshop.profile.email"));
    private final TextField phone = new TextField(getTranslation("workshop.profile.phone"));
    private final ComboBox<Currency> currency = new ComboBox<>(getTranslation("workshop.profile.currency"));
    private final Select<UnitSystem> units = new Select<>();
    private final ComboBox<String> zone = new ComboBox<>(getTranslation("workshop.profile.zone"));
    private final TextField publicUrl = new TextField(getTranslation("workshop.profile.public-url"));

    ProfileForm(Workshop workshop, Formatter figures) {
        addClassName("pw-section");
        WorkshopProfile profile = workshop.profile();
        currency.setItems(Currencies.inUse());
        currency.setItemLabelGenerator(c -> c.getCurrencyCode() + " · " + c.getDisplayName(Texts.LOCALE));
        units.setLabel(getTranslation("workshop.profile.units"));
        units.setItems(UnitSystem.values());
        units.setItemLabelGenerator(u -> getTranslation("workshop.units." + u.name()));
        zone.setItems(ZoneId.getAvailableZoneIds().stream().sorted().toList());
        publicUrl.setHelperText(getTranslation("workshop.profile.public-url.help"));
        name.setRequiredIndicatorVisible(true);
        name.setValue(profile.name());
        address.setValue(profile.address());
        email.setValue(profile.email());
        phone.setValue(profile.phone());
        currency.setValue(profile.currency());
        units.setValue(profile.units());
        zone.setValue(profile.zone().getId());
        publicUrl.setValue(profile.publicUrl());

        Div form = new Div(name, address, email, phone, currency, units, zone, publicUrl);
        form.addClassName("pw-form");
        Button save = new Button(getTranslation("workshop.save"), event -> {
            boolean blank = name.getValue().isBlank();
            name.setInvalid(blank);
            name.setErrorMessage(blank ? getTranslation("workshop.name.missing") : "");
            if (!blank && currency.getValue() != null && zone.getValue() != null) {
                Feedback.unlessRefused(figures, "workshop.saved", () -> workshop.save(read()));
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        add(new H2(getTranslation("workshop.profile")), form, save);
    }

    private WorkshopProfile read() {
        return new WorkshopProfile(
                name.getValue().strip(),
                address.getValue(),
                email.getValue().strip(),
                phone.getValue().strip(),
                currency.getValue(),
                units.getValue(),
                ZoneId.of(zone.getValue()),
                publicUrl.getValue().strip().replaceAll("/+$", ""));
    }
}
