package puzzleworkshop.shell;

import com.vaadin.flow.server.VaadinService;
import com.vaadin.flow.server.menu.MenuConfiguration;
import com.vaadin.flow.server.menu.MenuEntry;
import com.vaadin.flow.spring.security.AuthenticationContext;
import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.runtime.VersionedCache;

/**
 * The rooms that a person may enter. Screens and who may enter them stand in the program and never change while it runs; Vaadin
 * asks about each screen anew, which was a sixth of the work for every page.
 */
@Component
class RoomsInMenu {

    private static final int MOST_KEPT = 16;

    /** @param screens where they are registered: one in a program, one for each test without a browser */
    private record Asked(VaadinService screens, Set<String> roles) {}

    private final VersionedCache<Asked, List<MenuEntry>> known = VersionedCache.ofMost(MOST_KEPT);

    /** For whoever sends the request that is being served. */
    List<MenuEntry> of(AuthenticationContext signedIn) {
        return known.get(
                new Asked(VaadinService.getCurrent(), Set.copyOf(signedIn.getGrantedRoles())),
                () -> List.copyOf(MenuConfiguration.getMenuEntries()));
    }
}
