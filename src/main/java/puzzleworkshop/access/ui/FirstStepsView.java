package puzzleworkshop.access.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.HasValidation;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.textfield.PasswordField;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.renderer.ComponentRenderer;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.VaadinRequest;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.access.Accounts;
import puzzleworkshop.access.DemoWorkshop;
import puzzleworkshop.access.FirstSteps;
import puzzleworkshop.access.StartCode;
import puzzleworkshop.database.Restoring;
import puzzleworkshop.database.ui.RestoreUpload;
import puzzleworkshop.display.Currencies;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.workshop.WorkshopProfile;

/** Opens a new workshop: the owner's account, the name, money and units. Only while there is no account. */
@Route(value = FirstStepsView.ROUTE, autoLayout = false)
@AnonymousAllowed
public class FirstStepsView extends SignedOutLayout implements BeforeEnterObserver, HasDynamicTitle {

    public static final String ROUTE = "first-steps";

    private static final Logger LOG = LoggerFactory.getLogger(FirstStepsView.class);

    private final transient Accounts accounts;
    private final transient FirstSteps steps;
    private final transient DemoWorkshop demo;
    private final transient Formatter figures;

    private final TextField workshop = new TextField();
    private final ComboBox<Currency> currency = new ComboBox<>();
    private final RadioButtonGroup<UnitSystem> units = new RadioButtonGroup<>();
    private final TextField owner = new TextField();
    private final PasswordField password = new PasswordField();
    private final PasswordField again = new PasswordField();
    private final RadioButtonGroup<Beginning> beginning = new RadioButtonGroup<>();
    private final Note refusal = Note.refusal();
    private final Button open = new Button();

    private enum Beginning {
        EMPTY,
        DEMO
    }

    FirstStepsView(
            Accounts accounts,
            FirstSteps steps,
            DemoWorkshop demo,
            Formatter figures,
            Restoring restoring,
            StartCode code) {
        this.accounts = accounts;
        this.steps = steps;
        this.demo = demo;
        this.figures = figures;
        addClassName("access-first");
        label();
        if (isAsked(code)) {
            put(new H1(getTranslation("access.first.title")), new StartCodeForm(code, () -> {
                clear();
                ask(restoring);
            }));
        } else {
            ask(restoring);
        }
    }

    private static boolean isAsked(StartCode code) {
        VaadinRequest request = VaadinRequest.getCurrent();
        boolean passedOn = request.getHeader("Forwarded") != null
                || request.getHeader("X-Forwarded-For") != null
                || request.getHeader("Via") != null;
        return code.isAsked(request.getRemoteAddr(), passedOn);
    }

    private void ask(Restoring restoring) {
        Paragraph lead = new Paragraph(getTranslation("access.first.lead"));
        lead.addClassName("pw-soft");
        put(
                new H1(getTranslation("access.first.title")),
                lead,
                new H2(getTranslation("access.first.workshop")),
                workshop,
                pair(currency, units),
                new H2(getTranslation("access.first.owner")),
                owner,
                pair(password, again));
        put(new H2(getTranslation("access.first.start")), beginning);
        Details restore = new Details(
                getTranslation("database.restore"),
                new RestoreUpload(restoring, figures, () -> toSignIn(UI.getCurrentOrThrow(), "restored")));
        restore.addClassName("access-restore");
        put(refusal, open, restore);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("access.first.title");
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        if (!accounts.none()) {
            event.forwardTo(SignInView.class);
        }
    }

    @Override
    protected void onAttach(AttachEvent event) {
        Locale locale = event.getSession().getBrowser().getLocale();
        try {
            currency.setValue(Currency.getInstance(locale));
        } catch (IllegalArgumentException | NullPointerException languageWithoutCountry) {
            currency.setValue(Currency.getInstance("EUR"));
        }
        units.setValue("US".equals(locale.getCountry()) ? UnitSystem.INCHES : UnitSystem.MILLIMETRES);
        workshop.focus();
    }

