package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.LoadState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.extension.TestWatcher;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;

/**
 * The program on a free port and an empty data folder, and headless Chromium before it. One walk has one signed-in browser
 * for all its test methods (order them with {@code @TestMethodOrder} where they build on each other), and a program of its
 * own or one that it shares. Pictures go to target/screens: of each step that failed, and with {@code -Dscreens=true} of
 * every screen that is shown.
 */
@Tag("walk")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class Walk {

    static final String NAME = "Robin";
    static final String PASSWORD = "birch paper ink 26";

    /** Where systems keep it; CHROMIUM in the environment comes first. */
    private static final List<String> BROWSERS = List.of(
            // the same without windows: half the work for the machine
            "/usr/bin/chromium-headless-shell",
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome",
            "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome");

    private static final List<String> FLAGS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync");

    /** The rules of WCAG 2.0 and 2.1, levels A and AA, as axe-core names them. */
    private static final List<String> WCAG = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa");

    static final Path SCREENS = Path.of("target", "screens");

    private static final boolean PICTURES = Boolean.getBoolean("screens");

    /** Whose program a walk goes through. */
    enum Whose {
        /** Its own: it is started again, or what others leave behind would change what is walked. */
        OWN,
        /** An open workshop in which nothing was made, but what other walks made for themselves. */
        SHARED,
        /** The same with the demo in it. */
        SHARED_DEMO
    }

    /** One program each for the walks that share it; they end with the tests. */
    private static final Map<Whose, ConfigurableApplicationContext> SHARED = new EnumMap<>(Whose.class);

    /** Those of them whose first steps are behind them. */
    private static final Set<Whose> OPEN = EnumSet.noneOf(Whose.class);

    /** How a screen is looked at. */
    enum Look {
        LIGHT(1280, 900, ColorScheme.LIGHT),
        DARK(1280, 900, ColorScheme.DARK),
        PHONE(360, 760, ColorScheme.LIGHT);

        private final int width;
        private final int height;
        private final ColorScheme scheme;

        Look(int width, int height, ColorScheme scheme) {
            this.width = width;
            this.height = height;
            this.scheme = scheme;
        }
    }

    private ConfigurableApplicationContext program;
    private Playwright playwright;
    private Browser browser;
    private BrowserContext context;
    private final List<String> complaints = new ArrayList<>();
    private final List<String> findings = new ArrayList<>();
    private Path folder;

    /** What the screen looked like when a step failed, beside the other pictures. */
    @RegisterExtension
    final TestWatcher failures = new TestWatcher() {
        @Override
        public void testFailed(ExtensionContext step, Throwable cause) {
            if (page != null) {
                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(SCREENS.resolve(
                                "failed-" + step.getRequiredTestMethod().getName() + ".png")));
            }
        }
    };

    /** The one page of this walk. */
    Page page;

    @BeforeAll
    void startProgramAndBrowser() throws IOException {
        Path chromium = chromium().orElse(null);
        Assumptions.assumeTrue(
                chromium != null,
                "there is no Chromium on this machine: install it, or name one in the environment as CHROMIUM");
        Files.createDirectories(SCREENS);
        folder = Path.of(
                "target",
                "walks",
                (workshop() == Whose.OWN
                                ? getClass().getSimpleName()
                                : workshop().name())
                        + ProcessHandle.current().pid());
        program = SHARED.get(workshop());
        if (program == null) {
            FileSystemUtils.deleteRecursively(folder);
            startProgramAt("0");
        }
        if (workshop() != Whose.OWN) {
            SHARED.put(workshop(), program);
        }
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(chromium)
                        .setArgs(FLAGS));
        context = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(usual().width, usual().height)
                .setHasTouch(usual() == Look.PHONE)
                .setColorScheme(ColorScheme.LIGHT)
                .setLocale("en-GB")
                .setTimezoneId("Europe/Berlin"));
        context.setDefaultTimeout(120_000);
        page = context.newPage();
        listen(page);
    }

    @AfterAll
    void endBrowserAndProgram() {
        if (playwright != null) {
            playwright.close();
        }
        if (program != null && workshop() == Whose.OWN) {
            program.close();
        }
    }

    /** Whose program this walk goes through. */
    Whose workshop() {
        return Whose.OWN;
    }

    /** How this walk goes; most are walked on a laptop. */
    Look usual() {
        return Look.LIGHT;
    }

    /** Ends the program and starts it again on the same data; the browser stays. */
    void restartProgram() {
        program.close();
        startProgramAt("0");
    }

    /** @return the port at which it was */
    String endProgram() {
        String port = program.getEnvironment().getProperty("local.server.port");
        program.close();
        return port;
    }

    /** @param port where it was before, or 0 for any that is free */
    void startProgramAt(String port) {
        program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .run("--server.port=" + port, "--puzzleworkshop.data=" + folder);
    }

    /** As if on another computer: the program on an empty folder of its own. */
    void restartOnEmptyFolder() throws IOException {
        program.close();
        folder = folder.resolveSibling(folder.getFileName() + "-2");
        FileSystemUtils.deleteRecursively(folder);
        startProgramAt("0");
        page.context().clearCookies();
    }

    String address(String path) {
        return "http://localhost:" + program.getEnvironment().getProperty("local.server.port") + "/" + path;
    }

    /** The program's beans, for what makes orders behind the screens. */
    BeanFactory beans() {
        return program;
    }

    <T> T bean(Class<T> type) {
        return program.getBean(type);
    }

    void go(String path) {
        page.navigate(address(path));
        settle(page);
    }

    /** Fills the first steps with the walk's account and signs in; where another walk has opened it, signs in only. */
    void openWorkshop(boolean withDemo) {
        assertThat(workshop()).isNotEqualTo(withDemo ? Whose.SHARED : Whose.SHARED_DEMO);
        go("");
        if (workshop() != Whose.OWN && !OPEN.add(workshop())) {
            signIn();
            return;
        }
        fillFirstSteps();
        if (withDemo) {
            page.getByText("A demo workshop").click();
        }
        page.getByText("Open the workshop").click();
        page.waitForURL("**/sign-in?welcome", new Page.WaitForURLOptions().setTimeout(600_000));
        signIn();
    }

    void fillFirstSteps() {
        page.getByLabel("Name of the workshop").fill("Birch & Beam");
        page.getByLabel("Your name").fill(NAME);
        page.getByLabel("Password", new Page.GetByLabelOptions().setExact(true)).fill(PASSWORD);
        page.getByLabel("Password once more").fill(PASSWORD);
    }

    /** From the sign-in page. */
    void signIn() {
        page.waitForSelector("vaadin-login-form");
        settle(page);
        enter(NAME, PASSWORD);
        page.waitForURL(url -> !url.contains("sign-in"));
        settle(page);
    }

    void enter(String name, String password) {
        page.locator("vaadin-login-form input[name=username]").fill(name);
        page.locator("vaadin-login-form input[name=password]").fill(password);
        page.keyboard().press("Enter");
    }

    /** Waits until the server has answered everything that was asked. */
    static void settle(Page page) {
        page.waitForLoadState(LoadState.LOAD);
        page.waitForTimeout(200);
        page.waitForFunction(
                "() => Object.values((window.Vaadin && window.Vaadin.Flow && window.Vaadin.Flow.clients) || {})"
                        + ".every(client => !client.isActive || !client.isActive())");
        page.waitForTimeout(150);
    }

    void settle() {
        settle(page);
    }

    /** The screen as it is now in light, dark and on a phone; on the phone nothing may stick out to the side. */
    void shoot(String name) {
        for (Look look : Look.values()) {
            if (look == Look.DARK && !PICTURES) {
                continue;
            }
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(look.scheme));
            page.setViewportSize(look.width, look.height);
            settle(page);
            if (PICTURES) {
                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(
                                SCREENS.resolve(name + "-" + look.name().toLowerCase(java.util.Locale.ROOT) + ".png")));
            }
            if (look != Look.PHONE) {
                // colours of the other scheme may come gliding
                page.waitForTimeout(look == Look.DARK ? 600 : 0);
                lookThrough(name + ", " + look.name().toLowerCase(java.util.Locale.ROOT));
            }
            if (look == Look.PHONE) {
                assertThat(((Number) page.evaluate("document.documentElement.scrollWidth")).intValue())
                        .as("width of the screen '%s' on a phone", name)
                        .isLessThanOrEqualTo(look.width);
            }
        }
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        page.setViewportSize(usual().width, usual().height);
        settle(page);
    }

    /**
     * What axe-core calls serious or critical, by the rules of WCAG 2 that a program can check, fails the step at its end;
     * all findings of a step are told together, and stand beside the pictures.
     */
    void lookThrough(String screen) {
        // A letter's preview is a frame in which no script runs, axe-core's neither: it would be waited for without
        // end.
        new AxeBuilder(page)
                .exclude("iframe").withTags(WCAG).analyze().getViolations().stream()
                        .filter(rule -> List.of("serious", "critical").contains(rule.getImpact()))
                        .flatMap(rule -> rule.getNodes().stream()
                                .map(node -> screen + ": " + rule.getId() + " at " + node.getTarget() + " "
                                        + node.getHtml()))
                        .forEach(findings::add);
    }

    @AfterEach
    void nobodyIsKeptOut() throws IOException {
        List<String> found = List.copyOf(findings);
        findings.clear();
        if (!found.isEmpty()) {
            Files.writeString(
                    SCREENS.resolve("axe-findings.txt"),
                    String.join("\n", found) + "\n",
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        }
        assertThat(found).as("serious or critical by axe-core").isEmpty();
    }

    Locator button(String words) {
        return page.locator("vaadin-button").filter(new Locator.FilterOptions().setHasText(words));
    }

    /** What the browser complained of since the walk began: faults in scripts, files that are missing. */
    List<String> complaints() {
        return complaints;
    }

    private void listen(Page page) {
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error")) {
                complaints.add(message.text() + " (" + message.location() + ")");
            }
        });
    }

    private static Optional<Path> chromium() {
        return Stream.concat(Stream.ofNullable(System.getenv("CHROMIUM")), BROWSERS.stream())
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }
}
