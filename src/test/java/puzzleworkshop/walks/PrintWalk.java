package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.GpsDirectory;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.extension.TestWatcher;
import puzzleworkshop.artwork.CameraPicture;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.DeliveryTerms;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.ReadPaper;

/** A photo's way from the customer's phone to paper: link, picture, crop by fingers, approval, run, PDF, spoiled print. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class PrintWalk extends Walk {

    private static final Path PHOTO = Path.of("target", "walks", "files", "phone.jpg");
    private static final int LONGER = 4032;
    private static final Size FINISHED = Size.mm(210, 280);

    private puzzleworkshop.orders.Order order;
    private String link;
    private BrowserContext phone;
    private Page customer;

    /** What the customer saw when a step failed. */
    @RegisterExtension
    final TestWatcher onThePhone = new TestWatcher() {
        @Override
        public void testFailed(ExtensionContext step, Throwable cause) {
            if (customer != null && !customer.isClosed()) {
                phoneShot("failed-phone-" + step.getRequiredTestMethod().getName());
            }
        }
    };

    @Test
    @Order(1)
    void the_maker_makes_a_link_that_is_shown_once() {
        openWorkshop(false);
        order = orderWithoutPicture();
        go("orders/" + order.number());
        button("Make a link").click();
        Locator address = page.locator(
                        "vaadin-dialog vaadin-text-field input, vaadin-dialog-overlay vaadin-text-field input")
                .first();
        address.waitFor();
        page.waitForFunction(
                "() => [...document.querySelectorAll('vaadin-text-field')].some(f => f.value.includes('/p/'))");
        link = (String) page.evaluate(
                "() => [...document.querySelectorAll('vaadin-text-field')].find(f => f.value.includes('/p/')).value");
        assertThat(link).contains("/p/");
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target", "screens", "print-link.png")));
    }

    @Test
    @Order(2)
    void the_customer_sends_a_photo_from_a_phone_without_an_account() throws Exception {
        Files.createDirectories(PHOTO.getParent());
        Files.write(PHOTO, CameraPicture.jpeg(LONGER, 7));
        assertThat(ImageMetadataReader.readMetadata(PHOTO.toFile())
                        .getFirstDirectoryOfType(GpsDirectory.class)
                        .getGeoLocation()
                        .getLatitude())
                .isGreaterThan(CameraPicture.LATITUDE);
        phone = page.context()
                .browser()
                .newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                        .setViewportSize(360, 760)
                        .setHasTouch(true)
                        .setIsMobile(true)
                        .setLocale("en-GB"));
        phone.setDefaultTimeout(12_000);
        customer = phone.newPage();
        customer.navigate(link);
        settle(customer);
        customer.getByText("Your picture, please").waitFor();
        customer.setInputFiles("vaadin-upload input[type=file]", PHOTO);
        // 3024 × 4032 pixels of the upright picture at 300 to the inch: 3024 / 300 × 25.4 = 256.0 mm, 4032 / 300 × 25.4
        // = 341.4 mm
        customer.getByText("sharp up to 256 × 341 mm").waitFor();
        settle(customer);
        assertNothingSticksOut();
        phoneShot("print-customer");
    }

    @Test
    @Order(3)
    void the_frame_follows_a_finger_and_is_pinched_by_two() {
        customer.getByText("Move or crop the picture").click();
        settle(customer);
        Locator frame = customer.locator(".artwork-crop-frame");
        frame.scrollIntoViewIfNeeded();
        var whole = frame.boundingBox();
        double x = whole.x + whole.width / 2;
        double y = whole.y + whole.height / 2;
        CDPSession fingers = phone.newCDPSession(customer);
        // Fingers move apart on the glass, from 120 to 200 pixels: a closer look, so the frame shrinks to 0.6 of what
        // it was.
        touch(fingers, "touchStart", x, y - 60, x, y + 60);
        for (int step = 1; step <= 10; step++) {
            touch(fingers, "touchMove", x, y - 60 - 4 * step, x, y + 60 + 4 * step);
        }
        touch(fingers, "touchEnd");
        customer.getByText(Pattern.compile("sharp up to 15[34] × 20[45] mm")).waitFor();
        settle(customer);
        var pinched = frame.boundingBox();
        assertThat(pinched.width).as("pinched from %s", whole.width).isBetween(whole.width * 0.55, whole.width * 0.65);
        assertThat(pinched.width / pinched.height).isBetween(0.74, 0.76);
        Locator drawing = customer.locator("svg.artwork-crop-drawing");
        double before = pinched.y - drawing.boundingBox().y;
        double fromX = pinched.x + pinched.width / 2;
        double fromY = pinched.y + pinched.height / 2;
        touch(fingers, "touchStart", fromX, fromY);
        for (int step = 1; step <= 5; step++) {
            touch(fingers, "touchMove", fromX, fromY - 6 * step);
            customer.waitForTimeout(40);
        }
        touch(fingers, "touchEnd");
        settle(customer);
        assertThat(frame.boundingBox().y - drawing.boundingBox().y)
                .as("dragged up from %s", before)
                .isBetween(before - 36, before - 24);
        phoneShot("print-crop");
        customer.getByText("Leave it as it was").click();
        settle(customer);
    }

    @Test
    @Order(4)
    void approval_needs_the_right_to_use_the_picture_and_a_change_asks_anew() {
        customer.getByLabel("Your name").fill("Ξένια Ψαρού");
        customer.locator("vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Approve"))
                .click();
        customer.getByText("Tick that you may use the picture").waitFor();
        approve();
        assertThat(now().approval()).isPresent();
        customer.getByText("Move or crop the picture").click();
        customer.locator("svg.artwork-crop-drawing").focus();
        customer.keyboard().press("+");
        customer.keyboard().press("ArrowDown");
        settle(customer);
        customer.getByText("Use this crop").click();
        customer.getByText("Is it right?").waitFor();
        assertThat(now().approval()).isEmpty();
        customer.getByText("Move or crop the picture").click();
        settle(customer);
        customer.getByText("Leave it as it was").click();
        approve();
        assertThat(now().approval())
                .hasValueSatisfying(approval -> assertThat(approval.by()).isEqualTo("Ξένια Ψαρού"));
        assertNothingSticksOut();
        phone.close();
    }

    @Test
    @Order(5)
    void the_run_is_planned_and_its_pdf_holds_the_photo_as_it_was_sent() throws Exception {
        go("print-runs");
        page.locator("vaadin-select").first().click();
        page.getByText("A4", new Page.GetByTextOptions().setExact(true)).last().click();
        page.getByText("too large for A4").waitFor();
        page.getByText("fits on").first().waitFor();
        shoot("print-too-large");
        page.locator("vaadin-select").first().click();
        page.getByText("13 × 19 in").last().click();
        button("Propose a run").click();
        page.getByText("cannot be fewer").waitFor();
        settle();
        shoot("print-run");
        button("Confirm").click();
        settle();
        button("PDF for the printer").click();
        Locator save = page.getByText("Save the PDF");
        save.waitFor();
        byte[] pdf = page.request().get(address(save.getAttribute("href"))).body();
        Files.write(Path.of("target", "walks", "files", "run.pdf"), pdf);
        assertThat(ReadPaper.text(pdf)).contains(order.number());
        assertThat(new String(pdf, StandardCharsets.ISO_8859_1)).doesNotContain("Exif", CameraPicture.MAKE);
        try (PDDocument run = Loader.loadPDF(pdf)) {
            var resources = run.getPage(0).getResources();
            for (COSName name : resources.getXObjectNames()) {
                if (resources.getXObject(name) instanceof PDImageXObject image) {
                    assertThat(image.getWidth()).isEqualTo(LONGER);
                    byte[] jpeg = image.getStream()
                            .createInputStream(List.of("DCTDecode"))
                            .readAllBytes();
                    // All of the photo behind its first segments (Exif, profile, JFIF), bit for bit.
                    byte[] photo = Files.readAllBytes(PHOTO);
                    assertThat(Arrays.equals(photo, photo.length - jpeg.length + 2, photo.length, jpeg, 2, jpeg.length))
                            .as("the photo's own bits")
                            .isTrue();
                    assertThat(image.getColorSpace().getName()).isEqualTo("ICCBased");
                    assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(jpeg))
                                    .containsDirectoryOfType(GpsDirectory.class))
                            .isFalse();
                }
            }
            BufferedImage drawn = new PDFRenderer(run).renderImageWithDPI(0, 50);
            ImageIO.write(
                    drawn,
                    "png",
                    Path.of("target", "screens", "print-run-pdf.png").toFile());
            assertThat(inked(drawn)).as("share of the sheet that is printed").isGreaterThan(0.3);
        }
    }

    @Test
    @Order(6)
    void printed_with_one_spoiled_that_one_waits_again_alone() {
        button("Printed").first().click();
        page.getByText("Are all prints good?").waitFor();
        page.locator("vaadin-checkbox").first().click();
        page.getByLabel("What is wrong with them").fill("a stripe across");
        button("Book as printed").click();
        page.getByText("Run 1 is printed.").waitFor();
        settle();
        page.getByText("1 spoiled").waitFor();
        assertThat(page.locator(".printing-waiting-row").textContent())
                .contains(order.number())
                .doesNotContain("2 ×");
        page.getByText("What happened").click();
        page.getByText("one print spoiled").waitFor();
        shoot("print-past");
        assertThat(complaints()).isEmpty();
    }

    private void approve() {
        customer.getByText("I may use this picture").click();
        customer.locator("vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Approve"))
                .click();
        customer.getByText("Thank you!").waitFor();
        settle(customer);
    }

    private static void touch(CDPSession fingers, String type, double... at) {
        JsonObject event = new JsonObject();
        event.addProperty("type", type);
        JsonArray points = new JsonArray();
        for (int i = 0; i < at.length; i += 2) {
            JsonObject point = new JsonObject();
            point.addProperty("x", at[i]);
            point.addProperty("y", at[i + 1]);
            point.addProperty("id", i / 2);
            points.add(point);
        }
        event.add("touchPoints", points);
        fingers.send("Input.dispatchTouchEvent", event);
    }

    private void assertNothingSticksOut() {
        assertThat(((Number) customer.evaluate("document.documentElement.scrollWidth")).intValue())
                .isLessThanOrEqualTo(360);
    }

    private void phoneShot(String name) {
        customer.screenshot(
                new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screens", name + ".png")));
    }

    private puzzleworkshop.orders.Order now() {
        return bean(Orders.class).get(new OrderId(order.id().value()));
    }

    private static double inked(BufferedImage page) {
        int inked = 0;
        for (int rgb : page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth())) {
            Color colour = new Color(rgb);
            inked += colour.getRed() + colour.getGreen() + colour.getBlue() < 720 ? 1 : 0;
        }
        return inked / (double) (page.getWidth() * page.getHeight());
    }

    private puzzleworkshop.orders.Order orderWithoutPicture() {
        Orders orders = bean(Orders.class);
        Pricing pricing = bean(Pricing.class);
        PriceQuestion question = pricing.typical(FINISHED, 48);
        LocalDate promised = LocalDate.now().plusDays(12);
        puzzleworkshop.orders.Order quote = orders.quote(
                new OrderDraft(
                        Customer.newcomer("Ξένια Ψαρού", "", ""),
                        2,
                        new Puzzle(PatternSpec.of(FINISHED, new PieceGrid(6, 8), 5), IntendedAge.GROWN_UPS, false),
                        BoardKind.of(BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3))),
                        Optional.empty(),
                        "",
                        new DeliveryTerms(Optional.empty(), Optional.of(promised), false, Optional.empty()),
                        Minutes.of(20),
                        new KeptPrice(question, pricing.quote(question)),
                        promised.plusDays(30),
                        ""),
                NAME);
        return orders.confirm(quote.id(), promised, NAME);
    }
}
