package puzzleworkshop.display;

import com.vaadin.flow.component.UI;
import java.net.URL;
import java.util.function.Consumer;

/** Where other people reach the program. */
public final class PageAddress {

    private PageAddress() {}

    /**
     * Tells the address that links begin with, without a slash at its end; where the browser is asked, a moment later.
     *
     * @param publicUrl what the owner has said; empty: as this browser reaches the program
     */
    public static void root(UI ui, String publicUrl, Consumer<String> then) {
        if (publicUrl.isBlank()) {
            ui.getPage().fetchCurrentURL(here -> then.accept(root(here)));
        } else {
            then.accept(publicUrl);
        }
    }

    private static String root(URL here) {
        int port = here.getPort();
        return here.getProtocol() + "://" + here.getHost() + (port < 0 ? "" : ":" + port);
    }
}
