package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.util.Locale;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Stage;

/** The steps of the bench and of the till that several walks take. */
final class BenchSteps {

    private final Walk walk;
    private final String number;

    BenchSteps(Walk walk, String number) {
        this.walk = walk;
        this.number = number;
    }

    Order order() {
        return walk.bean(Orders.class).findByNumber(number).orElseThrow();
    }

    void open(Stage stage) {
        walk.go("bench/" + stage.name().toLowerCase(Locale.ROOT) + "?order=" + number);
        walk.page.locator(".bench-work").getByText(number).first().waitFor();
    }

    /** Ticks the stage that is open and waits until the order stands at a later one. */
    void tick(Stage stage) {
        walk.page.locator(".bench-buttons .bench-big[theme~=primary]").first().click();
        walk.settle();
        // The walk has no time to let things rest.
        Locator allTheSame = walk.page
                .locator("vaadin-button")
                .getByText("Done all the same", new Locator.GetByTextOptions().setExact(true));
        if (allTheSame.count() > 0) {
            // Enter keeps what there is, and the eye is told so: the risky answer neither holds the focus nor looks
            // like it.
            walk.page.waitForFunction("""
                () => document.activeElement?.slot === 'cancel-button'
                    && !document.querySelector('[slot="confirm-button"][focus-ring]')\
                """);
            allTheSame.click();
        }
        walk.page.waitForCondition(
                () -> order().next().map(next -> next.compareTo(stage) > 0).orElse(true));
    }

    /** Answers the whole checklist; the beam is not switched on yet. */
    void prepareTheCut() {
        open(Stage.CUT);
        assertThat(walk.button("Cut: done").and(walk.page.locator(":visible")).count())
                .as("ways past the cut's record")
                .isZero();
        walk.button("Prepare the cut").click();
        Locator checks = walk.page.locator(".cutting-checks vaadin-checkbox");
        checks.first().waitFor();
        assertThat(walk.button("Start the cut").isEnabled())
                .as("start before the checklist")
                .isFalse();
        for (int i = 0; i < checks.count(); i++) {
            checks.nth(i).locator("label").click();
            walk.settle();
        }
        walk.page.getByText("All answered.").waitFor();
    }

    void cutThrough() {
        walk.button("Start the cut").click();
        walk.page.getByText("The beam is on.").waitFor();
        walk.page
                .locator("vaadin-radio-button")
                .filter(new Locator.FilterOptions().setHasText("through"))
                .first()
                .click();
        walk.page
                .locator("vaadin-radio-group")
                .nth(1)
                .locator("vaadin-radio-button")
                .nth(1)
                .click();
        walk.button("Record the cut").click();
        walk.settle();
        // nobody waits out a whole cut on a walk, so the program asks whether it was cut
        if (walk.button("It was cut").isVisible()) {
            walk.button("It was cut").click();
            walk.settle();
        }
        tick(Stage.CUT);
    }

    void paid() {
        walk.go("orders/" + number);
        walk.button("Money received").click();
        walk.page.locator("vaadin-dialog vaadin-button[theme~=primary]").first().click();
        walk.page.waitForCondition(() -> order().state() == OrderState.CLOSED);
    }
}
