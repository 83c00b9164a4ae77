package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.placing.DrawnPrint;
import puzzleworkshop.placing.LaidOrders;
import puzzleworkshop.placing.MarkVisit;
import puzzleworkshop.placing.Positions;

/** Four marks typed at the laser, the files for that very place taken, the board moved; the jig of the machine drawn. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PlacingWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED;
    }

    private static final double PATIENCE_MS = 150_000;

    private Machine machine;

    @BeforeAll
    void open() {
        page.setDefaultTimeout(PATIENCE_MS);
        openWorkshop(false);
        machine = LaidOrders.machine(bean(Machines.class));
    }

    @Test
    void marks_are_typed_the_place_is_kept_and_its_files_are_taken() throws IOException {
        CutJob job = LaidOrders.printed(bean(DataSource.class), bean(CutJobs.class), machine, LaidOrders.ORDER);
        List<MarkVisit> visits = LaidOrders.typed(
                        bean(Positions.class).print(job).orElseThrow(), machine, LaidOrders.PLACE)
                .visits();
        go("machines/cuts/" + job.id());
        shoot("placing-before");
        assertThat(page.locator(".cutting-job-foot").evaluate("foot => getComputedStyle(foot).position"))
                .as("a start that cannot be pressed yet lies over no field")
                .isEqualTo("static");
        for (MarkVisit visit : visits) {
            type("X", visit.mark(), visit.shownX() + (visit.mark() == 3 ? 9 : 0.1));
            type("Y", visit.mark(), visit.shownY());
        }
        page.getByText("Mark 3 does not fit the others").waitFor();
        shoot("placing-misread");
        type("X", 3, visits.get(2).shownX());
        page.getByText("The cut stays inside the print: at").waitFor();
        shoot("placing-typed");
        button("Use this place").click();
        page.getByText("Finished size").waitFor();
        settle();
        shoot("placing-kept");
        Download cut = page.waitForDownload(() -> page.locator(".placing-file-row")
                .filter(new Locator.FilterOptions().setHasText("3 · Cut"))
                .getByText("G-code", new Locator.GetByTextOptions().setExact(true))
                .click());
        assertThat(cut.suggestedFilename()).endsWith(".nc").contains("cut");
        GcodeInterpreter run = GcodeInterpreter.run(Files.readString(cut.path()));
        assertThat(run.moves()).anyMatch(GcodeInterpreter.Move::beamOn);
        assertThat(run.beamReadyAtEnd()).isFalse();
        page.reload();
        settle();
        page.getByText("Places and files on record").click();
        page.getByText("SHA-256").first().waitFor();
        shoot("placing-record");
        button("The board was moved").click();
        button("Use this place").waitFor();
        assertThat(page.locator(".placing-files").count()).isZero();
        go("machines/places/" + machine.id());
        page.getByText("Fence, to cut through").waitFor();
        shoot("placing-jig");
        go("set-up/crosses-for-the-laser");
        page.getByText("Print crosses").first().waitFor();
        shoot("placing-set-up");
        go("machines");
        button("Change").first().click();
        page.getByText("Coordinates and control").waitFor();
        page.getByText("Coordinates and control").scrollIntoViewIfNeeded();
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(java.nio.file.Path.of("target", "screens", "placing-machine.png")));
        assertThat(complaints()).isEmpty();
    }

    /** Boards of one cut on the bed together, and what boards measured before have taught: by hand, and in the fence. */
    @Test
    void boards_lie_on_the_bed_together_and_what_many_have_taught_is_shown() {
        Positions positions = bean(Positions.class);
        CutJob two = LaidOrders.printed(bean(DataSource.class), bean(CutJobs.class), machine, 300);
        JdbcClient.create(bean(DataSource.class))
                .sql("update customer_order set quantity = 3, width_mm = 120, height_mm = 90 where id = 300")
                .update();
        JdbcClient.create(bean(DataSource.class))
                .sql("update print_run_item set width_mm = 120, height_mm = 90 where order_id = 300")
                .update();
        go("machines/cuts/" + two.id());
        shoot("placing-several-before");
        DrawnPrint print = positions.print(two).orElseThrow();
        for (int board = 1; board <= 2; board++) {
            Positions.Typed typed = LaidOrders.typed(
                    print,
                    machine,
                    Similarity.about(new Point(0, 0), 1.003, 0.004 * board, 40 + 150 * (board - 1), 60));
            positions.measure(two.id(), new Positions.Typed(board, typed.turns(), false, typed.visits()), "Robin");
        }
        go("machines/cuts/" + two.id());
        page.getByText("All 2 measured boards in one file").click();
        settle();
        shoot("placing-several");
        Random random = new Random(14);
        for (int i = 0; i < 44; i++) {
            CutJob one = LaidOrders.printed(bean(DataSource.class), bean(CutJobs.class), machine, 400 + i);
            boolean inFence = i % 2 == 0;
            Similarity place = Similarity.about(
                    new Point(150, 100),
                    1 + 0.0005 * random.nextGaussian(),
                    (inFence ? 0.001 : 0.003) * random.nextGaussian() + 0.002,
                    (inFence ? 40 : 60) + (inFence ? 0.3 : 4) * random.nextGaussian(),
                    90 + (inFence ? 0.3 : 4) * random.nextGaussian());
            Positions.Typed typed = LaidOrders.typed(positions.print(one).orElseThrow(), machine, place);
            positions.measure(one.id(), new Positions.Typed(1, 0, inFence, typed.visits()), "Robin");
        }
        go("machines/places/" + machine.id());
        page.getByText("Where prints laid by hand come").waitFor();
        shoot("placing-learned");
        CutJob next = LaidOrders.printed(bean(DataSource.class), bean(CutJobs.class), machine, 500);
        go("machines/cuts/" + next.id());
        type("X", 1, 60);
        type("Y", 1, 310);
        page.getByText("look near X").first().waitFor();
        shoot("placing-next");
        page.getByText("It lies in the jig").click();
        settle();
        shoot("placing-fence-taken");
        assertThat(complaints()).isEmpty();
    }

    private void type(String axis, int mark, double value) {
        Locator field = page.getByLabel(axis + " of mark " + mark).first();
        field.fill(String.format(Locale.ROOT, "%.2f", value));
        field.press("Tab");
        settle();
    }
}
