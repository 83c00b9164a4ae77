package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasValue;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.LinkedHashMap;
import java.util.Map;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.FormMemory;
import puzzleworkshop.offers.Drafts;
import puzzleworkshop.workshop.SignedIn;

/**
 * Keeps what is typed into New order as the person's draft, and offers it when the page is opened again: after a reload, on
 * another computer, the next day.
 */
class DraftNotice extends Div {

    private final transient Drafts drafts;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;
    private final WhoAndWhen who;
    private final PicturePane picture;
    private Component page;
    private boolean watching;
    private boolean touched;

    DraftNotice(Drafts drafts, SignedIn signedIn, Formatter figures, WhoAndWhen who, PicturePane picture) {
        this.drafts = drafts;
        this.signedIn = signedIn;
        this.figures = figures;
        this.who = who;
        this.picture = picture;
        addClassNames("pw-note", "neworder-draft");
        getElement().setAttribute("role", "status");
        setVisible(false);
    }

    /**
     * From now on what a person does on the page is kept.
     *
     * @param offer whether an older draft may take the place of what the page shows
     * @param again to be run after a draft was put into the fields
     */
    void watch(Component page, boolean offer, Runnable again) {
        if (watching) {
            return;
        }
        watching = true;
        this.page = page;
        listen(page);
        if (offer) {
            drafts.find(signedIn.name()).ifPresent(draft -> show(draft, again));
        }
    }

    private void show(Drafts.Draft draft, Runnable again) {
        Paragraph words = new Paragraph(figures.text("offers.draft", draft.at()));
        Button go = new Button(getTranslation("offers.draft.continue"), press -> {
            setVisible(false);
            restore(draft.fields());
            touched = true;
            again.run();
        });
        go.addThemeVariants(ButtonVariant.PRIMARY);
        Button drop = new Button(getTranslation("offers.draft.drop"), press -> {
            setVisible(false);
            drafts.drop(signedIn.name());
        });
        drop.addThemeVariants(ButtonVariant.TERTIARY);
        removeAll();
        add(words, go, drop);
        setVisible(true);
    }

    private void restore(Map<String, String> fields) {
        who.restore(fields);
        picture.restore(fields);
        FormMemory.into(page, fields);
    }

    private void listen(Component part) {
        if (part instanceof HasValue<?, ?> field) {
            field.addValueChangeListener(event -> {
                if (event.isFromClient()) {
                    touch();
                }
            });
        }
        part.getChildren().forEach(this::listen);
    }

    /** Somebody did something; from the first time on it is a draft, in place of any older one. */
    void touch() {
        if (!watching) {
            return;
        }
        touched = true;
        setVisible(false);
        Map<String, String> fields = new LinkedHashMap<>(FormMemory.of(page));
        who.draft(fields);
        picture.draft(fields);
        drafts.keep(signedIn.name(), fields);
    }

    /** It is an order now. */
    void saved() {
        if (touched) {
            touched = false;
            drafts.drop(signedIn.name());
        }
    }
}
