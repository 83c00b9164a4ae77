package puzzleworkshop.display;

import com.vaadin.flow.component.HasElement;

/** Takes what stands in a field along. */
public final class Clipboard {

    private Clipboard() {}

    /**
     * Copies what stands in a text field, and says so. The clipboard is closed to pages without encryption; the old way
     * by selection works there as well.
     */
    public static void copy(HasElement field, String told) {
        field.getElement().executeJs("""
            if (navigator.clipboard && window.isSecureContext) {
              navigator.clipboard.writeText(this.value);
            } else {
              this.inputElement.select();
              document.execCommand('copy');
            }
            """);
        Feedback.tell(told, false);
    }
}
