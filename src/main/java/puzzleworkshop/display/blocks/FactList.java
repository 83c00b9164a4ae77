package puzzleworkshop.display.blocks;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;

/** Names with what they are, one below the other. */
public class FactList extends Still {

    private final transient List<Markup> facts = new ArrayList<>();

    public FactList() {
        super(Markup.of("dl", "pw-facts"));
    }

    /** @param name in the reader's words, not a key */
    public void fact(String name, String value) {
        facts.add(Markup.of("dt", "", name));
        facts.add(Markup.of("dd", "", value));
        show(facts);
    }
}
