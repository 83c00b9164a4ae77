package puzzleworkshop.access.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasValidation;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.PasswordField;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.access.Account;
import puzzleworkshop.access.Accounts;
import puzzleworkshop.access.Role;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;

/** Who may sign in: a line for each, with what an owner can change, and a form for one more. */
@StyleSheet("context://access.css")
class People extends Div {

    private final transient Accounts accounts;
    private final transient Formatter figures;
    private final UnorderedList list = new UnorderedList();

    People(Accounts accounts, Formatter figures) {
        this.accounts = accounts;
        this.figures = figures;
        addClassName("pw-section");
        list.addClassName("access-people");
        add(
                new H2(figures.text("access.people")),
                new Paragraph(figures.text("access.people.lead")),
                list,
                newPerson());
        refresh();
    }

    private void refresh() {
        list.removeAll();
        accounts.all().forEach(account -> list.add(line(account)));
    }

    private Component line(Account account) {
        Span name = new Span(account.name());
        name.addClassName("access-person");
        Span what = new Span(figures.text(account.role().textKey())
                + (account.active() ? "" : " · " + figures.text("access.people.inactive")));
        what.addClassName("pw-small");
        Div buttons = new Div(
                small("access.people.password", account, () -> askPassword(account)),
                small(
                        account.role() == Role.OWNER ? "access.people.make-maker" : "access.people.make-owner",
                        account,
                        () -> changed(
                                "access.people.role-changed",
                                () -> accounts.changeRole(
                                        account.id(), account.role() == Role.OWNER ? Role.MAKER : Role.OWNER))),
                account.active()
                        ? small(
                                "access.people.deactivate",
                                account,
                                () -> changed("access.people.deactivated", () -> accounts.deactivate(account.id())))
                        : small(
                                "access.people.reactivate",
                                account,
                                () -> changed("access.people.reactivated", () -> accounts.reactivate(account.id()))));
        buttons.addClassName("access-person-buttons");
        ListItem line = new ListItem(name, what, buttons);
        line.getElement().setAttribute("data-active", account.active());
        return line;
    }

    private Button small(String key, Account account, Runnable pressed) {
        Button button = new Button(figures.text(key), click -> pressed.run());
        button.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
        button.setAriaLabel(figures.text(key) + ": " + account.name());
        return button;
    }

    private void changed(String doneKey, Runnable change) {
        Feedback.unlessRefused(figures, doneKey, change);
        refresh();
    }

    private void askPassword(Account account) {
        PasswordField password = passwordField();
        Dialog dialog = new Dialog(figures.text("access.people.password.of", account.name()), password);
        Button keep = new Button(figures.text("access.people.password.keep"), click -> {
            try {
                accounts.changePassword(account.id(), password.getValue());
                dialog.close();
                Feedback.tell(figures.text("access.people.password.changed", account.name()), false);
            } catch (Refused refused) {
                complain(password, refused);
            }
        });
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        dialog.getFooter().add(new Button(figures.text("access.people.cancel"), click -> dialog.close()), keep);
        dialog.open();
        password.focus();
    }

    private Component newPerson() {
        TextField name = new TextField(figures.text("access.first.owner.name"));
        name.getElement().setAttribute("autocomplete", "off");
        PasswordField password = passwordField();
        Select<Role> role = new Select<>();
        role.setLabel(figures.text("access.people.role"));
        role.setItems(Role.values());
        role.setItemLabelGenerator(r -> figures.text(r.textKey()));
        role.setValue(Role.MAKER);
        role.setHelperText(figures.text("access.people.role.help"));
        Button add = new Button(figures.text("access.people.add"), click -> {
            name.setInvalid(false);
            password.setInvalid(false);
            try {
                accounts.add(name.getValue(), password.getValue(), role.getValue());
            } catch (Refused refused) {
                complain(refused.sentence().key().startsWith("access.password") ? password : name, refused);
                return;
            }
            Feedback.tell(figures.text("access.people.added", name.getValue().strip()), false);
            name.clear();
            password.clear();
            refresh();
        });
        Div form = new Div(name, password, role, add);
        form.addClassNames("pw-form", "access-new-person");
        return form;
    }

    private PasswordField passwordField() {
        PasswordField password = new PasswordField(figures.text("access.first.password"));
        password.setHelperText(figures.text("access.first.password.help", Accounts.SHORTEST_PASSWORD));
        password.getElement().setAttribute("autocomplete", "new-password");
        return password;
    }

    private void complain(HasValidation field, Refused refused) {
        field.setErrorMessage(figures.say(refused));
        field.setInvalid(true);
    }
}
