package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.list.StockTaking;

/** An offcut from a photo on a phone: the printed line once, the photo, the outline over it, into the rack, the ruler. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhotoEntryWalk extends Walk {

    @Override
    Whose workshop() {
        // the printer's line is confirmed for the first time here, and other walks confirm it too
        return Whose.OWN;
    }

    private static final double[] OFFCUT = {40, 60, 165, 66, 170, 150, 120, 152, 118, 230, 45, 226};
    private static final double[] ANOTHER = {50, 70, 150, 75, 120, 200, 60, 190};

    @Test
    void a_photo_of_an_offcut_becomes_a_sheet_in_the_rack() {
        openWorkshop(true);
        page.setViewportSize(360, 760);
        go("sheets/enter");
        page.locator("vaadin-tab", new Page.LocatorOptions().setHasText("From a photo"))
                .click();
        page.getByText("That is its length").click();
        page.waitForSelector("text=Photos are measured by this line");
        page.locator("input[type=file]")
                .first()
                .setInputFiles(
                        new FilePayload("offcut.jpg", "image/jpeg", RenderedPhoto.jpeg(Scene.ofOneBoard(OFFCUT, 3))));
        page.waitForSelector(".sheets-photo-edge", new Page.WaitForSelectorOptions().setTimeout(60_000));
        shoot("sheets-photo-phone");
        page.setViewportSize(360, 760);
        assertThat(reach()).as("a finger finds a corner").isGreaterThanOrEqualTo(44);
        // one that stands alone, so that the outline does not cross itself
        Locator corner = page.locator(".sheets-photo-touch").nth(((Number) page.evaluate("""
            () => {
              const x = [...document.querySelectorAll('.sheets-photo-touch')].map(c => Number(c.getAttribute('cx')));
              return x.indexOf(Math.min(...x));
            }
            """)).intValue());
        String before = page.locator(".sheets-photo-edge").getAttribute("d");
        corner.scrollIntoViewIfNeeded();
        BoundingBox grip = corner.boundingBox();
        // where corners lie close together several are touched: the nearest is taken
        page.mouse().move(grip.x + grip.width / 2, grip.y + grip.height / 2);
        page.mouse().down();
        page.mouse().move(grip.x + grip.width / 2 + 14, grip.y + grip.height / 2 + 9);
        page.waitForSelector(".sheets-photo-loupe");
        page.screenshot(new Page.ScreenshotOptions().setPath(SCREENS.resolve("sheets-photo-dragged-phone.png")));
        page.mouse().up();
        page.waitForFunction("() => !document.querySelector('.sheets-photo-loupe')");
        page.waitForFunction(
                "before => document.querySelector('.sheets-photo-edge').getAttribute('d') !== before", before);
        page.getByText("Paint a bad area").click();
        // the drawing is made anew without its corners
        page.waitForFunction("() => document.querySelector('.sheets-photo-edge')"
                + " && !document.querySelector('.sheets-photo-corner')");
        BoundingBox edge = page.locator(".sheets-photo-edge").boundingBox();
        double x = edge.x + edge.width / 2;
        double y = edge.y + edge.height / 2;
        page.mouse().move(x, y);
        page.mouse().down();
        for (int step = 0; step <= 12; step++) {
            page.mouse().move(x + 9 * Math.cos(step * Math.PI / 6), y + 9 * Math.sin(step * Math.PI / 6));
        }
        page.mouse().up();
        page.waitForSelector("path.sheets-photo-bad");
        shoot("sheets-photo-painted");
        page.getByText("Remove the last bad area").click();
        page.waitForFunction("() => !document.querySelector('path.sheets-photo-bad')");
        SheetRack rack = bean(SheetRack.class);
        int count = rack.count(RackFilter.inRack());
        page.locator(".sheets-take").click();
        page.waitForSelector(".sheets-taken-line");
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(count + 1);
        Sheet sheet = rack.list(RackFilter.inRack(), 0, 1).getFirst();
        assertThat(bean(MeasuredOutlines.class).unconfirmed(sheet.id())).isPresent();
        nextPiece(rack, count + 1);
        go("sheets/number/" + sheet.id());
        page.getByText("The ruler agrees").click();
        page.waitForSelector("text=The outline is used as it was measured");
        assertThat(bean(MeasuredOutlines.class).unconfirmed(sheet.id())).isEmpty();
        shoot("sheets-photo-confirmed");
        // the one entered above had a corner dragged away from the photo
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < OFFCUT.length; i += 2) {
            corners.add(new Point(OFFCUT[i], OFFCUT[i + 1]));
        }
        SheetId known = rack.add(Outline.of(corners), sheet.facts(), sheet.cost(), NAME);
        page.setViewportSize(360, 760);
        go("sheets/stock-take");
        button("Start the walk").click();
        page.waitForSelector(".sheets-printed");
        page.locator("input[type=file]")
                .first()
                .setInputFiles(
                        new FilePayload("rack.jpg", "image/jpeg", RenderedPhoto.jpeg(Scene.ofOneBoard(OFFCUT, 3))));
        page.waitForSelector(".sheets-stock-photo", new Page.WaitForSelectorOptions().setTimeout(120_000));
        assertThat(page.locator(".sheets-stock-line").innerText()).contains("is sheet " + known);
        button("Tick the one that is sure").click();
        page.waitForSelector("text=Sheet " + known + " found");
        assertThat(bean(StockTaking.class).isSeen(known)).isTrue();
        assertThat(complaints()).isEmpty();
        shoot("sheets-stock-photo");
    }

    /** The top of a thicker board lies nearer to the camera: an outline measured for another one is not taken in. */
    private void ofAnotherThickness(SheetRack rack, int count) {
        Locator thickness = page.locator("input[aria-label='Thickness']");
        thickness.fill("6");
        page.locator(".sheets-take").click();
        page.waitForSelector("text=measured for a board of 3 mm");
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(count);
        thickness.fill("3");
        thickness.press("Tab");
    }

    /**
     * The next piece asks for two touches on our screen, and two in the phone's camera (release, use): twenty pieces are eighty
     * touches. What the program takes for each is what the benchmark {@code photo} measures.
     */
    private void nextPiece(SheetRack rack, int count) {
        page.locator("input[type=file]")
                .first()
                .setInputFiles(
                        new FilePayload("next.jpg", "image/jpeg", RenderedPhoto.jpeg(Scene.ofOneBoard(ANOTHER, 3))));
        page.waitForSelector(".sheets-photo-edge", new Page.WaitForSelectorOptions().setTimeout(60_000));
        ofAnotherThickness(rack, count);
        page.locator(".sheets-take").click();
        page.waitForFunction("() => document.querySelectorAll('.sheets-taken-line').length === 2");
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(count + 1);
    }

    /** Across, in the screen's pixels. */
    private double reach() {
        page.waitForFunction("() => document.querySelector('.sheets-photo-touch')?.getAttribute('r')");
        return page.locator(".sheets-photo-touch").first().boundingBox().width;
    }
}
