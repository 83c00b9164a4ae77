package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.workshop.Workshop;

/** Every way to cut has its page with size, time and price, and goes from there with an order. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class WaysToCutWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED;
    }

    @Test
    void each_way_has_a_price_and_a_heart_becomes_an_order() {
        openWorkshop(false);
        Workshop workshop = bean(Workshop.class);
        bean(Machines.class).save(Machine.usual("Laser", workshop.currency()));
        bean(SheetRack.class)
                .add(
                        Outline.rectangle(Size.mm(390, 390)),
                        BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                        Money.of("3", workshop.currency().getCurrencyCode()),
                        "walk");
        for (String way : new String[] {"plain", "uneven", "faces", "round", "shapes", "name", "children", "heart"}) {
            go("draw-pattern/" + way);
            if (way.equals("name")) {
                page.getByLabel("Pieces, about").fill("120");
                page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true))
                        .fill("IDA");
                page.keyboard().press("Tab");
            }
            if (way.equals("faces")) {
                tapTheMiddle();
            }
            page.locator("#order-this").waitFor();
            settle();
            assertThat(page.getByText("Price for one").count()).as(way).isOne();
            if (way.equals("faces")) {
                assertThat(page.locator(".pattern-kept").count()).isOne();
            }
            if (way.equals("uneven")) {
                page.locator("#compare-styles").click();
                page.locator(".pattern-styles table").waitFor();
            }
            if (!way.equals("plain") && !way.equals("shapes")) {
                shoot("way-" + way);
            }
        }
        page.locator("#order-this").click();
        page.waitForURL("**/orders/new");
        settle();
        page.locator("#customer input").fill("Ida Lund");
        page.keyboard().press("Tab");
        page.locator("#how-hard").getByText("How hard").waitFor();
        shoot("way-order");
        page.locator("#save-quote").click();
        page.waitForURL(url -> !url.endsWith("/new"));
        settle();
        assertThat(page.getByText("A heart").first().isVisible()).isTrue();
        assertThat(complaints()).isEmpty();
    }

    private void tapTheMiddle() {
        Locator drawing = page.locator(".pattern-drawing svg");
        drawing.waitFor();
        drawing.scrollIntoViewIfNeeded();
        BoundingBox box = drawing.boundingBox();
        page.mouse().click(box.x + box.width * 0.45, box.y + box.height * 0.4);
        page.locator(".pattern-kept").waitFor();
    }
}
