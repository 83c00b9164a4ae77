package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;

/** The rack from the first piece of wood to the end of stock-taking. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class SheetsWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED_DEMO;
    }

    /**
     * Keystroke-level model: Card, Moran and Newell, Communications of the ACM 23 (1980): K 0.5 s (their value for codes
     * of random characters), P 1.1 s for pointing, here for every tap, M 1.35 s for making up one's mind, here before
     * every number and every tap.
     */
    private static final double K = 0.5;

    private static final double P = 1.1;
    private static final double M = 1.35;

    private int keys;
    private int taps;
    private int minds;
    private int pieces;

    @Test
    @Order(1)
    void a_newcomer_enters_twenty_odd_pieces_on_a_phone_in_far_less_than_ten_minutes() {
        openWorkshop(true);
        SheetRack rack = bean(SheetRack.class);
        int before = rack.count(RackFilter.inRack());
        page.setViewportSize(360, 760);
        go("sheets/enter");
        for (int i = 0; i < 12; i++) {
            type(String.valueOf(210 + 13 * i), String.valueOf(150 + 11 * i));
        }
        tapTab("L shape");
        for (int i = 0; i < 4; i++) {
            type("400", "300", String.valueOf(180 + 10 * i), "120");
        }
        tapTab("U shape");
        type("500", "300", "120", "200", "140");
        type("480", "260", "100", "150", "90");
        tapTab("Draw it");
        for (int i = 0; i < 2; i++) {
            drawFiveCorners();
        }
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(before + 20);
        double seconds = K * keys + P * taps + M * minds;
        System.out.printf(
                "20 pieces: %d keys, %d taps, %d numbers and decisions: %.0f s by the keystroke-level model%n",
                keys, taps, minds, seconds);
        assertThat(seconds).isLessThan(300);
        assertThat(complaints()).isEmpty();
        shoot("sheets-entered");
    }

    @Test
    @Order(2)
    void what_no_machine_reaches_is_refused_with_the_spot_and_keeps_what_was_typed() {
        // where boards are sawn before the laser, larger ones are taken in
        RackSettings settings = bean(RackSettings.class);
        RackRules rules = settings.rules();
        settings.save(new RackRules(
                rules.largest(),
                rules.kerf(),
                rules.mostBow(),
                rules.thicknessSlack(),
                rules.offcutCost(),
                rules.share(),
                false));
        go("sheets/enter");
        page.keyboard().type("900");
        page.keyboard().press("Enter");
        page.keyboard().type("500");
        page.keyboard().press("Enter");
        settle();
        assertThat(page.locator(".pw-note:visible").innerText())
                .contains("900 × 500 mm")
                .contains("620 × 420 mm");
        assertThat(page.locator(".sheets-fault").count()).isEqualTo(1);
        assertThat(page.locator(".sheets-numbers input").first().inputValue()).isEqualTo("900");
    }

    @Test
    @Order(3)
    void an_order_gets_another_sheet_and_the_place_chosen_for_it() {
        // whichever board the demo's orders have come to hold; what is stuck on its board gets no other one
        long board = bean(JdbcClient.class).sql("""
                    select min(r.sheet_id) from sheet_reservation r join customer_order o on o.id = r.order_id
                    where r.ended_at is null and o.next_stage in ('PRINT', 'LAMINATE', 'SHEET_PREP')
                    """).query(Long.class).single();
        go("sheets/number/" + board);
        button("Do not cut, set it free").click();
        settle();
        go("sheets/find");
        page.locator("vaadin-select").first().click();
        settle();
        page.keyboard().press("ArrowDown");
        page.keyboard().press("Enter");
        settle();
        assertThat(page.locator(".sheets-best .sheets-movable").count()).isEqualTo(1);
        shoot("sheets-found");
        Locator held = page.locator(".sheets-movable .sheets-held");
        held.scrollIntoViewIfNeeded();
        BoundingBox box = held.boundingBox();
        page.mouse().move(box.x + box.width / 2, box.y + box.height / 2);
        page.mouse().down();
        page.mouse().move(box.x + 20, box.y + 20);
        page.mouse().move(Math.max(5, box.x - 200), Math.max(5, box.y - 150));
        page.mouse().up();
        settle();
        assertThat(page.locator(".sheets-movable .sheets-outside, .sheets-movable.sheets-outside")
                        .count())
                .isEqualTo(1);
        assertThat(button("Hold").count())
                .as("what does not fit cannot be held")
                .isZero();
        page.locator(".sheets-runner-up vaadin-button").first().click();
        settle();
        int number =
                Integer.parseInt(page.locator(".sheets-best .sheets-number").innerText());
        button("Hold").first().click();
        settle();
        Sheet sheet = bean(SheetRack.class).find(new SheetId(number)).orElseThrow();
        assertThat(sheet.state()).isEqualTo(SheetState.RESERVED);
    }

    @Test
    @Order(4)
    void the_blank_is_cut_its_offcut_labelled_and_a_mistaken_cut_taken_back() throws IOException {
        SheetRack rack = bean(SheetRack.class);
        Sheet sheet = rack.list(RackFilter.inRack(), 0, 100).stream()
                .filter(one -> one.state() == SheetState.RESERVED
                        && bean(BoardCuts.class).proposal(one.id()).largest().isPresent())
                .findFirst()
                .orElseThrow();
        go("sheets/number/" + sheet.id());
        assertThat(page.locator(".sheets-part .sheets-useful").count()).isPositive();
        shoot("sheets-cut");
        button("The blank is cut").click();
        settle();
        assertThat(rack.find(sheet.id()).orElseThrow().state()).isEqualTo(SheetState.USED);
        SheetId offcut = rack.children(sheet.id()).getFirst();
        Download label = page.waitForDownload(
                () -> page.getByText("Labels for them (PDF)").click());
        assertThat(Files.readString(label.path(), StandardCharsets.ISO_8859_1)).startsWith("%PDF");
        button("The cut was a mistake").click();
        settle();
        assertThat(rack.find(sheet.id()).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
        assertThat(rack.find(offcut).orElseThrow().state()).isEqualTo(SheetState.WITHDRAWN);
    }

    @Test
    @Order(5)
    void the_stock_goes_out_as_a_list_and_comes_back_all_or_nothing() throws IOException {
        SheetRack rack = bean(SheetRack.class);
        int before = rack.count(RackFilter.inRack());
        go("sheets/lists");
        Download list = page.waitForDownload(() -> page.getByText("sheets.csv").click());
        String csv = Files.readString(list.path());
        read("ours.csv", csv);
        page.getByText("lines are good, 0 are not").waitFor();
        read("broken.csv", csv + "1,FREE,abc,200,,birch-ply,CRAFT,3,,0,CLEAN,NONE,A1,1.00,\n");
        page.getByText("1 are not").or(page.getByText("1 is not")).first().waitFor();
        assertThat(page.locator(".pw-note[data-kind=bad]").first().innerText()).contains("Line " + (before + 2));
        assertThat(button("Take all").first().getAttribute("disabled")).isNotNull();
        read("other.csv", "Breite;Höhe;Holz;Dicke\n300;200;Birch ply;3\n");
        page.getByText("Say which columns hold width and height").waitFor();
        read("ours.csv", csv);
        button("Take all").first().click();
        settle();
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(2 * before);
    }

    @Test
    @Order(6)
    void stock_is_taken_by_number_by_scanner_and_on_the_page_of_the_label() {
        SheetRack rack = bean(SheetRack.class);
        int all = rack.count(RackFilter.inRack());
        go("sheets/stock-take");
        button("Start the walk").click();
        settle();
        page.keyboard().type("4");
        page.keyboard().press("Enter");
        page.getByText("1 of " + all + " found").waitFor();
        settle();
        page.keyboard().type("http://rack.example/sheets/number/6");
        page.keyboard().press("Enter");
        page.getByText("2 of " + all + " found").waitFor();
        settle();
        page.keyboard().type("99999");
        page.keyboard().press("Enter");
        page.getByText("There is no sheet 99999").waitFor();
        go("sheets/number/7");
        button("It is here").click();
        settle();
        go("sheets/stock-take");
        page.getByText("3 of " + all + " found").waitFor();
        button("End the walk").click();
        page.getByText(all - 3 + " sheets were not found").waitFor();
        assertThat(rack.count(RackFilter.inRack()))
                .as("nothing leaves the rack unasked")
                .isEqualTo(all);
        assertThat(complaints()).isEmpty();
    }

    private void type(String... numbers) {
        for (String number : numbers) {
            page.keyboard().type(number);
            page.keyboard().press("Enter");
            keys += number.length() + 1;
            minds++;
        }
        pieces++;
        page.getByText(pieces == 1 ? "1 sheet entered" : pieces + " sheets entered")
                .waitFor();
        page.waitForFunction("() => !document.querySelector('.sheets-numbers input').value");
    }

    private void tapTab(String name) {
        page.locator("vaadin-tab")
                .filter(new Locator.FilterOptions().setHasText(name))
                .click();
        taps++;
        minds++;
        settle();
    }

    /** One corner by a tap, four sides by a typed length and a tap that gives the direction. */
    private void drawFiveCorners() {
        tapPaper(0.1, 0.1);
        String[] lengths = {"380", "170", "210", "240"};
        double[][] ways = {{0.9, 0.12}, {0.8, 0.9}, {0.2, 0.95}, {0.05, 0.7}};
        for (int i = 0; i < 4; i++) {
            page.locator(".sheets-typed input").first().click();
            page.keyboard().type(lengths[i]);
            taps++;
            keys += lengths[i].length();
            minds++;
            page.keyboard().press("Tab");
            settle();
            tapPaper(ways[i][0], ways[i][1]);
        }
        button("Take it in").click();
        taps++;
        settle();
    }

    private void tapPaper(double across, double down) {
        Locator paper = page.locator(".sheets-editor-box svg");
        paper.scrollIntoViewIfNeeded();
        BoundingBox box = paper.boundingBox();
        page.mouse().click(box.x + across * box.width, box.y + down * box.height);
        taps++;
        minds++;
        settle();
    }

    private void read(String name, String csv) {
        page.setInputFiles(
                "vaadin-upload input[type=file]",
                new FilePayload(name, "text/csv", csv.getBytes(StandardCharsets.UTF_8)));
        page.waitForTimeout(600);
        settle();
    }
}
