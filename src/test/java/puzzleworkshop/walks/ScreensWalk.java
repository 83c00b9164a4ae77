package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.proofs.Proofs;

/** Every screen of a workshop at work, in light and in dark, looked through by axe-core. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class ScreensWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    private static final List<String> PAGES = List.of(
            "",
            "orders",
            "orders/new",
            "customers",
            "bench",
            "bench/print",
            "bench/cut",
            "bench/pack",
            "hand-overs",
            "print-runs",
            "sheets",
            "sheets/enter",
            "sheets/find",
            "sheets/lists",
            "sheets/number/1",
            "sheets/rules",
            "sheets/stock-take",
            "sheets/week",
            "wood",
            "asked-for",
            "supplies",
            "machines",
            "machines/cuts",
            "machines/places",
            "machines/settings",
            "rates",
            "figures",
            "figures/work",
            "set-up",
            "set-up/letters",
            "draw-pattern",
            "check-cut-file");

    @Test
    @Order(1)
    void every_page_can_be_read_in_light_and_in_dark() {
        openWorkshop(true);
        PAGES.forEach(this::inBothSchemes);
    }

    @Test
    @Order(2)
    void so_can_an_order_and_the_customers_own_page() {
        puzzleworkshop.orders.Order order =
                bean(Orders.class).open().stream().findFirst().orElseThrow();
        inBothSchemes("orders/" + order.number());
        inBothSchemes("p/" + bean(Proofs.class).makeLink(order.id(), NAME).text());
        assertThat(page.locator("main").count()).isEqualTo(1);
    }

    private void inBothSchemes(String path) {
        go(path);
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            page.waitForTimeout(900);
            lookThrough("'%s', %s".formatted(path, scheme));
        }
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    }
}
