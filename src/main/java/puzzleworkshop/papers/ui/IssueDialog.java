package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.Sentence;

/** Before an invoice is issued for good: what it would look like, and what is missing on it. */
class IssueDialog extends Dialog {

    /**
     * @param missing what an invoice should have and this one would not
     * @param preview a link to the paper as it would be
     */
    IssueDialog(Formatter figures, List<Sentence> missing, Component preview, Runnable issue, Runnable changed) {
        setHeaderTitle(figures.text("papers.issue.title"));
        setWidth("min(30rem, 94vw)");
        Div words = new Div();
        words.addClassName("pw-stack");
        if (missing.isEmpty()) {
            words.add(new Paragraph(figures.text("papers.issue.complete")));
        } else {
            words.add(new Paragraph(figures.text("papers.issue.missing")));
            UnorderedList list = new UnorderedList();
            list.addClassName("papers-missing");
            missing.forEach(one -> list.add(new ListItem(figures.say(one))));
            words.add(list);
        }
        words.add(preview, new Paragraph(figures.text("papers.issue.final")));
        add(words);
        BookButton book = new BookButton(
                figures.text(missing.isEmpty() ? "papers.issue.do" : "papers.issue.all-the-same"), () -> {
                    boolean issued = Feedback.unlessRefused(figures, "papers.panel.issued", issue);
                    if (issued) {
                        close();
                        changed.run();
                    }
                    return issued;
                });
        if (missing.isEmpty()) {
            book.addThemeVariants(ButtonVariant.PRIMARY);
        }
        Button later = new Button(figures.text("papers.issue.later"), event -> close());
        if (!missing.isEmpty()) {
            later.addThemeVariants(ButtonVariant.PRIMARY);
            later.setAutofocus(true);
        }
        getFooter().add(later, book);
    }
}
