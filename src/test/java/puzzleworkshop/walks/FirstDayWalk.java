package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.FilePayload;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.context.annotation.ClassPathScanningCandidateComponentProvider;
import org.springframework.core.type.filter.AnnotationTypeFilter;
import org.springframework.util.ClassUtils;

/** The first minutes of a new workshop, and what a stranger is let see. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class FirstDayWalk extends Walk {

    /** Open to strangers: the way in, the first steps (only while there is no account) and the customer's own link. */
    private static final Set<String> OPEN = Set.of("SignInView", "FirstStepsView", "ProofView");

    private static final List<Class<?>> ROUTES = routes();

    private final HttpClient stranger =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();

    @Test
    @Order(1)
    void every_page_says_who_may_enter_and_only_three_let_strangers_in() {
        for (Class<?> view : ROUTES) {
            assertThat(view.isAnnotationPresent(AnonymousAllowed.class)
                            || view.isAnnotationPresent(PermitAll.class)
                            || view.isAnnotationPresent(RolesAllowed.class))
                    .as("%s says who may enter", view)
                    .isTrue();
        }
        TreeSet<String> open = new TreeSet<>();
        ROUTES.stream()
                .filter(view -> view.isAnnotationPresent(AnonymousAllowed.class))
                .forEach(view -> open.add(view.getSimpleName()));
        assertThat(OPEN).containsAll(open);
    }

    @Test
    @Order(2)
    void an_empty_workshop_begins_with_the_first_steps_and_keeps_what_was_typed_when_it_refuses() {
        go("");
        assertThat(page.url()).endsWith("/first-steps");
        fillFirstSteps();
        page.getByLabel("Password once more").fill("something else entirely");
        button("Open the workshop").click();
        page.getByText("The two passwords are not the same").first().waitFor();
        assertThat(page.getByLabel("Name of the workshop").inputValue()).isEqualTo("Birch & Beam");
        shoot("first-steps");
    }

    @Test
    @Order(3)
    void the_owner_opens_the_workshop_signs_in_and_stands_at_home() {
        openWorkshop(false);
        assertThat(page.url()).doesNotContain("sign-in");
        shoot("home-empty");
    }

    @Test
    @Order(4)
    void the_first_steps_are_closed_once_there_is_an_account() {
        go("first-steps");
        assertThat(page.url()).doesNotContain("first-steps");
    }

    @Test
    @Order(5)
    void a_stranger_is_sent_to_the_sign_in_from_every_other_page() throws Exception {
        for (Class<?> view : ROUTES) {
            if (OPEN.contains(view.getSimpleName())) {
                continue;
            }
            String path = view.getAnnotation(Route.class).value().replaceAll(":\\w+[?*]?(\\([^)]*\\))?", "1");
            HttpResponse<String> answer = ask(path);
            assertThat(answer.statusCode())
                    .as("status of /%s (%s)", path, view.getSimpleName())
                    .isEqualTo(302);
            assertThat(answer.headers().firstValue("Location").orElse(""))
                    .as("/%s", path)
                    .contains("sign-in");
        }
    }

    @Test
    @Order(6)
    void the_health_page_and_the_sheets_of_style_are_open_and_headers_guard_the_rest() throws Exception {
        HttpResponse<String> health = ask("healthz");
        assertThat(health.statusCode()).isEqualTo(200);
        assertThat(health.body()).isEqualTo("open\n");
        // whoever watches the program from outside often asks for the head alone
        HttpResponse<Void> head = stranger.send(
                HttpRequest.newBuilder(URI.create(address("healthz")))
                        .method("HEAD", HttpRequest.BodyPublishers.noBody())
                        .build(),
                BodyHandlers.discarding());
        assertThat(head.statusCode()).isEqualTo(200);
        assertThat(ask("workshop.css").statusCode()).isEqualTo(200);
        HttpResponse<String> door = ask("sign-in");
        assertThat(door.headers().firstValue("Set-Cookie").orElse(""))
                .contains("HttpOnly")
                .contains("SameSite=Lax");
        assertThat(door.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("frame-ancestors 'self'")
                // a script from elsewhere does not run
                .contains("script-src 'self' 'unsafe-inline' 'unsafe-eval'")
                .doesNotContain("script-src *")
                .doesNotContain("https:");
        assertThat(door.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
    }

    @Test
    @Order(7)
    void a_sign_in_without_the_forms_token_is_not_let_in_though_the_password_is_right() throws Exception {
        HttpRequest forged = HttpRequest.newBuilder(URI.create(address("sign-in")))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(
                        "username=" + NAME + "&password=" + PASSWORD.replace(' ', '+')))
                .build();
        HttpResponse<String> answer = stranger.send(forged, BodyHandlers.ofString());
        String session =
                answer.headers().firstValue("Set-Cookie").orElse("none=").replaceFirst(";.*", "");
        HttpRequest home = HttpRequest.newBuilder(URI.create(address("set-up")))
                .header("Cookie", session)
                .GET()
                .build();
        assertThat(stranger.send(home, BodyHandlers.ofString())
                        .headers()
                        .firstValue("Location")
                        .orElse(""))
                .contains("sign-in");
    }

    @Test
    @Order(8)
    void an_address_that_leads_nowhere_says_so() {
        go("no/such/page");
        page.getByText("There is nothing here").first().waitFor();
        shoot("nothing-here");
    }

    @Test
    @Order(9)
    void the_owner_adds_a_maker_who_sees_the_bench_but_neither_money_nor_set_up() {
        go("set-up");
        page.locator(".workshop-ways").getByText("People").click();
        page.waitForURL("**/set-up/people");
        settle();
        Locator form = page.locator(".access-new-person");
        form.getByLabel("Your name").fill("Kim");
        form.locator("input[type=password]").fill("short");
        button("Add").last().click();
        page.getByText("The password is too short").first().waitFor();
        assertThat(form.getByLabel("Your name").inputValue()).isEqualTo("Kim");
        form.locator("input[type=password]").fill("plywood and a hammer");
        button("Add").last().click();
        page.locator(".access-people").getByText("Kim").waitFor();
        page.locator(".access-people").scrollIntoViewIfNeeded();
        shoot("set-up-people");
        go("set-up");
        assertThat(page.locator(".workshop-ways a[aria-current]").textContent()).isEqualTo("The workshop");
        shoot("set-up");
    }

    @Test
    @Order(10)
    void a_backup_is_one_file_and_is_read_back_on_another_computer() throws Exception {
        go("set-up/backup");
        Download download =
                page.waitForDownload(() -> page.getByText("Make a backup").click());
        Path file = Path.of("target", "walks", "backup.zip");
        download.saveAs(file);
        assertThat(download.suggestedFilename()).matches("puzzle-workshop-\\d{4}-\\d\\d-\\d\\d-\\d{4}\\.zip");

        restartOnEmptyFolder();
        go("");
        page.getByText("Restore a backup").click();
        settle();
        page.locator("vaadin-upload input[type=file]")
                .setInputFiles(new FilePayload(
                        "holiday.zip", "application/zip", "no zip at all".getBytes(StandardCharsets.UTF_8)));
        page.getByText("This file is no backup").first().waitFor();
        shoot("restore-refused");
        page.locator("vaadin-upload input[type=file]").setInputFiles(file);
        page.waitForURL("**/sign-in?restored");
        page.waitForSelector("vaadin-login-form");
        settle();
        enter("Kim", "plywood and a hammer");
        page.waitForURL(url -> !url.contains("sign-in"));
        go("set-up");
        page.getByText("There is nothing here").first().waitFor();
    }

    @Test
    @Order(11)
    void guessing_is_slowed_down_and_the_wait_is_said() {
        page.context().clearCookies();
        go("sign-in");
        shoot("sign-in");
        // On a slow machine the first short waits may be over before the next try; they double.
        for (int i = 0; i < 12 && !page.url().contains("wait="); i++) {
            go("sign-in");
            enter(NAME, "a wrong guess " + i);
            page.waitForURL(url -> url.contains("?error") || url.contains("?wait"));
        }
        assertThat(page.url()).contains("wait=");
        page.getByText("Try again in").first().waitFor();
        shoot("sign-in-wait");
    }

    @Test
    @Order(12)
    void everything_is_still_there_after_a_restart() {
        restartProgram();
        page.context().clearCookies();
        go("sign-in");
        signIn();
        assertThat(page.url()).doesNotContain("sign-in");
    }

    private HttpResponse<String> ask(String path) throws IOException, InterruptedException {
        return stranger.send(
                HttpRequest.newBuilder(URI.create(address(path))).GET().build(), BodyHandlers.ofString());
    }

    private static List<Class<?>> routes() {
        ClassPathScanningCandidateComponentProvider scan = new ClassPathScanningCandidateComponentProvider(false);
        scan.addIncludeFilter(new AnnotationTypeFilter(Route.class));
        List<Class<?>> found = new java.util.ArrayList<>();
        scan.findCandidateComponents("puzzleworkshop")
                .forEach(view -> found.add(ClassUtils.resolveClassName(view.getBeanClassName(), null)));
        return found;
    }
}
