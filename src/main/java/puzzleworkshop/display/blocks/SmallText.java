package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.html.Paragraph;

/** Words of less weight that explain what they stand beside. */
public class SmallText extends Paragraph {

    public SmallText() {
        this("");
    }

    public SmallText(String words) {
        super(words);
        addClassName("pw-small");
    }
}
