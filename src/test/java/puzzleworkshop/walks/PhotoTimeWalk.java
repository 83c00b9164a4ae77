package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.RandomScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.SheetRack;

/**
 * By the clock at the screen, with photos of 12 megapixels on A3: how long from the chosen file to the outline over it, and how long
 * 20 pieces of the pile take one person. Times of the clock are printed and not judged, for they are the machine's as well; the
 * count of taps, looks and movements of the hand is judged.
 */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhotoTimeWalk extends Walk {

    /** Keystroke-level model as in {@link SheetsWalk}: Card, Moran and Newell, Communications of the ACM 23 (1980). */
    private static final double P = 1.1;

    private static final double M = 1.35;

    /** Their drawing operator: 0.9 s for each straight stretch and 0.16 s for each cm; a spot is circled in four of 1 cm. */
    private static final double CIRCLE = 4 * 0.9 + 4 * 0.16;

    /** Taking one piece off the sheet and laying the next, and raising the phone over it; by the workshop's own pace, assumed. */
    private static final double LAY = 8;

    private static final double AIM = 4;

    private static final int PIECES = 20;

    /** Seconds for an outline: what is left of ten minutes for the person. */
    private static final double MOST_WAITED = 3;

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    private int taps;
    private int minds;
    private int drawn;
    private double waited;

    @Test
    void twenty_pieces_of_the_pile_from_photos() {
        List<byte[]> photos = new ArrayList<>();
        for (int seed : new int[] {20261129, 20261131, 20261133, 20261135}) {
            photos.add(RenderedPhoto.jpeg(RandomScenes.next(new Random(seed), MeasuringSheet.A3)));
        }
        openWorkshop(true);
        bean(MeasuredOutlines.class).confirmPrint("Office", Length.mm(100), NAME);
        SheetRack rack = bean(SheetRack.class);
        int before = rack.count(RackFilter.inRack());
        page.setViewportSize(1280, 800);
        openPhotos();
        for (int i = 0; i < 3; i++) {
            say("outline over the photo, 1280 px", outlined(photos.get(i)));
            page.reload();
            openPhotos();
        }
        page.setViewportSize(360, 760);
        openPhotos();
        for (int piece = 0; piece < PIECES; piece++) {
            // the button, the phone's shutter, 'use this photo'
            taps += 3;
            minds++;
            double took = outlined(photos.get(piece % photos.size()));
            if (piece < 4) {
                say("outline over the photo, 360 px", took);
            }
            waited += took;
            // a look at the outline
            minds++;
            if (piece % 5 == 1) {
                dragCorner();
            }
            if (piece % 4 == 2) {
                paintSpot();
            }
            page.locator(".sheets-take").click();
            taps++;
            int taken = piece + 1;
            page.waitForFunction(
                    "n => document.querySelectorAll('.sheets-taken-line').length >= n", Math.min(taken, 3));
            page.waitForFunction("() => !document.querySelector('.sheets-photo-edge')");
        }
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(before + PIECES);
        assertThat(complaints()).isEmpty();
        double hands = PIECES * (LAY + AIM);
        double seconds = P * taps + M * minds + CIRCLE * drawn + waited + hands;
        System.out.printf(
                Locale.ROOT,
                "%d pieces by photo: %d taps, %d decisions, %d spots drawn, %.0f s waited, %.0f s laid and aimed:"
                        + " %.1f min by the keystroke-level model%n",
                PIECES,
                taps,
                minds,
                drawn,
                waited,
                hands,
                seconds / 60);
        assertThat(seconds - waited).as("seconds of the person's own").isLessThan(600 - PIECES * MOST_WAITED);
    }

    private void openPhotos() {
        go("sheets/enter");
        page.locator("vaadin-tab", new Page.LocatorOptions().setHasText("From a photo"))
                .click();
        page.waitForSelector(".sheets-photo-entry input[type=file]", attached());
    }

    private static Page.WaitForSelectorOptions attached() {
        return new Page.WaitForSelectorOptions()
                .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED);
    }

    /** Seconds from the chosen file to the outline drawn. */
    private double outlined(byte[] jpeg) {
        long started = System.nanoTime();
        page.locator(".sheets-photo-entry input[type=file]")
                .first()
                .setInputFiles(new FilePayload("board.jpg", "image/jpeg", jpeg));
        page.waitForSelector(".sheets-photo-edge", new Page.WaitForSelectorOptions().setTimeout(120_000));
        return (System.nanoTime() - started) / 1e9;
    }

    private void dragCorner() {
        page.waitForFunction("() => document.querySelector('.sheets-photo-touch')?.getAttribute('r')");
        Locator corner = page.locator(".sheets-photo-touch").first();
        corner.scrollIntoViewIfNeeded();
        BoundingBox grip = corner.boundingBox();
        page.mouse().move(grip.x + grip.width / 2, grip.y + grip.height / 2);
        page.mouse().down();
        page.mouse().move(grip.x + grip.width / 2 + 1, grip.y + grip.height / 2 + 1);
        page.mouse().up();
        settle();
        // to the corner, and with it to where it belongs
        taps += 2;
        minds++;
    }

    private void paintSpot() {
        page.getByText("Paint a bad area").click();
        page.waitForFunction("() => document.querySelector('.sheets-photo-edge')"
                + " && !document.querySelector('.sheets-photo-corner')");
        page.locator(".sheets-photo-edge").scrollIntoViewIfNeeded();
        BoundingBox edge = page.locator(".sheets-photo-edge").boundingBox();
        double x = edge.x + edge.width / 2;
        double y = edge.y + edge.height / 2;
        page.mouse().move(x + 9, y);
        page.mouse().down();
        for (int step = 0; step <= 12; step++) {
            page.mouse().move(x + 9 * Math.cos(step * Math.PI / 6), y + 9 * Math.sin(step * Math.PI / 6));
        }
        page.mouse().up();
        page.waitForSelector("path.sheets-photo-bad");
        taps += 2;
        minds++;
        drawn++;
    }

    private static void say(String what, double seconds) {
        System.out.printf(
                Locale.ROOT,
                "%s: %.2f s (load %.1f)%n",
                what,
                seconds,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }
}
