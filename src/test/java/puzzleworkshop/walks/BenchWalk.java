package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ViewportSize;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/** A maker's afternoon with a phone on the bench, in the demo workshop's overloaded week. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class BenchWalk extends Walk {

    private static final String DORA = "Dora Quill";
    private static final String TOMASZ = "Tomasz Wilk";
    private static final String MARLOW = "Marlow String Quartet";

    @Test
    @Order(1)
    void the_week_says_that_the_laser_is_short_whom_to_warn_and_which_evening_helps() {
        openWorkshop(true);
        go("");
        page.getByText("Not everything can be on time").waitFor();
        page.getByText("Or work longer").waitFor();
        assertThat(page.locator(".planning-relief").innerText())
                .contains("Laser:")
                .contains("short")
                .contains("in this sequence");
        shoot("overloaded-week");
        assertThat(bean(WeekPlan.class).now().plan().late()).isPositive();
        page.locator(".planning-relief li", new Page.LocatorOptions().setHasText(MARLOW))
                .getByText("Tell")
                .click();
        Locator told = button("The customer knows: promise");
        told.waitFor();
        assertThat(page.locator("a.planning-link[href^='mailto:']").getAttribute("href"))
                .startsWith("mailto:marlow@quartet.example?subject=Your%20puzzle");
        told.click();
        // What was told is kept: the plan that is made with the new day does not put the order off again.
        page.waitForCondition(() -> {
            WeekPlan plan = bean(WeekPlan.class);
            WeekPlan.Entry entry = plan.now().of(order(MARLOW).id()).orElseThrow();
            return plan.reaches(entry)
                    .filter(day -> !day.isAfter(entry.order().promised().orElseThrow()))
                    .isPresent();
        });
        go("orders/" + order(MARLOW).number());
        page.getByText("The customer was told").first().waitFor();
    }

    @Test
    @Order(2)
    void a_card_is_dragged_to_another_day_and_stays_there() {
        go("");
        Locator card = page.locator(".planning-card", new Page.LocatorOptions().setHasText(TOMASZ));
        card.waitFor();
        settle();
        LocalDate day = bean(WorkingTimes.class)
                        .calendar()
                        .isWorkingDay(bean(WeekPlan.class).today())
                ? workingDay(2)
                : workingDay(3);
        Locator column = page.locator(".planning-column").nth(2);
        // Both in sight: were the page moved between taking hold and pulling, the card that came to lie there would be
        // pulled.
        ViewportSize usual = page.viewportSize();
        page.setViewportSize(usual.width, 3000);
        // By its picture, as people take hold of it.
        card.dragTo(
                column, new Locator.DragToOptions().setSourcePosition(30, 30).setTargetPosition(60, 40));
        page.waitForCondition(() -> bean(WeekPlan.class)
                .now()
                .of(order(TOMASZ).id())
                .orElseThrow()
                .pinned()
                .isPresent());
        page.locator(".planning-card", new Page.LocatorOptions().setHasText(TOMASZ))
                .getByText("pinned")
                .waitFor();
        assertThat(bean(WeekPlan.class)
                        .now()
                        .of(order(TOMASZ).id())
                        .orElseThrow()
                        .outlook()
                        .mainDay())
                .contains(day);
        page.setViewportSize(usual.width, usual.height);
    }

    @Test
    @Order(3)
    void on_a_phone_several_orders_are_ticked_together_and_one_is_taken_back() {
        page.setViewportSize(360, 760);
        go("bench/mask");
        page.locator(".bench-queue").getByText(DORA).waitFor();
        Locator chosen = page.locator(".bench-stage[aria-current]");
        assertThat(chosen.boundingBox().x).as("the chosen stage is in view").isBetween(0.0, 300.0);
        for (Locator box : page.locator(".bench-card vaadin-checkbox").all()) {
            box.click();
        }
        page.getByText("tick 2 together").click();
        page.waitForCondition(
                () -> next(DORA).equals(Optional.of(Stage.CUT)) && next(MARLOW).equals(Optional.of(Stage.CUT)));
        settle();
        page.locator(
                        ".bench-undo > div",
                        new Page.LocatorOptions().setHasText(order(DORA).number()))
                .getByText("Take back")
                .click();
        page.waitForCondition(() -> next(DORA).equals(Optional.of(Stage.MASK)));
        assertThat(next(MARLOW)).contains(Stage.CUT);
        assertThat(((Number) page.evaluate("document.documentElement.scrollWidth")).intValue())
                .isLessThanOrEqualTo(360);
    }

    @Test
    @Order(4)
    void a_photo_is_taken_with_the_camera_on_the_back_and_a_clock_outlives_the_browser() throws IOException {
        go("bench/mask");
        page.locator(".bench-work").getByText(DORA).waitFor();
        Locator camera = page.locator(".bench-photo input[type=file]");
        assertThat(camera.getAttribute("capture")).isEqualTo("environment");
        camera.setInputFiles(file("bench.jpg", SamplePictures.encode(SamplePictures.leaves(800, 600, 3), "jpeg")));
        page.locator(".bench-photos img").first().waitFor();
        assertThat(bean(Bench.class).photos(order(DORA).id())).hasSize(1);
        button("Start the clock").click();
        page.locator("[data-bench-since]").waitFor();
        Browser browser = page.context().browser();
        page.navigate("about:blank");
        assertThat(bean(Bench.class).running(order(DORA).id())).isPresent();
        try (BrowserContext tablet =
                browser.newContext(new Browser.NewContextOptions().setStorageStatePath(signedIn()))) {
            Page other = tablet.newPage();
            other.navigate(address("bench/mask"));
            other.locator("[data-bench-since]").waitFor();
            assertThat(other.locator("[data-bench-since]").innerText()).matches("00:00:\\d\\d");
            other.getByText("Stop the clock").click();
            other.getByText("Start the clock").waitFor();
        }
        assertThat(bean(Bench.class).running(order(DORA).id())).isEmpty();
    }

    @Test
    @Order(5)
    void what_went_wrong_is_made_again_from_the_print_its_loss_is_booked_and_words_for_the_customer_lie_ready() {
        go("bench/mask");
        button("Something went wrong").click();
        page.getByText("Book the loss and make it again").waitFor();
        settle();
        // it begins with what usually happens at this stage; a fault of the print goes back further
        page.locator("vaadin-dialog vaadin-select").first().click();
        page.locator("vaadin-select-item", new Page.LocatorOptions().setHasText("Print has a fault"))
                .last()
                .click();
        settle();
        page.getByText("Book the loss and make it again").click();
        page.waitForCondition(() -> next(DORA).equals(Optional.of(Stage.PRINT)));
        Rework mishap = bean(Bench.class).mishaps(order(DORA).id()).getFirst();
        assertThat(mishap.noticedAt()).isEqualTo(Stage.MASK);
        assertThat(mishap.materialLost().isNegative()).isFalse();
        go("orders/" + order(DORA).number());
        page.getByText("Again from Print").first().waitFor();
        shoot("went-wrong");
    }

    @Test
    @Order(6)
    void a_tick_on_one_screen_is_seen_on_the_other_without_reload() {
        go("bench/pack");
        page.locator(".bench-queue").getByText("Beatrix Vane").waitFor();
        Page other = page.context().newPage();
        other.setViewportSize(360, 760);
        other.navigate(address("bench/pack"));
        other.locator(".bench-queue").getByText("Beatrix Vane").waitFor();
        settle(other);
        page.locator(".bench-buttons .bench-big[theme~=primary]").click();
        page.waitForCondition(() -> next("Beatrix Vane").equals(Optional.of(Stage.HAND_OVER)));
        other.locator(".bench-queue")
                .getByText("Beatrix Vane")
                .waitFor(new Locator.WaitForOptions().setState(WaitForSelectorState.HIDDEN));
        other.getByText("Nothing waits").waitFor();
        other.close();
        assertThat(complaints()).isEmpty();
    }

    @Test
    @Order(7)
    void a_cut_puzzle_that_is_made_again_from_the_print_gets_another_board() {
        go("bench/hand_over");
        page.locator(".bench-queue").getByText("Beatrix Vane").click();
        page.locator(".bench-work").getByText("Beatrix Vane").waitFor();
        button("Something went wrong").click();
        page.getByText("Book the loss and make it again").waitFor();
        settle();
        page.getByText("Book the loss and make it again").click();
        page.waitForCondition(() -> next("Beatrix Vane").equals(Optional.of(Stage.PRINT)));
        OrderId id = order("Beatrix Vane").id();
        page.waitForCondition(() -> bean(WeekPlan.class)
                .now()
                .of(id)
                .orElseThrow()
                .outlook()
                .waitsFor()
                .filter(wait -> wait.forWhat() == Wait.For.BOARD)
                .isPresent());
        go("orders/" + order("Beatrix Vane").number());
        page.getByText("to make it again, choose another sheet").waitFor();
        button("Use another sheet").click();
        Locator sheets = page.locator("vaadin-combo-box", new Page.LocatorOptions().setHasText("Use another sheet"));
        sheets.locator("input").click();
        page.locator("vaadin-combo-box-item").first().click();
        page.getByText("Held for this order").waitFor();
        assertThat(bean(SheetRack.class).heldFor(id)).hasSize(1);
        page.waitForCondition(() -> bean(WeekPlan.class)
                .now()
                .of(id)
                .orElseThrow()
                .outlook()
                .waitsFor()
                .isEmpty());
    }

    private Path signedIn() throws IOException {
        Path kept = Files.createTempFile(Files.createDirectories(Path.of("target", "walks")), "signed-in", ".json");
        page.context().storageState(new BrowserContext.StorageStateOptions().setPath(kept));
        return kept;
    }

    private static Path file(String name, byte[] content) throws IOException {
        return Files.write(
                Files.createDirectories(Path.of("target", "walks", "files")).resolve(name), content);
    }

    private puzzleworkshop.orders.Order order(String customer) {
        return bean(Orders.class)
                .list(new OrderFilter(customer, Set.of(), Optional.empty()), 0, 1)
                .getFirst();
    }

    private Optional<Stage> next(String customer) {
        return order(customer).next();
    }

    /** So many working days from today, today not counted. */
    private LocalDate workingDay(int ahead) {
        LocalDate day = bean(WeekPlan.class).today();
        for (int left = ahead; left > 0; ) {
            day = day.plusDays(1);
            left -= bean(WorkingTimes.class).calendar().isWorkingDay(day) ? 1 : 0;
        }
        return day;
    }
}
