package puzzleworkshop.shell;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.page.AppShellConfigurator;
import com.vaadin.flow.component.page.Inline;
import com.vaadin.flow.component.page.Push;
import com.vaadin.flow.component.page.Viewport;
import com.vaadin.flow.server.AppShellSettings;
import com.vaadin.flow.theme.aura.Aura;

/** What stands in the head of every page: our look over Aura, and the server's right to speak first. */
@Push
@StyleSheet(Aura.STYLESHEET)
@StyleSheet("context://workshop.css")
@Viewport("width=device-width, initial-scale=1")
public class AppShell implements AppShellConfigurator {

    @Override
    public void configurePage(AppShellSettings settings) {
        settings.setPageTitle("Puzzle Workshop");
        settings.addMetaTag("color-scheme", "light dark");
        settings.addFavIcon("icon", "icon.svg", "any");
        settings.addLink("apple-touch-icon", "touch-icon.png");
        settings.addLink("manifest", "site.webmanifest");
        // before the first paint, so that a chosen scheme does not flash in the other one
        settings.addInlineWithContents(
                "const chosen = localStorage.getItem('pw-scheme'); if (chosen) document.documentElement.dataset.scheme"
                        + " = chosen",
                Inline.Wrapping.JAVASCRIPT);
    }
}
