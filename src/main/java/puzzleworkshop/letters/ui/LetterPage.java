package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.html.IFrame;

/** A letter as a mail program shows it, in a frame that may run nothing and reach nothing. */
class LetterPage extends IFrame {

    LetterPage(String page, String title) {
        setSandbox(SandboxType.RESTRICT_ALL);
        getElement().setAttribute("srcdoc", page);
        getElement().setAttribute("title", title);
        addClassName("letters-page");
    }
}
