package puzzleworkshop.shell;

import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import puzzleworkshop.shell.Findings.Found;

/** Looks for anything by any words, from every screen; Enter opens what stands first. */
class FindDialog extends Dialog {

    private final transient Findings findings;
    private final TextField words = new TextField();
    private final UnorderedList found = new UnorderedList();
    private final Paragraph said = new Paragraph();
    private transient List<Found> last = List.of();

    FindDialog(Findings findings) {
        this.findings = findings;
        addClassName("shell-find");
        setHeaderTitle(getTranslation("shell.find"));
        setWidth("min(40rem, 96vw)");
        words.setWidthFull();
        words.setAriaLabel(getTranslation("shell.find"));
        words.setPlaceholder(getTranslation("shell.find.what"));
        words.setClearButtonVisible(true);
        words.setAutofocus(true);
        words.setMaxLength(200);
        words.setValueChangeMode(ValueChangeMode.LAZY);
        words.setValueChangeTimeout(200);
        words.addValueChangeListener(event -> show());
        words.addKeyPressListener(Key.ENTER, event -> open(words.getValue()));
        found.addClassName("shell-found");
        said.addClassName("pw-small");
        said.getElement().setAttribute("role", "status");
        Div inside = new Div(words, said, found);
        inside.addClassName("shell-find-inside");
        add(inside);
        getFooter().add(new Button(getTranslation("shell.find.close"), event -> close()));
        addOpenedChangeListener(event -> {
            if (event.isOpened()) {
                words.focus();
            } else {
                words.clear();
            }
        });
    }

    private void show() {
        last = findings.of(words.getValue());
        found.removeAll();
        said.setText(
                words.getValue().isBlank()
                        ? getTranslation("shell.find.hint")
                        : getTranslation("shell.find.many", last.size()));
        last.forEach(one -> found.add(new ListItem(way(one))));
    }

    private Anchor way(Found one) {
        Span kind = new Span(getTranslation(one.kind().textKey()));
        kind.addClassName("pw-small");
        Span title = new Span(one.title());
        title.addClassName("shell-found-title");
        Span about = new Span(one.about());
        about.addClassName("pw-soft");
        Anchor way = new Anchor(one.address(), kind, title, about);
        way.getElement().addEventListener("click", event -> close());
        return way;
    }

    /** What was typed last may not have been looked for yet. */
    private void open(String typed) {
        List<Found> now = findings.of(typed);
        if (!now.isEmpty()) {
            close();
            getUI().ifPresent(ui -> ui.navigate(now.getFirst().address()));
        }
    }
}
