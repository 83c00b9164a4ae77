package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
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
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.sheets.MeasuredOutlines;

/**
 * By the clock at the screen, with a photo of 12 megapixels on A3: how long from the chosen file to the named piece. Times are
 * printed and not judged: they are the machine's as well.
 */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PiecesTimeWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    private static Page.WaitForSelectorOptions attached() {
        return new Page.WaitForSelectorOptions()
                .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED);
    }

    @Test
    void forty_eight_pieces_are_counted() {
        openWorkshop(true);
        BenchOrders orders = new BenchOrders(beans());
        Order asked = orders.waitingForApproval(
                "Ida Lund",
                bean(WeekPlan.class).today().plusDays(20),
                picture -> PatternSpec.of(picture.finished(), new PieceGrid(8, 6), 5));
        Order order = bean(Orders.class).approve(asked.id(), "Ida Lund", NAME);
        orders.holdBoard(order);
        bean(JdbcClient.class)
                .sql("update customer_order set next_stage = 'PACK' where id = :id")
                .param("id", order.id().value())
                .update();
        bean(MeasuredOutlines.class).confirmPrint("Office", Length.mm(100), NAME);
        CutPattern pattern = bean(PatternCache.class).of(order.puzzle().pattern());
        List<Piece> lying = new ArrayList<>(pattern.pieces());
        lying.removeIf(piece -> piece.number() == 9);
        byte[] photo = RenderedPhoto.jpeg(PieceScenes.lay(lying, pattern, new Random(11)));
        assertThat(lying).as("all in one photo").isEmpty();
        for (int width : new int[] {1280, 360, 360}) {
            page.setViewportSize(width, 800);
            go("bench/pack?order=" + order.number());
            page.waitForSelector(".bench-parts input[type=file]", attached());
            long started = System.nanoTime();
            page.locator(".bench-parts input[type=file]")
                    .first()
                    .setInputFiles(new FilePayload("pieces.jpg", "image/jpeg", photo));
            page.waitForSelector(".bench-proof-picture", new Page.WaitForSelectorOptions().setTimeout(240_000));
            say("47 of 48 pieces counted, " + width + " px", (System.nanoTime() - started) / 1e9);
            assertThat(page.locator(".bench-missing").innerText()).contains("piece 9,");
        }
        assertThat(complaints()).isEmpty();
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
