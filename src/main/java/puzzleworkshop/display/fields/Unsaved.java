package puzzleworkshop.display.fields;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasValue;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeLeaveEvent;
import com.vaadin.flow.router.BeforeLeaveEvent.ContinueNavigationAction;
import java.io.Serializable;

/**
 * Keeps what was typed on a page from being lost without a question: within the program it asks itself, on reload or
 * close the browser does. The browser is told with the first key, before the server hears of it.
 */
public final class Unsaved implements Serializable {

    private static final String WATCH = """
        if (!this.pwUnsaved) {
          const page = this;
          page.pwUnsaved = { ask: false };
          page.addEventListener('input', () => page.pwUnsaved.ask = true);
          window.addEventListener('beforeunload', function question(leaving) {
            if (!page.isConnected) window.removeEventListener('beforeunload', question);
            else if (page.pwUnsaved.ask) { leaving.preventDefault(); leaving.returnValue = ''; }
          });
        }\
        """;

    private final Component page;
    private boolean watched;
    private boolean touched;

    public Unsaved(Component page) {
        this.page = page;
    }

    /** From now on what a person types or chooses in the page's fields counts; what is in them already does not. */
    public void watch() {
        if (!watched) {
            watched = true;
            listen(page);
        }
        page.getElement().executeJs(WATCH);
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

    /** Something that is no field was changed: a picture, a frame. */
    public void touch() {
        if (!touched) {
            touched = true;
            tellBrowser();
        }
    }

    /** All of it is kept; nothing is asked any more. */
    public void kept() {
        touched = false;
        tellBrowser();
    }

    private void tellBrowser() {
        page.getElement().executeJs("if (this.pwUnsaved) this.pwUnsaved.ask = $0", touched);
    }

    /** Holds the way to another page until it was answered whether to stay. */
    public void beforeLeave(BeforeLeaveEvent event) {
        if (!touched) {
            return;
        }
        ContinueNavigationAction way = event.postpone();
        Dialog question = new Dialog();
        question.setHeaderTitle(page.getTranslation("display.unsaved"));
        question.add(new Paragraph(page.getTranslation("display.unsaved.why")));
        Button leave = new Button(page.getTranslation("display.unsaved.leave"), click -> {
            question.close();
            kept();
            way.proceed();
        });
        leave.addThemeVariants(ButtonVariant.ERROR);
        Button stay = new Button(page.getTranslation("display.unsaved.stay"), click -> {
            question.close();
            way.cancel();
        });
        stay.addThemeVariants(ButtonVariant.PRIMARY);
        stay.setAutofocus(true);
        question.setCloseOnOutsideClick(false);
        question.setCloseOnEsc(false);
        question.getFooter().add(leave, stay);
        question.open();
    }
}
