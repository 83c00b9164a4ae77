package puzzleworkshop.display;

import com.vaadin.flow.component.confirmdialog.ConfirmDialog;

/**
 * A question before something that cannot simply be taken back. The safe answer holds the focus: whoever presses Enter
 * without reading keeps what there is.
 */
public class SafeQuestion extends ConfirmDialog {

    public SafeQuestion(String title, String safe, String risky) {
        setHeader(title);
        setCancelable(true);
        setCancelText(safe);
        setConfirmText(risky);
        // The dialog itself gives the focus to the other answer, a moment after it opened. It is taken away when that
        // answer has heard of it: taken before, its ring stayed and it looked like the one that Enter presses.
        addOpenedChangeListener(event -> {
            if (event.isOpened()) {
                getElement().executeJs("""
                    const safe = () => this.querySelector('[slot="cancel-button"]');
                    const risky = this.querySelector('[slot="confirm-button"]');
                    const hold = () => safe()?.focus();
                    risky?.addEventListener('focus', () => setTimeout(hold), {once: true});
                    [0, 60, 200].forEach((after) => setTimeout(() => {
                      const at = document.activeElement;
                      if (!this.contains(at) || at === risky) hold();
                    }, after))\
                    """);
            }
        });
    }
}
