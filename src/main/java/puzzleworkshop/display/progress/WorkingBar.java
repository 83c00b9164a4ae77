package puzzleworkshop.display.progress;

import com.vaadin.flow.component.progressbar.ProgressBar;

/** A bar that tells how far work is, with a name for those who hear the page. */
public class WorkingBar extends ProgressBar {

    public WorkingBar() {
        named();
    }

    public WorkingBar(double min, double max, double value) {
        super(min, max, value);
        named();
    }

    private void named() {
        getElement().setAttribute("aria-label", getTranslation("display.working"));
    }
}
