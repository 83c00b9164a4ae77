package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.LaserFacts.Adhesive;
import puzzleworkshop.supplies.LaserFacts.Pvc;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.workshop.Stage;

/** At the laser by hand: trials until a setting is proven, a test card, a cut file from elsewhere mended, a cut on the phone. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class CuttingWalk extends Walk {

    private static final Path FILES = Path.of("target", "walks", "cut-files");
    private static final BoardKind CRAFT = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    private Machine laser;

    @Test
    @Order(1)
    void an_empty_workshop_has_a_laser_and_an_order_that_nobody_has_proven_the_board_of() {
        openWorkshop(false);
        laser = bean(Machines.class)
                .save(Machine.usual("Bench laser", bean(Supplies.class).currency()));
        bean(Supplies.class)
                .keep(new SupplyItem(
                        Optional.empty(),
                        "Paper film",
                        SupplyKind.STICKER_PAPER,
                        UseUnit.SHEET,
                        Optional.of(Length.mm(297)),
                        Optional.of(Length.mm(420)),
                        "pack",
                        BigDecimal.valueOf(100),
                        new LaserFacts(Pvc.FREE, Adhesive.DRY),
                        3,
                        3,
                        true,
                        false,
                        BigDecimal.ZERO,
                        Money.zero(bean(Supplies.class).currency())));
        bean(Settings.class).add(laser, CRAFT);
        go("machines");
        page.getByText("Birch ply, craft").first().waitFor();
        page.getByText("untried").first().waitFor();
    }

    @Test
    @Order(2)
    void three_good_tries_one_with_a_photo_prove_the_setting() throws IOException {
        page.locator(".cutting-cell").first().click();
        page.getByText("No trial yet").first().waitFor();
        Path photo = file("edge.jpg", SamplePictures.encode(SamplePictures.leaves(900, 700, 3), "jpeg"));
        for (int good = 0; good < 3; good++) {
            button("Record a try").first().click();
            page.getByText("through", exactly()).first().click();
            page.getByText("1 light brown").click();
            if (good == 0) {
                page.setInputFiles(".cutting-photo-field input[type=file]", photo);
                settle();
            }
            button("Save this try").click();
            settle();
        }
        CutSetting setting = bean(Settings.class).forBoard(laser, CRAFT);
        assertThat(setting.state()).isEqualTo(SettingState.PROVEN);
        page.getByText("The setting is proven").waitFor();
        assertThat(bean(Settings.class).evidence(setting).trials())
                .filteredOn(Trial::hasPhoto)
                .hasSize(1);
        page.waitForFunction(
                "() => [...document.querySelectorAll('.cutting-photo img')].some(i => i.naturalWidth === 900)");
        shoot("setting-proven");
    }

    /** Millimetres: the file's own width and height are those the screen says. */
    @Test
    @Order(3)
    void a_test_card_is_taken_away_in_real_millimetres_and_its_squares_become_trials() throws IOException {
        button("Test card").click();
        page.getByText("Save the card as SVG").waitFor();
        Path card = taken("Save the card as SVG");
        String svg = Files.readString(card);
        Matcher size = Pattern.compile("width=[\"']([\\d.]+)mm[\"'] height=[\"']([\\d.]+)mm[\"']")
                .matcher(svg);
        assertThat(size.find()).as("width and height in mm").isTrue();
        DrawnFile read = DrawnFile.read("card.svg", Files.readAllBytes(card));
        assertThat(read.lines()).hasSizeGreaterThan(12);
        assertThat(read.lines().stream()
                        .mapToDouble(line -> line.bounds().maxX())
                        .max()
                        .orElseThrow())
                .isLessThanOrEqualTo(Double.parseDouble(size.group(1)));
        shoot("test-card");
        int before = bean(Settings.class)
                .evidence(bean(Settings.class).forBoard(laser, CRAFT))
                .trials()
                .size();
        page.locator(".cutting-card-grid vaadin-select").first().click();
        page.locator("vaadin-select-item:visible")
                .filter(new Locator.FilterOptions().setHasText("through, charring 1"))
                .click();
        button("Record the card").click();
        settle();
        assertThat(bean(Settings.class)
                        .evidence(bean(Settings.class).forBoard(laser, CRAFT))
                        .trials())
                .hasSize(before + 1);
    }

    /** A square of 80 mm, its top line drawn twice and half of its left one again: 320 + 80 + 40 = 440 mm, 120 too many. */
    @Test
    @Order(4)
    void a_cut_file_from_elsewhere_is_mended_and_read_back() throws IOException {
        go("check-cut-file");
        page.setInputFiles(
                "#cut-file-upload input[type=file]", file("from-elsewhere.svg", """
                    <svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100' fill='none' stroke='black'>
                      <path d='M10 10 H90 V90 H10 Z'/><path d='M10 10 H90'/><path d='M10.02 20 V60'/>
                    </svg>\
                    """.getBytes(StandardCharsets.UTF_8)));
        page.getByText("drawn more than once").waitFor();
        page.getByText("80 × 80 mm").first().waitFor();
        page.getByText("440 mm").first().waitFor();
        page.getByText("120 mm less is burnt").waitFor();
        shoot("cut-file-mended");
        DrawnFile cleaned = DrawnFile.read("cleaned.dxf", Files.readAllBytes(taken("DXF")));
        assertThat(cleaned.lines().stream().mapToDouble(line -> line.lengthMm()).sum())
                .isCloseTo(320, within(0.2));
        cleaned = DrawnFile.read("cleaned.svg", Files.readAllBytes(taken("SVG")));
        assertThat(cleaned.lines().stream().mapToDouble(line -> line.lengthMm()).sum())
                .isCloseTo(320, within(0.2));
    }

    @Test
    @Order(4)
    void what_is_not_interpreted_is_said_and_drawn_as_not_sure() throws IOException {
        go("check-cut-file");
        page.setInputFiles(
                "#cut-file-upload input[type=file]", file("half-masked.svg", """
                    <svg xmlns='http://www.w3.org/2000/svg' width='120mm' height='100mm' viewBox='0 0 120 100'>
                      <style>.line {fill: none; stroke: black}</style>
                      <rect width='120' height='100' fill='white'/>
                      <mask id='half'><rect width='60' height='100' fill='white'/></mask>
                      <rect class='line' x='10' y='10' width='80' height='80'/><path class='line' d='M10 30C40 10 60 60 90 30'/>
                      <path class='line' d='M10 60C40 40 60 90 110 60' mask='url(#half)'/>
                      <path class='line' d='M10 20H90' display='none'/>
                    </svg>\
                    """.getBytes(StandardCharsets.UTF_8)));
        page.getByText("80 × 80 mm").first().waitFor();
        page.getByText("One shape lies under a mask").waitFor();
        page.getByText("One hidden part is left out").waitFor();
        assertThat(page.locator(".pattern-not-sure").count()).isEqualTo(1);
        shoot("cut-file-not-sure");
    }

    @Test
    @Order(5)
    void a_cut_is_recorded_on_the_phone_and_done_follows_from_it() {
        BenchOrders make = new BenchOrders(beans());
        puzzleworkshop.orders.Order order =
                make.confirmed("Ida Lund", bean(WeekPlan.class).today().plusDays(20), 10);
        make.bringTo(order.id(), Stage.CUT);
        page.setViewportSize(360, 760);
        BenchSteps steps = new BenchSteps(this, order.number());
        steps.prepareTheCut();
        steps.cutThrough();
        CutJob cut = bean(CutJobs.class).lastFor(order.id()).orElseThrow();
        assertThat(cut.state()).isEqualTo(CutJob.State.DONE);
        assertThat(cut.trialId())
                .as("a cut that nobody waited out is no evidence of its setting")
                .isEmpty();
        assertThat(((Number) page.evaluate("document.documentElement.scrollWidth")).intValue())
                .isLessThanOrEqualTo(360);
        assertThat(bean(Orders.class).get(order.id()).next()).contains(Stage.FINISH);
        assertThat(complaints()).isEmpty();
    }

    private static com.microsoft.playwright.Page.GetByTextOptions exactly() {
        return new com.microsoft.playwright.Page.GetByTextOptions().setExact(true);
    }

    private Path taken(String link) throws IOException {
        Download download = page.waitForDownload(() -> page.locator("a:visible")
                .filter(new Locator.FilterOptions().setHasText(link))
                .last()
                .click());
        Files.createDirectories(FILES);
        Path to = FILES.resolve(download.suggestedFilename());
        download.saveAs(to);
        return to;
    }

    private static Path file(String name, byte[] content) throws IOException {
        Files.createDirectories(FILES);
        return Files.write(FILES.resolve(name), content);
    }
}
