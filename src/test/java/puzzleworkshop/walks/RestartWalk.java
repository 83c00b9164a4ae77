package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** What somebody at the bench sees when the program is started again while they work. */
@TestMethodOrder(OrderAnnotation.class)
class RestartWalk extends Walk {

    /** A slow answer stops nobody in the middle of a word; two of them do, and then the place is given back. */
    @Test
    @Order(1)
    void who_types_while_the_program_is_slow_loses_neither_letters_nor_place() {
        openWorkshop(false);
        go("orders/new");
        page.waitForTimeout(2_500);
        Locator contact = page.getByLabel("E-mail or telephone").first();
        contact.click();
        page.evaluate("""
            () => {
              const real = window.fetch;
              window.slow = 1;
              window.fetch = (...asked) => window.slow-- > 0
                ? Promise.reject(new DOMException('slow', 'TimeoutError'))
                : real(...asked);
            }\
            """);
        page.locator("#pw-alive").waitFor();
        assertThat(shellIsInert()).as("after one late answer").isFalse();
        page.keyboard().type("ada@");
        page.waitForFunction("() => !document.getElementById('pw-alive')");
        page.evaluate("() => window.slow = 2");
        page.waitForFunction("() => document.querySelector('.shell').inert");
        page.waitForFunction("() => !document.querySelector('.shell').inert");
        page.keyboard().type("reed.example");
        assertThat(contact.inputValue()).isEqualTo("ada@reed.example");
    }

    @Test
    @Order(2)
    void a_restart_is_told_in_words_within_three_seconds_and_ends_on_the_same_page_still_signed_in() {
        go("supplies");
        page.waitForTimeout(2_500);
        String port = endProgram();
        long ended = System.nanoTime();
        Locator banner = page.locator("#pw-alive");
        banner.waitFor();
        assertThat(Duration.ofNanos(System.nanoTime() - ended)).isLessThan(Duration.ofSeconds(3));
        assertThat(banner.textContent()).contains("does not answer");
        assertThat(page.evaluate("() => document.querySelector('.shell').inert"))
                .as("presses are held back")
                .isEqualTo(true);
        for (Look look : Look.values()) {
            picture(look, "away");
        }
        startProgramAt(port);
        page.getByText("The program was restarted").waitFor(new Locator.WaitForOptions().setTimeout(60_000));
        settle();
        assertThat(page.url()).endsWith("/supplies");
        assertThat(page.locator("h1").first().textContent()).contains("Supplies");
        assertThat(page.evaluate("() => document.querySelector('.shell').inert"))
                .isEqualTo(false);
        picture(Look.PHONE, "restarted");
        button("Sign out").first().click();
        page.waitForURL("**/sign-in**");
        go("supplies");
        assertThat(page.url()).contains("sign-in");
    }

    private boolean shellIsInert() {
        return (boolean) page.evaluate("() => document.querySelector('.shell').inert");
    }

    private void picture(Look look, String name) {
        boolean phone = look == Look.PHONE;
        page.emulateMedia(new Page.EmulateMediaOptions()
                .setColorScheme(
                        look == Look.DARK
                                ? com.microsoft.playwright.options.ColorScheme.DARK
                                : com.microsoft.playwright.options.ColorScheme.LIGHT));
        page.setViewportSize(phone ? 360 : 1280, phone ? 760 : 900);
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(Path.of(
                        "target",
                        "screens",
                        "restart-" + name + "-" + look.name().toLowerCase(java.util.Locale.ROOT) + ".png")));
        page.setViewportSize(1280, 900);
    }
}
