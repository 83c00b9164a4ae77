package puzzleworkshop.access.ui;

import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.login.LoginForm;
import com.vaadin.flow.component.login.LoginI18n;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Location;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import java.util.List;
import java.util.Map;
import puzzleworkshop.access.Accounts;
import puzzleworkshop.workshop.Workshop;

/** Name and password; the browser's own form post, so that password keepers know it. */
@Route(value = SignInView.ROUTE, autoLayout = false)
@AnonymousAllowed
public class SignInView extends SignedOutLayout implements BeforeEnterObserver, HasDynamicTitle {

    public static final String ROUTE = "sign-in";

    /** Longest number of seconds that is said in seconds. */
    private static final long SAY_SECONDS = 90;

    private final transient Accounts accounts;
    private final LoginForm form = new LoginForm();
    private final Paragraph notice = new Paragraph();

    SignInView(Accounts accounts, Workshop workshop) {
        this.accounts = accounts;
        notice.addClassName("pw-note");
        notice.setVisible(false);
        form.setAction(ROUTE);
        form.setForgotPasswordButtonVisible(false);
        form.setI18n(words());
        form.addClassName("access-form");
        put(new H1(workshop.profile().name()), notice, form);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("access.sign-in.title");
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        if (accounts.none()) {
            event.forwardTo(FirstStepsView.class);
            return;
        }
        Location location = event.getLocation();
        Map<String, List<String>> asked = location.getQueryParameters().getParameters();
        if (asked.containsKey("error")) {
            form.setError(true);
        } else if (asked.containsKey("wait")) {
            form.showErrorMessage(getTranslation("access.sign-in.wait.title"), waitWords(asked.get("wait")));
        } else if (asked.containsKey("ended")) {
            say("access.sign-in.ended", "warn");
        } else if (asked.containsKey("welcome")) {
            say("access.sign-in.welcome", "good");
        } else if (asked.containsKey("restored")) {
            say("database.restore.done", "good");
        }
    }

    private void say(String key, String kind) {
        notice.setText(getTranslation(key));
        notice.getElement().setAttribute("data-kind", kind);
        notice.setVisible(true);
    }

    private String waitWords(List<String> values) {
        long seconds =
                values.isEmpty() || !values.getFirst().matches("\\d{1,5}") ? 1 : Long.parseLong(values.getFirst());
        return seconds <= SAY_SECONDS
                ? getTranslation("access.sign-in.wait.seconds", Math.max(1, seconds))
                : getTranslation("access.sign-in.wait.minutes", (seconds + 59) / 60);
    }

    private LoginI18n words() {
        LoginI18n words = LoginI18n.createDefault();
        LoginI18n.Form form = words.getForm();
        form.setTitle("");
        form.setUsername(getTranslation("access.sign-in.name"));
        form.setPassword(getTranslation("access.sign-in.password"));
        form.setSubmit(getTranslation("access.sign-in.enter"));
        LoginI18n.ErrorMessage wrong = words.getErrorMessage();
        wrong.setTitle(getTranslation("access.sign-in.wrong.title"));
        wrong.setMessage(getTranslation("access.sign-in.wrong"));
        wrong.setUsername(getTranslation("access.sign-in.name.missing"));
        wrong.setPassword(getTranslation("access.sign-in.password.missing"));
        return words;
    }
}
