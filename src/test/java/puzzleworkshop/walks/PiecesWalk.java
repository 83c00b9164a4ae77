package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.bench.PackingProofs;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.workshop.Stage;

/** Packing with a phone: a photo of the pieces names the one that is missing, it is made again, the photo stays with the order. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PiecesWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    private static final int GONE = 9;

    @Test
    void the_missing_piece_is_named_shown_and_kept_with_the_order() {
        openWorkshop(true);
        BenchOrders orders = new BenchOrders(beans());
        Order order = orders.confirmed("Ida Lund", bean(WeekPlan.class).today().plusDays(20), 10);
        orders.bringTo(order.id(), Stage.CUT);
        // its cut and finish are other walks' ways
        bean(JdbcClient.class)
                .sql("update customer_order set next_stage = 'PACK' where id = :id")
                .param("id", order.id().value())
                .update();
        bean(MeasuredOutlines.class).confirmPrint("Office", Length.mm(100), NAME);
        CutPattern pattern = bean(PatternCache.class).of(order.puzzle().pattern());
        List<Piece> lying = new ArrayList<>(pattern.pieces());
        lying.removeIf(piece -> piece.number() == GONE);
        byte[] photo = RenderedPhoto.jpeg(PieceScenes.lay(lying, pattern, new Random(11)));

        page.setViewportSize(360, 760);
        go("bench/pack?order=" + order.number());
        page.locator(".bench-parts input[type=file]")
                .first()
                .setInputFiles(new FilePayload("pieces.jpg", "image/jpeg", photo));
        page.waitForSelector(".bench-proof-picture", new Page.WaitForSelectorOptions().setTimeout(240_000));
        assertThat(page.locator(".bench-missing").innerText()).contains("piece " + GONE + ",");
        shoot("bench-pieces");
        page.setViewportSize(360, 760);
        button("Make piece " + GONE + " again").click();
        page.waitForSelector("vaadin-dialog-overlay .bench-again-piece, vaadin-dialog .bench-again-piece");
        button("As an order of its own").click();
        page.waitForSelector("text=To pay", new Page.WaitForSelectorOptions().setTimeout(60_000));
        shoot("bench-pieces-again");
        page.setViewportSize(360, 760);
        button("Close").click();
        button("Keep with the order").click();
        page.waitForSelector("text=Photos and count are kept with the order");
        assertThat(bean(PackingProofs.class).of(order.id())).hasSize(1);
        go("orders/" + order.number());
        page.locator("vaadin-details-summary", new Page.LocatorOptions().setHasText("23 of 24 pieces"))
                .click();
        page.waitForSelector(".bench-proof-picture img");
        shoot("bench-pieces-proof");
        assertThat(complaints()).isEmpty();
    }
}
