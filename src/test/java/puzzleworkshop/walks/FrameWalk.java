package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.WeekPlan;

/** What all pages share: where they open, the way past the rooms, the focus, the foot of a phone, paper. */
@Tag("far")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FrameWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED;
    }

    private static final String SCROLLED =
            "() => document.querySelector('.shell').shadowRoot.querySelector('[part=content]').scrollTop";

    private static final List<String> PAGES = List.of(
            "",
            "orders",
            "orders/new",
            "bench/print",
            "bench/cut",
            "print-runs",
            "sheets",
            "sheets/find",
            "sheets/enter",
            "sheets/rules",
            "sheets/stock-take",
            "sheets/lists",
            "supplies",
            "machines",
            "rates",
            "figures",
            "set-up",
            "draw-pattern",
            "check-cut-file");

    @Test
    void pages_open_at_their_top_are_reached_by_keys_and_fill_a_phone_and_paper() {
        openWorkshop(false);
        Order order = new BenchOrders(beans())
                .confirmed("Ida Lund", bean(WeekPlan.class).today().plusDays(20), 25);
        topAndBack();
        pastTheRooms();
        safeAnswer(order);
        focusStays(order);
        drawerOverFoot();
        paper();
        PAGES.forEach(this::thumbs);
        assertThat(complaints()).isEmpty();
    }

    private void topAndBack() {
        go("rates");
        page.evaluate(
                "() => document.querySelector('.shell').shadowRoot.querySelector('[part=content]').scrollTop = 700");
        page.waitForTimeout(200);
        page.locator("vaadin-side-nav-item").getByText("Set-up").click();
        page.waitForURL("**/set-up");
        settle();
        assertThat(((Number) page.evaluate(SCROLLED)).intValue()).isZero();
        page.goBack();
        page.waitForURL("**/rates");
        // a page that was left is found as it was
        page.waitForFunction("() => (" + SCROLLED + ")() > 600");
    }

    private void pastTheRooms() {
        go("orders/new");
        page.keyboard().press("Tab");
        assertThat(page.evaluate("() => document.activeElement.className")).isEqualTo("shell-past");
        page.keyboard().press("Enter");
        assertThat(page.evaluate("() => document.activeElement.id")).isEqualTo("main");
        assertThat(page.url()).endsWith("orders/new");
        assertThat(page.locator("main").count()).isEqualTo(1);
        assertThat(page.locator("main h1").count()).isEqualTo(1);
    }

    private void safeAnswer(Order order) {
        go("orders/" + order.number());
        button("Give up").click();
        page.locator("vaadin-confirm-dialog vaadin-button[slot=cancel-button]").waitFor();
        page.waitForTimeout(500);
        assertThat(page.evaluate("() => document.activeElement.slot")).isEqualTo("cancel-button");
        page.keyboard().press("Enter");
        page.waitForTimeout(400);
        assertThat(page.locator("h1").first().textContent()).contains(order.number());
        assertThat(page.getByText("Given up").count()).isZero();
    }

    private void focusStays(Order order) {
        go("bench/print?order=" + order.number());
        page.keyboard().press("Tab");
        button("Start the clock").focus();
        page.keyboard().press("Enter");
        button("Stop the clock").waitFor();
        page.waitForTimeout(400);
        assertThat(page.evaluate("() => document.getElementById('main').contains(document.activeElement)"))
                .as("the card is a new one; the focus is still on the page")
                .isEqualTo(true);
    }

    private void drawerOverFoot() {
        page.setViewportSize(360, 760);
        go("orders/new");
        page.locator("#confirm-order").scrollIntoViewIfNeeded();
        page.locator("vaadin-drawer-toggle").click();
        page.waitForTimeout(600);
        Object under = page.evaluate("""
            () => {
              const foot = document.querySelector('.neworder-foot');
              const box = foot.getBoundingClientRect();
              const drawer = document.querySelector('.shell').shadowRoot.querySelector('[part=drawer]').getBoundingClientRect();
              const at = [];
              for (let x = 4; x < drawer.right - 4; x += 12)
                for (let y = box.top + 4; y < box.bottom; y += 8)
                  if (foot.contains(document.elementFromPoint(x, y))) at.push([x, y]);
              return [drawer.width > 100, at.length];
            }\
            """);
        assertThat(under)
                .as("the drawer is open, and no tap on it reaches the foot")
                .isEqualTo(List.of(true, 0));
        page.setViewportSize(1280, 900);
    }

    private void paper() {
        go("set-up");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        int whole = ((Number) page.evaluate("() => document.documentElement.scrollHeight")).intValue();
        int content = ((Number) page.evaluate("() => document.querySelector('main > *').scrollHeight")).intValue();
        assertThat(whole).as("nothing of the page is cut off on paper").isGreaterThanOrEqualTo(content);
        assertThat(page.locator("vaadin-side-nav").isVisible()).isFalse();
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
        go("orders");
        page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))");
        assertThat(page.locator(".pw-paper-note").textContent())
                .as("all rows are seen")
                .isEmpty();
        page.evaluate("() => { document.querySelector('[data-on-paper]').style.maxHeight = '10px'; "
                + "document.querySelector('[data-on-paper]').style.minHeight = 0; "
                + "window.dispatchEvent(new Event('beforeprint')); }");
        assertThat(page.locator(".pw-paper-note").textContent()).startsWith("On this paper: 0 of 1 orders");
    }

    /** At least 44 pixels for a thumb (WCAG 2.1, success criterion 2.5.5); links within sentences are excepted there. */
    private void thumbs(String path) {
        page.setViewportSize(360, 760);
        go(path);
        Object small = page.evaluate("""
            () => [...document.querySelectorAll('vaadin-button, button, input, textarea, vaadin-tab, summary, vaadin-checkbox, vaadin-radio-button, a.bench-stage, vaadin-details-summary, vaadin-select')]
              .filter(e => e.checkVisibility() && !e.closest('[hidden], .pw-hidden'))
              .map(e => e.closest('vaadin-checkbox, vaadin-radio-button, vaadin-upload') || e)
              .map(e => /INPUT|TEXTAREA/.test(e.tagName) && e.parentElement.shadowRoot?.querySelector('[part~="input-field"]') || e)
              .filter(e => { const b = e.getBoundingClientRect(); return b.width && (b.height < 43.5 || b.width < 43.5); })
              .map(e => { const b = e.getBoundingClientRect(); return (e.host || e).tagName + ' ' + (e.className || e.getAttribute('part') || '') + ' ' + (e.getAttribute('aria-label') || e.textContent || e.getRootNode().host?.label || '').trim().slice(0, 40) + ' ' + Math.round(b.width) + '×' + Math.round(b.height); })
              .slice(0, 12)\
            """);
        assertThat((List<?>) small).as("small things to press on '%s'", path).isEmpty();
        lookThrough(path);
        page.setViewportSize(1280, 900);
        settle();
        lookThrough(path);
    }
}
