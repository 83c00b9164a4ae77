package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.JavaScript;

/**
 * Opens the system's own sheet for sharing a text, as phones have it. Browsers open it only in answer to the press itself,
 * so the words lie ready in the page; where there is no such sheet the button is not shown.
 */
@JavaScript("context://share.js")
public class ShareButton extends Button {

    public ShareButton(String words) {
        super(words);
        addClassName("pw-share");
        getElement().setAttribute("data-share", true);
    }

    /** What is shared from now on. */
    public void share(String title, String text) {
        getElement().setProperty("shareTitle", title);
        getElement().setProperty("shareText", text);
    }
}
