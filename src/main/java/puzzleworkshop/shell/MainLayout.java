package puzzleworkshop.shell;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasElement;
import com.vaadin.flow.component.applayout.AppLayout;
import com.vaadin.flow.component.applayout.DrawerToggle;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Footer;
import com.vaadin.flow.component.html.Header;
import com.vaadin.flow.component.html.Main;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.orderedlayout.Scroller;
import com.vaadin.flow.component.sidenav.SideNav;
import com.vaadin.flow.component.sidenav.SideNavItem;
import com.vaadin.flow.router.AfterNavigationEvent;
import com.vaadin.flow.router.AfterNavigationObserver;
import com.vaadin.flow.router.Layout;
import com.vaadin.flow.router.NavigationTrigger;
import com.vaadin.flow.server.menu.MenuEntry;
import com.vaadin.flow.spring.security.AuthenticationContext;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.Texts;
import puzzleworkshop.workshop.Workshop;

/**
 * The frame around every screen: the workshop's name, the way to each room, and on a phone the four rooms used with a
 * thumb at the foot. Screens name themselves with {@code @Menu}; only those the signed-in person may enter are shown.
 */
@Layout
@PermitAll
@StyleSheet("context://shell.css")
@JavaScript("context://alive.js")
@JavaScript("context://shell.js")
public class MainLayout extends AppLayout implements AfterNavigationObserver {

    /** The rooms at the foot of a phone's screen, by route. */
    private static final List<String> AT_HAND = List.of("", "orders", "bench", "sheets");

    private final transient Texts texts;
    private final transient AuthenticationContext signedIn;
    private final Nav foot = new Nav();
    private final Main main = new Main();
    private final FindDialog find;
    private String shown = "";

    public MainLayout(
            Texts texts, Workshop workshop, AuthenticationContext signedIn, Findings findings, RoomsInMenu menu) {
        this.find = new FindDialog(findings);
        this.texts = texts;
        this.signedIn = signedIn;
        addClassName("shell");
        getElement()
                .setAttribute("data-alive-away", texts.getTranslation("shell.away", Texts.LOCALE))
                .setAttribute("data-alive-restarted", texts.getTranslation("shell.restarted", Texts.LOCALE));
        setPrimarySection(Section.DRAWER);
        main.setId("main");
        main.addClassName("shell-main");
        // It is no field, but the way past the rooms leads to it.
        main.getElement().setAttribute("tabindex", "-1");
        setContent(main);
        List<MenuEntry> rooms = menu.of(signedIn);
        Header first = new Header(past(), head(workshop.profile().name()), newOrder(), look());
        addToDrawer(first, new Scroller(rooms(rooms)), own());
        addToNavbar(true, foot(rooms));
    }

    @Override
    public void showRouterLayoutContent(HasElement page) {
        main.getElement().removeAllChildren().appendChild(page.getElement());
    }

    /** A page begins at its top; who comes back to one finds it where it was left. */
    @Override
    public void afterNavigation(AfterNavigationEvent event) {
        String whole = event.getLocation().getPath();
        if (!whole.equals(shown)) {
            boolean back = event.getLocationChangeEvent().getTrigger() == NavigationTrigger.HISTORY;
            boolean first = shown.isEmpty();
            getElement().executeJs("window.pwShell?.arrived($0, $1, $2)", whole, back, first);
            shown = whole;
        }
        String path = event.getLocation().getFirstSegment();
        foot.getChildren()
                .filter(Anchor.class::isInstance)
                .forEach(link -> link.getElement()
                        .setAttribute("aria-current", ((Anchor) link).getHref().equals(path) ? "page" : "false"));
    }

    /** The first thing that the Tab key reaches: past the rooms, to what the page is about. */
    private Component past() {
        Anchor past = new Anchor("#main", texts.getTranslation("shell.past", Texts.LOCALE));
        past.addClassName("shell-past");
        past.getElement().setAttribute("router-ignore", true);
        return past;
    }

    private Component head(String name) {
        Span mark = SvgBox.inline("<svg viewBox='0 0 32 32' aria-hidden='true'>" + ShellIcons.PIECE + "</svg>");
        mark.addClassName("shell-mark");
        Anchor head = new Anchor("", mark, new Span(name));
        head.addClassName("shell-head");
        return head;
    }

    private Component newOrder() {
        Anchor link = new Anchor("orders/new", texts.getTranslation("shell.new-order", Texts.LOCALE));
        link.addClassName("shell-new-order");
        return link;
    }

    /** The search, on its button and on one key from everywhere. */
    private Component look() {
        Button look = new Button(texts.getTranslation("shell.find", Texts.LOCALE), event -> find.open());
        look.setId("find");
        look.addClassName("shell-look");
        look.addThemeVariants(ButtonVariant.TERTIARY);
        Span key = new Span("/");
        key.addClassName("shell-key");
        key.getElement().setAttribute("aria-hidden", "true");
        look.setSuffixComponent(key);
        look.getElement().setAttribute("aria-keyshortcuts", "/");
        return look;
    }

    private Component rooms(List<MenuEntry> rooms) {
        SideNav nav = new SideNav();
        for (MenuEntry entry : rooms) {
            SideNavItem item = new SideNavItem(name(entry), entry.menuClass());
            // a page below another is still in that room; all pages are below the first
            item.setMatchNested(!entry.path().replace("/", "").isEmpty());
            nav.addItem(item);
        }
        return nav;
    }

    /** Who is signed in, the choice of light or dark, and the way out. */
    private Component own() {
        Button scheme = new Button(
                texts.getTranslation("shell.scheme", Texts.LOCALE),
                event -> getElement()
                        .executeJs("const root = document.documentElement;const dark ="
                                + " getComputedStyle(root).colorScheme === 'dark' || (root.dataset.scheme !=="
                                + " 'light' && matchMedia('(prefers-color-scheme:"
                                + " dark)').matches);root.dataset.scheme = dark ? 'light' :"
                                + " 'dark';localStorage.setItem('pw-scheme', root.dataset.scheme)"));
        scheme.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        Button leave = new Button(texts.getTranslation("shell.sign-out", Texts.LOCALE), event -> signedIn.logout());
        leave.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        Span who = new Span(signedIn.getPrincipalName().orElse(""));
        who.addClassName("pw-small");
        Footer own = new Footer(who, scheme, leave);
        own.addClassName("shell-own");
        return own;
    }

    private Component foot(List<MenuEntry> rooms) {
        foot.addClassName("shell-foot");
        foot.setAriaLabel(texts.getTranslation("shell.at-hand", Texts.LOCALE));
        for (MenuEntry entry : rooms) {
            String route = entry.path().replaceFirst("^/", "");
            if (AT_HAND.contains(route)) {
                Anchor link = new Anchor(route, SvgBox.inline(ShellIcons.ofRoute(route)), new Span(name(entry)));
                foot.add(link);
            }
        }
        DrawerToggle more = new DrawerToggle();
        more.setAriaLabel(texts.getTranslation("shell.all-rooms", Texts.LOCALE));
        foot.add(more);
        return foot;
    }

    private String name(MenuEntry entry) {
        return texts.has(entry.title()) ? texts.getTranslation(entry.title(), Texts.LOCALE) : entry.title();
    }
}
