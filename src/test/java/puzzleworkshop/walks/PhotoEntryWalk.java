package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
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
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhotoEntryWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    private static final double[] OFFCUT = {40, 60, 165, 66, 170, 150, 120, 152, 118, 230, 45, 226};

    @Test
    void a_photo_of_an_offcut_becomes_a_sheet_in_the_rack() {
        openWorkshop(true);
        page.setViewportSize(360, 760);
        go("sheets/enter");
        page.locator("vaadin-tab", new com.microsoft.playwright.Page.LocatorOptions().setHasText("From a photo"))
                .click();
        page.getByText("That is its length").click();
        page.waitForSelector("text=Photos are measured by this line");
        page.locator("input[type=file]")
                .first()
                .setInputFiles(
                        new FilePayload("offcut.jpg", "image/jpeg", RenderedPhoto.jpeg(Scene.ofOneBoard(OFFCUT, 3))));
        page.waitForSelector(
                ".sheets-photo-edge", new com.microsoft.playwright.Page.WaitForSelectorOptions().setTimeout(60_000));
        shoot("sheets-photo-phone");
        Locator corner = page.locator(".sheets-photo-canvas circle").first();
        String before = page.locator(".sheets-photo-edge").getAttribute("d");
        corner.hover();
        page.mouse().down();
        page.mouse().move(corner.boundingBox().x + 22, corner.boundingBox().y + 12);
        page.mouse().up();
        page.waitForFunction(
                "before => document.querySelector('.sheets-photo-edge').getAttribute('d') !== before", before);
        page.getByText("Paint a bad area").click();
        // the drawing is made anew without its corners
        page.waitForFunction("() => document.querySelector('.sheets-photo-edge')"
                + " && !document.querySelector('.sheets-photo-canvas circle')");
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
        page.getByText("Remove the last bad area").click();
        page.waitForFunction("() => !document.querySelector('path.sheets-photo-bad')");
        SheetRack rack = bean(SheetRack.class);
        int count = rack.count(RackFilter.inRack());
        page.locator(".sheets-take").click();
        page.waitForSelector(".sheets-taken-line");
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(count + 1);
        Sheet sheet = rack.list(RackFilter.inRack(), 0, 1).getFirst();
        assertThat(bean(MeasuredOutlines.class).unconfirmed(sheet.id())).isPresent();
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
        page.waitForSelector(
                ".sheets-stock-photo", new com.microsoft.playwright.Page.WaitForSelectorOptions().setTimeout(120_000));
        assertThat(page.locator(".sheets-stock-line").innerText()).contains("is sheet " + known);
        button("Tick the one that is sure").click();
        page.waitForSelector("text=Sheet " + known + " found");
        assertThat(bean(StockTaking.class).isSeen(known)).isTrue();
        assertThat(complaints()).isEmpty();
        shoot("sheets-stock-photo");
    }
}
