package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.workshop.Stage;

/** A workshop that starts empty, on a phone: from nothing to the first order paid and closed, with what the program proposes. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class PhoneFromNothingWalk extends Walk {

    private String number;

    @Override
    Look usual() {
        return Look.PHONE;
    }

    @Test
    @Order(1)
    void an_empty_workshop_says_what_comes_first() {
        openWorkshop(false);
        go("");
        assertThat(page.locator(".pw-first li").count()).isEqualTo(5);
        shoot("first-things");
        page.locator(".pw-first li[data-next] a").click();
        page.waitForURL("**/machines");
    }

    @Test
    @Order(2)
    void the_laser_is_written_down_with_the_values_of_a_common_one() {
        button("Write down the laser").click();
        button("Save machine").click();
        page.getByText("cuts up to").first().waitFor();
        go("");
        page.locator(".pw-first li[data-next]")
                .getByText("Enter the pile of boards")
                .waitFor();
        page.locator(".pw-first li[data-next] a").click();
        page.waitForURL("**/sheets/enter");
        settle();
    }

    @Test
    @Order(3)
    void three_pieces_of_board_take_two_numbers_each() {
        piece("390", "310");
        piece("380", "290");
        piece("400", "395");
        go("sheets");
        assertThat(page.locator(".pw-page").textContent()).contains("390 × 310 mm", "380 × 290 mm", "400 × 395 mm");
    }

    @Test
    @Order(4)
    void the_sticker_paper_is_put_on_the_shelf_with_what_its_data_sheet_says() {
        go("");
        page.locator(".pw-first li[data-next] a").click();
        page.waitForURL("**/supplies");
        settle();
        button("New supply").click();
        Locator dialog = page.locator("vaadin-dialog");
        dialog.locator("vaadin-text-field input").first().fill("Matt sticker paper, A4");
        choose(dialog, "PVC (vinyl)", "Free of PVC");
        button("Save").last().click();
        page.getByText("Say as what it is bought").first().waitFor();
        shoot("first-supply");
        assertThat(dialog.locator("vaadin-text-field input").first().inputValue())
                .isEqualTo("Matt sticker paper, A4");
        dialog.locator("vaadin-text-field")
                .filter(new Locator.FilterOptions().setHasText("Bought as"))
                .locator("input")
                .fill("pack");
        // typed as much of the world writes it: never taken for 1250
        Locator contents = dialog.locator("vaadin-big-decimal-field").first();
        String before = contents.locator("input").inputValue();
        contents.locator("input").fill("");
        contents.locator("input").pressSequentially("12,50");
        page.keyboard().press("Tab");
        contents.getByText("This cannot be read as a number").waitFor();
        assertThat(contents.locator("input").inputValue()).isEqualTo("12,50");
        contents.locator("input").fill(before);
        page.keyboard().press("Tab");
        button("Save").last().click();
        page.getByText("Matt sticker paper, A4").first().waitFor();
    }

    @Test
    @Order(5)
    void the_first_order_is_priced_dated_and_confirmed() throws IOException {
        go("orders/new");
        Path photo = Path.of("target", "walks", "files", "meadow.jpg");
        Files.createDirectories(photo.getParent());
        Files.write(photo, SamplePictures.encode(SamplePictures.leaves(3600, 2400, 11), "jpeg"));
        page.setInputFiles("#picture-upload input[type=file]", photo);
        page.getByText("pixels per inch").first().waitFor();
        page.locator("#customer input").fill("Ida Brandt");
        page.keyboard().press("Enter");
        page.waitForCondition(() -> page.locator("#price").textContent().matches("\\D*\\d+\\.\\d\\d"));
        page.waitForCondition(() -> page.locator("#ready").textContent().matches("\\w{3} \\d+ \\w{3}"));
        shoot("first-order");
        page.locator("#confirm-order").click();
        page.waitForURL("**/orders/2*");
        number = page.url().replaceAll(".*/", "");
        settle();
        page.getByText("Confirmed for").first().waitFor();
        shoot("first-order-confirmed");
    }

    @Test
    @Order(6)
    void it_goes_through_the_bench_to_the_customer_and_is_paid_and_closed() {
        button("Approved at the counter").click();
        page.getByText("Picture approved").first().waitFor();
        BenchSteps bench = new BenchSteps(this, number);
        for (Stage stage : Stage.values()) {
            if (stage == Stage.CUT) {
                bench.prepareTheCut();
                shoot("first-cut");
                bench.cutThrough();
            } else {
                bench.open(stage);
                bench.tick(stage);
            }
        }
        bench.paid();
        go("");
        page.getByText("No orders are open")
                .or(page.getByText("Still to set up"))
                .first()
                .waitFor();
    }

    private void choose(Locator within, String label, String value) {
        within.locator("vaadin-select")
                .filter(new Locator.FilterOptions().setHasText(label))
                .click();
        page.locator("vaadin-select-item")
                .filter(new Locator.FilterOptions().setHasText(value))
                .last()
                .click();
        settle();
    }

    /** By the keys alone: the field for the width has the focus, and has it again when the piece is taken in. */
    private void piece(String width, String height) {
        page.waitForFunction("() => document.activeElement && document.activeElement.matches('.sheets-numbers input')");
        page.keyboard().type(width);
        page.keyboard().press("Enter");
        settle();
        page.keyboard().type(height);
        page.keyboard().press("Enter");
        settle();
    }
}
