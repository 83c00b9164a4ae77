package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Stage;

/** The main job by hand: from a customer's picture to a priced, dated, confirmed order, through the bench, to the customer. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class MainJobWalk extends Walk {

    private static final Path FILES = Path.of("target", "walks", "files");

    private String number;

    @Test
    @Order(1)
    void a_newcomer_opens_the_demo_workshop_and_sees_the_week() {
        openWorkshop(true);
        go("");
        page.getByText("Beatrix Vane").first().waitFor();
        shoot("this-week");
        go("orders");
        page.getByText("Museum of Small Trains").waitFor();
        waitForFaces();
        shoot("orders");
    }

    @Test
    @Order(2)
    void files_that_are_no_pictures_are_refused_in_a_sentence_and_nothing_typed_is_lost() throws IOException {
        go("orders/new");
        page.locator("#customer input").fill("Grete Holm");
        page.keyboard().press("Enter");
        page.getByLabel("E-mail or telephone").fill("grete@holm.example");
        refused("letter.jpg", "Dear workshop, here is my picture.".getBytes(StandardCharsets.UTF_8));
        refused("nothing.jpg", new byte[0]);
        byte[] whole = SamplePictures.encode(SamplePictures.leaves(800, 600, 7), "jpeg");
        refused("torn.jpg", Arrays.copyOf(whole, whole.length / 3));
        refused("bomb.png", pngHeader(30_000, 30_000));
        refused("heavy.jpg", new byte[60 * 1024 * 1024]);
        assertThat(page.locator("#customer input").inputValue()).isEqualTo("Grete Holm");
        assertThat(page.getByLabel("E-mail or telephone").inputValue()).isEqualTo("grete@holm.example");
    }

    @Test
    @Order(3)
    void a_picture_from_a_camera_is_shown_with_cut_lines_verdicts_sheet_price_and_day() throws IOException {
        Path photo = file("from-the-camera.jpg", onItsSide("Oskar Lund"));
        page.setInputFiles("vaadin-upload input[type=file]", photo);
        page.getByText("pixels per inch").first().waitFor();
        settle();
        // 2700 pixels of the upright picture's width on 300 mm: 2700 / (300 / 25.4) = 228.6 pixels per inch
        page.getByText("229 pixels per inch").waitFor();
        page.getByText("small-parts cylinder").first().waitFor();
        assertThat(page.locator(".neworder-board svg").count()).isPositive();
        assertThat(page.locator("#price").textContent()).matches("\\D*\\d+\\.\\d\\d");
        assertThat(page.locator("#ready").textContent()).matches("\\w{3} \\d+ \\w{3}");
        shoot("new-order");
    }

    @Test
    @Order(4)
    void impossible_numbers_are_refused_beside_their_field() {
        Locator width = page.locator("#width input");
        width.fill("-5");
        page.getByText("Type a number above zero").first().waitFor();
        width.fill("900");
        page.getByText("larger than the bed").waitFor();
        width.fill("300");
        page.locator("#pieces input").fill("1");
        page.keyboard().press("Enter");
        page.getByText("from 2 to").or(page.getByText("2 to 2")).first().waitFor();
        page.locator("#pieces input").fill("48");
        page.keyboard().press("Enter");
        page.getByText("48 pieces, 8 × 6").waitFor();
        page.getByLabel("Wanted by").fill("01/01/2020");
        page.keyboard().press("Enter");
        page.getByText("has already passed").waitFor();
        String later = LocalDate.now().plusDays(30).format(DateTimeFormatter.ofPattern("dd/MM/yyyy"));
        page.getByLabel("Wanted by").fill(later);
        page.keyboard().press("Enter");
        page.getByText("has already passed")
                .waitFor(new Locator.WaitForOptions().setState(WaitForSelectorState.HIDDEN));
        settle();
        assertThat(page.locator("#customer input").inputValue()).isEqualTo("Grete Holm");
    }

    @Test
    @Order(5)
    void the_quote_is_kept_and_confirmed_and_its_board_is_held() {
        page.locator("#save-quote").click();
        page.waitForURL("**/orders/2*");
        number = page.url().replaceAll(".*/", "");
        settle();
        button("Confirm").first().click();
        page.getByText("Confirmed for").first().waitFor();
        settle();
        page.getByText("Held for this order")
                .or(page.getByText("To be bought"))
                .first()
                .waitFor();
        // no offcut in the demo's rack may be large enough: then the board is bought, and comes
        if (button("It has come").isVisible()) {
            button("It has come").first().click();
        }
        page.getByText("Held for this order").first().waitFor();
        button("Approved at the counter").click();
        page.getByText("Picture approved").first().waitFor();
        waitForFaces();
        shoot("order");
    }

    @Test
    @Order(6)
    void the_job_ticket_names_the_order_its_sheet_and_its_cautions_and_its_code_opens_the_order()
            throws IOException, Exception {
        APIResponse answer = page.request().get(address("papers/" + number + "/ticket.pdf"));
        assertThat(answer.status()).isEqualTo(200);
        try (PDDocument ticket = Loader.loadPDF(answer.body())) {
            String text = new PDFTextStripper().getText(ticket);
            assertThat(text)
                    .contains(number)
                    .contains("Grete Holm")
                    .contains("300 × 200 mm")
                    .contains("Caution");
            BufferedImage page1 = new PDFRenderer(ticket).renderImageWithDPI(0, 150);
            ImageIO.write(
                    page1, "png", Path.of("target", "screens", "job-ticket.png").toFile());
            BufferedImage corner =
                    page1.getSubimage(page1.getWidth() * 2 / 3, 0, page1.getWidth() / 3, page1.getHeight() / 5);
            String read = new QRCodeReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(corner))))
                    .getText();
            assertThat(read).isEqualTo(address("orders/" + number));
        }
    }

    @Test
    @Order(7)
    void it_is_ticked_through_its_stages_to_the_laser() {
        BenchSteps bench = new BenchSteps(this, number);
        for (Stage stage : Stage.values()) {
            if (stage == Stage.CUT) {
                break;
            }
            bench.open(stage);
            if (stage == Stage.STICK) {
                shoot("bench");
            }
            bench.tick(stage);
        }
        go("orders/" + number);
        page.getByText("Cut next").first().waitFor();
    }

    @Test
    @Order(8)
    void the_cut_begins_only_when_its_checklist_is_answered_and_ends_with_its_record() {
        BenchSteps bench = new BenchSteps(this, number);
        bench.prepareTheCut();
        shoot("bench-cut");
        bench.cutThrough();
        assertThat(bench.order().next()).contains(Stage.FINISH);
    }

    @Test
    @Order(9)
    void it_is_finished_packed_handed_over_and_paid_and_then_closed() {
        BenchSteps bench = new BenchSteps(this, number);
        for (Stage stage : List.of(Stage.FINISH, Stage.PACK, Stage.HAND_OVER)) {
            bench.open(stage);
            bench.tick(stage);
        }
        assertThat(bench.order().state()).isEqualTo(OrderState.HANDED_OVER);
        bench.paid();
        go("orders/" + number);
        page.getByText("Closed").first().waitFor();
        waitForFaces();
        shoot("order-closed");
    }

    @Test
    @Order(10)
    void everything_is_still_there_after_a_restart() {
        restartProgram();
        page.context().clearCookies();
        go("sign-in");
        signIn();
        go("orders/" + number);
        page.getByText("Grete Holm").first().waitFor();
        assertThat(bean(Orders.class).findByNumber(number).orElseThrow().state())
                .isEqualTo(OrderState.CLOSED);
    }

    private void refused(String name, byte[] content) throws IOException {
        page.setInputFiles("vaadin-upload input[type=file]", file(name, content));
        Locator sentence =
                page.locator(".neworder-picture .pw-note[data-kind=bad]").first();
        sentence.waitFor();
        assertThat(sentence.textContent())
                .as("what is said of %s", name)
                .hasSizeGreaterThan(30)
                .doesNotContain("Exception");
        settle();
    }

    private void waitForFaces() {
        page.waitForFunction("() => [...document.querySelectorAll('.pw-face img')].every(image => image.complete &&"
                + " image.naturalWidth > 0)");
    }

    private static Path file(String name, byte[] content) throws IOException {
        Files.createDirectories(FILES);
        return Files.write(FILES.resolve(name), content);
    }

    /**
     * A demo customer's picture as a camera held upright writes it: the pixels lie on their side, and EXIF orientation 6
     * says that they are to be turned clockwise (CIPA DC-008).
     */
    private byte[] onItsSide(String customer) throws IOException {
        puzzleworkshop.orders.Order order = bean(Orders.class)
                .list(new OrderFilter(customer, Set.of(), Optional.empty()), 0, 1)
                .getFirst();
        BufferedImage upright;
        try (InputStream original =
                bean(Pictures.class).original(order.picture().orElseThrow().picture())) {
            upright = ImageIO.read(original);
        }
        BufferedImage side = new BufferedImage(upright.getHeight(), upright.getWidth(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < side.getHeight(); y++) {
            for (int x = 0; x < side.getWidth(); x++) {
                side.setRGB(x, y, upright.getRGB(upright.getWidth() - 1 - y, x));
            }
        }
        return SamplePictures.withOrientation(SamplePictures.encode(side, "jpeg"), 6);
    }

    /** A PNG that says it is huge and holds nothing. */
    private static byte[] pngHeader(int width, int height) {
        java.nio.ByteBuffer png = java.nio.ByteBuffer.allocate(33);
        png.put(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10}).putInt(13);
        byte[] header = java.nio.ByteBuffer.allocate(17)
                .put("IHDR".getBytes(StandardCharsets.US_ASCII))
                .putInt(width)
                .putInt(height)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();
        CRC32 check = new CRC32();
        check.update(header);
        return png.put(header).putInt((int) check.getValue()).array();
    }
}
