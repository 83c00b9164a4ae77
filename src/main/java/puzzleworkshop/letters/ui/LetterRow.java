package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.letters.Letter;
import puzzleworkshop.letters.mail.MailDesk;
import puzzleworkshop.letters.mail.MailState;

/** One letter that was written: what, when, how it stands, its words, and what a person can do about it. */
class LetterRow extends Div {

    private final transient Letter letter;
    private final transient MailDesk desk;
    private final transient Formatter figures;
    private final transient Runnable changed;

    LetterRow(Letter letter, MailDesk desk, Formatter figures, Runnable changed) {
        this.letter = letter;
        this.desk = desk;
        this.figures = figures;
        this.changed = changed;
        addClassName("letters-row");
        Paragraph words = new Paragraph(letter.body());
        words.addClassName("letters-words");
        Span about = new Span(figures.text(
                "letters.row.about",
                letter.at(),
                letter.by(),
                letter.to().isBlank() ? figures.text("letters.row.nobody") : letter.to()));
        about.addClassName("pw-small");
        Div inside = new Div(about, new Span(letter.subject()), words);
        inside.addClassName("letters-inside");
        if (!letter.attached().isEmpty()) {
            Span papers = new Span(figures.text("letters.row.papers", letter.attached()));
            papers.addClassName("pw-small");
            inside.add(papers);
        }
        Details details =
                new Details(figures.text(letter.kind().textKey()) + " · " + figures.moment(letter.at()), inside);
        add(details, standing());
    }

    /** The same for a page that shows letters of several orders. */
    LetterRow withOrder() {
        addComponentAsFirst(new Anchor("orders/" + letter.orderNumber(), letter.orderNumber()));
        return this;
    }

    private Div standing() {
        Div standing = new Div();
        standing.addClassNames("pw-row", "letters-standing");
        if (letter.mail().isEmpty()) {
            Span way = new Span(figures.text(letter.way().textKey()));
            way.addClassName("pw-small");
            standing.add(way);
            return standing;
        }
        Letter.Mail mail = letter.mail().get();
        standing.add(new Verdict(kind(mail.state()), figures.text(mail.state().textKey())));
        Span words = new Span(words(mail));
        words.addClassName("pw-small");
        standing.add(words);
        if (mail.state() == MailState.ASKS) {
            standing.add(
                    settle("letters.row.arrived", () -> desk.arrived(letter.id(), mail.state())),
                    settle("letters.row.again", () -> desk.again(letter.id(), mail.state())));
        } else if (mail.state() == MailState.FAILED) {
            standing.add(
                    settle("letters.row.again", () -> desk.again(letter.id(), mail.state())),
                    settle("letters.row.withdraw", () -> desk.withdraw(letter.id(), mail.state())));
        } else if (mail.state() == MailState.WAITING) {
            if (mail.tries() > 0) {
                standing.add(settle("letters.row.now", () -> desk.again(letter.id(), mail.state())));
            }
            standing.add(settle("letters.row.withdraw", () -> desk.withdraw(letter.id(), mail.state())));
        }
        return standing;
    }

    private String words(Letter.Mail mail) {
        return switch (mail.state()) {
            case SENT -> mail.sentAt().map(figures::moment).orElse("");
            case ASKS -> figures.text("letters.row.asks");
            case FAILED -> figures.text("letters.row.fault", mail.fault());
            case WAITING ->
                mail.tries() > 0
                        ? figures.text("letters.row.next", mail.tries(), mail.nextTry(), mail.fault())
                        : figures.text(desk.sends() ? "letters.row.waits" : "letters.row.sending-off", mail.nextTry());
            case CLAIMED, WITHDRAWN -> "";
        };
    }

    private Button settle(String key, Runnable answer) {
        Button button = new Button(figures.text(key), press -> {
            Feedback.unlessRefused(figures, "letters.row.done", answer);
            changed.run();
        });
        button.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
        return button;
    }

    private static Verdict.Kind kind(MailState state) {
        return switch (state) {
            case SENT -> Verdict.Kind.GOOD;
            case WAITING, CLAIMED -> Verdict.Kind.WAIT;
            case ASKS -> Verdict.Kind.WARN;
            case FAILED -> Verdict.Kind.BAD;
            case WITHDRAWN -> Verdict.Kind.WARN;
        };
    }
}
