package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
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

    @Test
    void marks_are_typed_the_place_is_kept_and_its_files_are_taken() throws IOException {
        page.setDefaultTimeout(PATIENCE_MS);
        openWorkshop(false);
        Machine machine = LaidOrders.machine(bean(Machines.class));
        CutJob job = LaidOrders.printed(bean(DataSource.class), bean(CutJobs.class), machine, LaidOrders.ORDER);
        List<MarkVisit> visits = LaidOrders.typed(
                        bean(Positions.class).print(job).orElseThrow(), machine, LaidOrders.PLACE)
                .visits();
        go("machines/cuts/" + job.id());
        shoot("placing-before");
        for (MarkVisit visit : visits) {
            type("X", visit.mark(), visit.shownX() + (visit.mark() == 3 ? 9 : 0.1));
            type("Y", visit.mark(), visit.shownY());
        }
        page.getByText("Mark 3 does not fit the others").waitFor();
        shoot("placing-misread");
        type("X", 3, visits.get(2).shownX());
        page.getByText("The cut stays inside the print").waitFor();
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

    private void type(String axis, int mark, double value) {
        Locator field = page.getByLabel(axis + " of mark " + mark).first();
        field.fill(String.format(Locale.ROOT, "%.2f", value));
        field.press("Tab");
        settle();
    }
}
