package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.html.DescriptionList;

/** Names with what they are, one below the other. */
public class FactList extends DescriptionList {

    public FactList() {
        addClassName("pw-facts");
    }

    /** @param name in the reader's words, not a key */
    public void fact(String name, String value) {
        add(new Term(name), new Description(value));
    }
}