    private void label() {
        workshop.setLabel(getTranslation("access.first.workshop.name"));
        workshop.setHelperText(getTranslation("access.first.workshop.name.help"));
        workshop.setRequiredIndicatorVisible(true);
        currency.setLabel(getTranslation("access.first.currency"));
        currency.setItems(Currencies.inUse());
        currency.setItemLabelGenerator(c -> c.getCurrencyCode() + " · " + c.getDisplayName(Texts.LOCALE));
        currency.setRequiredIndicatorVisible(true);
        units.setLabel(getTranslation("access.first.units"));
        units.setItems(UnitSystem.values());
        units.setItemLabelGenerator(u -> getTranslation("access.first.units." + u.name()));
        owner.setLabel(getTranslation("access.first.owner.name"));
        owner.setHelperText(getTranslation("access.first.owner.name.help"));
        owner.setRequiredIndicatorVisible(true);
        owner.getElement().setAttribute("autocomplete", "username");
        password.setLabel(getTranslation("access.first.password"));
        password.setHelperText(getTranslation("access.first.password.help", Accounts.SHORTEST_PASSWORD));
        password.setRequiredIndicatorVisible(true);
        password.getElement().setAttribute("autocomplete", "new-password");
        again.setLabel(getTranslation("access.first.password.again"));
        again.setRequiredIndicatorVisible(true);
        again.getElement().setAttribute("autocomplete", "new-password");
        beginning.setItems(Beginning.values());
        beginning.setAriaLabel(getTranslation("access.first.start"));
        beginning.addClassName("access-beginning");
        beginning.setRenderer(new ComponentRenderer<>(this::beginningWords));
        beginning.setValue(Beginning.EMPTY);
        open.setText(getTranslation("access.first.open"));
        open.addThemeVariants(ButtonVariant.PRIMARY);
        open.setDisableOnClick(true);
        open.addClickListener(click -> openWorkshop());
    }

    private Div beginningWords(Beginning choice) {
        Span what = new Span(getTranslation("access.first.start." + choice));
        Span help = new Span(getTranslation("access.first.start." + choice + ".help"));
        help.addClassName("pw-small");
        Div words = new Div(what, help);
        words.addClassName("access-choice");
        return words;
    }

    private static Div pair(com.vaadin.flow.component.Component left, com.vaadin.flow.component.Component right) {
        Div pair = new Div(left, right);
        pair.addClassName("access-pair");
        return pair;
    }

    private void openWorkshop() {
        forgetComplaints();
        if (currency.isEmpty()) {
            complain(currency, getTranslation("access.first.currency.missing"));
        } else if (!password.getValue().equals(again.getValue())) {
            complain(again, getTranslation("access.first.password.differ"));
        } else {
            try {
                steps.open(
                        WorkshopProfile.named(
                                workshop.getValue().strip(), currency.getValue(), units.getValue(), zone()),
                        owner.getValue(),
                        password.getValue());
                begin();
                return;
            } catch (Refused refused) {
                complain(refused);
            }
        }
        open.setEnabled(true);
    }

    private void complain(Refused refused) {
        String key = refused.sentence().key();
        String words = figures.say(refused);
        if (key.startsWith("access.name")) {
            complain(owner, words);
        } else if (key.startsWith("access.password")) {
            complain(password, words);
        } else if (key.startsWith("workshop.name")) {
            complain(workshop, words);
        } else {
            refusal.setText(words);
            refusal.setVisible(true);
        }
    }

    private void complain(HasValidation field, String words) {
        field.setErrorMessage(words);
        field.setInvalid(true);
        if (field instanceof com.vaadin.flow.component.Focusable<?> focusable) {
            focusable.focus();
        }
    }

    private void forgetComplaints() {
        refusal.setVisible(false);
        for (HasValidation field : List.of(workshop, currency, owner, password, again)) {
            field.setInvalid(false);
        }
    }

    private ZoneId zone() {
        try {
            return ZoneId.of(
                    UI.getCurrentOrThrow().getPage().getExtendedClientDetails().getTimeZoneId());
        } catch (DateTimeException | NullPointerException browserDoesNotSay) {
            return ZoneId.systemDefault();
        }
    }

    private void begin() {
        if (beginning.getValue() == Beginning.EMPTY) {
            toSignIn(UI.getCurrentOrThrow(), "welcome");
            return;
        }
        UI ui = UI.getCurrentOrThrow();
        ProgressBar bar = new WorkingBar();
        Paragraph now = new Paragraph();
        now.addClassName("pw-soft");
        now.getElement().setAttribute("aria-live", "polite");
        clear();
        put(new H1(getTranslation("access.first.filling")), bar, now);
        Thread.ofVirtual().name("demo-workshop").start(() -> fill(ui, bar, now));
    }

    /** Whoever closes or reloads the page while the demo fills misses the bar, not the demo. */
    private void fill(UI ui, ProgressBar bar, Paragraph now) {
        try {
            demo.fill((share, what) -> UiPush.tell(ui, () -> {
                bar.setValue(Math.clamp(share, 0, 1));
                now.setText(figures.say(what));
            }));
            UiPush.tell(ui, () -> toSignIn(ui, "welcome"));
        } catch (RuntimeException fault) {
            String id = UUID.randomUUID().toString().substring(0, 8);
            LOG.error("Fault {}: the demo workshop could not be filled", id, fault);
            UiPush.tell(ui, () -> {
                now.setText(getTranslation("access.first.filling.failed", id));
                Button go = new Button(getTranslation("access.sign-in.title"), click -> toSignIn(ui, "welcome"));
                go.addThemeVariants(ButtonVariant.PRIMARY);
                put(go);
            });
        }
    }

    private static void toSignIn(UI ui, String why) {
        ui.getPage().setLocation(SignInView.ROUTE + "?" + why);
    }
}
