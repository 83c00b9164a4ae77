package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.FilePayload;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;

/** An offcut from a photo on a phone: the printed line once, the photo, the outline over it, into the rack, the ruler. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhotoEntryWalk extends Walk {

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
        assertThat(complaints()).isEmpty();
        shoot("sheets-photo-confirmed");
    }
}
