package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.html.Paragraph;

/** A sentence that must not be overlooked, on a ground of its own. */
public class Note extends Paragraph {

    /** What a note says of things; never by its colour alone, the sentence says it too. */
    public enum Kind {
        GOOD,
        WARN,
        BAD
    }

    public Note(Kind kind, String sentence) {
        super(sentence);
        addClassName("pw-note");
        getElement().setAttribute("data-kind", kind.name().toLowerCase(java.util.Locale.ROOT));
    }

    /** Shown only once there is something to say. */
    public static Note hidden(Kind kind) {
        Note note = new Note(kind, "");
        note.setVisible(false);
        return note;
    }

    /** Hidden until something is refused; read out at once by what reads screens. */
    public static Note refusal() {
        Note note = hidden(Kind.BAD);
        note.getElement().setAttribute("role", "alert");
        return note;
    }

    /** Shows a sentence, or hides the note when there is none. */
    public void say(String sentence) {
        setText(sentence);
        setVisible(!sentence.isEmpty());
    }
}
