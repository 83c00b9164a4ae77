package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.HasValidation;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.PasswordField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.letters.mail.MailAccount;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.measure.Refused;

/** The mail server through which letters leave, when the owner wants the program to send them. */
class MailAccountForm extends Div {

    private final transient MailAccounts accounts;
    private final transient Formatter figures;
    private final Checkbox sending = new Checkbox();
    private final TextField host = new TextField();
    private final IntegerField port = new IntegerField();
    private final Select<MailAccount.Security> security = new Select<>();
    private final TextField user = new TextField();
    private final PasswordField password = new PasswordField();
    private final TextField fromName = new TextField();
    private final TextField fromAddress = new TextField();
    private final Paragraph answer = new Paragraph();
    private final Button attempt = new Button();

    MailAccountForm(MailAccounts accounts, Formatter figures) {
        this.accounts = accounts;
        this.figures = figures;
        addClassName("pw-section");
        sending.setLabel(getTranslation("letters.account.sending"));
        host.setLabel(getTranslation("letters.account.server"));
        host.setPlaceholder("mail.example.org");
        port.setLabel(getTranslation("letters.account.port-label"));
        port.setMin(1);
        port.setMax(65_535);
        security.addClassName("letters-security");
        security.setLabel(getTranslation("letters.account.security"));
        security.setItems(MailAccount.Security.values());
        security.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        user.setLabel(getTranslation("letters.account.user"));
        user.setAutocomplete(com.vaadin.flow.component.textfield.Autocomplete.OFF);
        password.setLabel(getTranslation("letters.account.password-label"));
        password.setAutocomplete(com.vaadin.flow.component.textfield.Autocomplete.NEW_PASSWORD);
        password.setRevealButtonVisible(false);
        fromName.setLabel(getTranslation("letters.account.from-name"));
        fromAddress.setLabel(getTranslation("letters.account.from-address"));
        answer.setVisible(false);
        answer.addClassName("pw-note");
        answer.getElement().setAttribute("role", "status");
        Button save = new Button(getTranslation("letters.account.save"), press -> save());
        save.addThemeVariants(ButtonVariant.PRIMARY);
        attempt.setText(getTranslation("letters.account.try"));
        attempt.addClickListener(press -> tryConnection());
        FormLayout form = new FormLayout();
        form.setAutoResponsive(true);
        form.setAutoRows(true);
        form.setExpandColumns(true);
        form.setExpandFields(true);
        form.add(host, port, security, user, password, fromName, fromAddress);
        Div buttons = new Div(save, attempt);
        buttons.addClassName("pw-row");
        add(
                new H2(getTranslation("letters.account")),
                new Paragraph(getTranslation("letters.account.lead")),
                sending,
                form,
                buttons,
                answer);
        read();
    }

    private void read() {
        MailAccount account = accounts.account();
        sending.setValue(account.sending());
        host.setValue(account.host());
        port.setValue(account.port());
        security.setValue(account.security());
        user.setValue(account.user());
        password.clear();
        password.setPlaceholder(account.hasPassword() ? getTranslation("letters.account.password-kept") : "");
        fromName.setValue(account.fromName());
        fromAddress.setValue(account.fromAddress());
        attempt.setEnabled(!account.host().isBlank());
    }

    private void save() {
        clearFaults();
        if (port.getValue() == null) {
            port.setErrorMessage(getTranslation("letters.account.port", MailAccount.LAST_PORT));
            port.setInvalid(true);
            return;
        }
        MailAccount typed = new MailAccount(
                sending.getValue(),
                host.getValue().strip(),
                port.getValue(),
                security.getValue(),
                user.getValue().strip(),
                fromName.getValue().strip(),
                fromAddress.getValue().strip(),
                false);
        try {
            accounts.save(typed, password.getValue());
        } catch (Refused refused) {
            if (!mark(refused)) {
                Feedback.refusal(figures.say(refused));
            }
            return;
        }
        Feedback.tell(getTranslation("letters.account.saved"), false);
        read();
    }

    /** Where it is wrong, it stays said. */
    private boolean mark(Refused refused) {
        HasValidation field = switch (refused.sentence().key()) {
            case "letters.account.port", "letters.account.tried.port" -> port;
            case "letters.account.host", "letters.account.tried.host" -> host;
            case "letters.account.from" -> fromAddress;
            case "letters.account.open", "letters.account.tried.security" -> security;
            case "letters.account.password", "letters.account.tried.sign-in" -> password;
            default -> null;
        };
        if (field == null) {
            return false;
        }
        field.setErrorMessage(figures.say(refused));
        field.setInvalid(true);
        return true;
    }

    private void clearFaults() {
        answer.setVisible(false);
        for (HasValidation field : List.of(port, host, fromAddress, security, password)) {
            field.setErrorMessage("");
            field.setInvalid(false);
        }
    }

    /** A server that does not answer keeps its caller waiting, so not here but beside the screen. */
    private void tryConnection() {
        UI ui = UI.getCurrent();
        attempt.setEnabled(false);
        clearFaults();
        tell(getTranslation("letters.account.trying"), "wait");
        UiPush.beside("mail account", () -> {
            Optional<Refused> no = refusal();
            UiPush.tell(ui, () -> {
                if (no.isEmpty()) {
                    tell(getTranslation("letters.account.works"), "good");
                } else {
                    tell(figures.say(no.get()), "bad");
                    mark(no.get());
                }
                attempt.setEnabled(true);
            });
        });
    }

    private Optional<Refused> refusal() {
        try {
            accounts.tryConnection();
            return Optional.empty();
        } catch (Refused refused) {
            return Optional.of(refused);
        }
    }

    private void tell(String words, String kind) {
        answer.setText(words);
        answer.getElement().setAttribute("data-kind", kind);
        answer.setVisible(true);
    }
}
