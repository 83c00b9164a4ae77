package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.WeekPlan;

/** One piece lost: tapped on the picture of its order, its cut file and print at hand. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PieceWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED;
    }

    @Test
    void a_lost_piece_is_tapped_on_the_picture_and_its_files_are_there() {
        openWorkshop(false);
        Order order = new BenchOrders(beans())
                .confirmed("Ida Lund", bean(WeekPlan.class).today().plusDays(20), 10);
        go("orders/" + order.number());
        page.getByText("Make one piece again").first().click();
        Locator drawing = page.locator("#piece-again .pattern-drawing svg");
        drawing.scrollIntoViewIfNeeded();
        BoundingBox box = drawing.boundingBox();
        page.mouse().click(box.x + box.width * 0.3, box.y + box.height * 0.4);
        Locator print = page.locator("a[download$='.pdf'][download*='-piece-']");
        print.first().waitFor();
        assertThat(page.locator(".bench-again-piece").count()).isEqualTo(1);
        shoot("piece-again");
    }
}
