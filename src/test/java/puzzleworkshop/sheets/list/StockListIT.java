package puzzleworkshop.sheets.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
@Transactional
class StockListIT {

    @Autowired
    StockList lists;

    @Autowired
    SheetRack rack;

    @Autowired
    SheetLabels labels;

    @Autowired
    StockTaking taking;

    @Test
    void a_list_is_read_with_its_columns_guessed_and_taken_in_whole() {
        StockList.Table table = lists.read("""
            Width (mm);Height;Material;Thickness;Past;Place;Cost
            330;245;Birch ply;3;clean;B2;1,20
            610;300;poplar-ply;3,2 mm;unknown;;2.40
            """);
        List<StockList.Line> lines = lists.preview(table, table.guessed());
        assertThat(lines).hasSize(2).allMatch(StockList.Line::isGood);
        int before = rack.count(RackFilter.inRack());
        lists.takeIn(BookingKey.fresh(), lines, "Robin");
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(before + 2);
        Sheet second = rack.list(RackFilter.inRack(), 0, 1).getFirst();
        assertThat(second.facts().past()).isEqualTo(BoardContamination.UNKNOWN);
        assertThat(second.facts().nominal().mm()).isEqualTo(3.2);
        assertThat(second.cost().amount()).isEqualByComparingTo("2.40");
    }

    @Test
    void each_fault_is_told_by_its_line_and_nothing_is_taken_in() {
        StockList.Table table = lists.read("""
            width,height,material,outline,past
            330,x,,,clean
            ,,,"0,0 100,100 100,0 0,100",clean
            100,100,granite,,clean
            100,100,,,clean
            """);
        List<StockList.Line> lines = lists.preview(table, table.guessed());
        assertThat(lines.get(0).faults()).extracting(f -> f.key()).contains("sheets.list.notanumber");
        assertThat(lines.get(1).faults()).extracting(f -> f.key()).contains("geometry.outline.crosses");
        assertThat(lines.get(2).faults()).extracting(f -> f.key()).contains("sheets.material.unknown");
        assertThat(lines.get(3).isGood()).isTrue();
        int before = rack.count(RackFilter.inRack());
        assertThatThrownBy(() -> lists.takeIn(BookingKey.fresh(), lines, "Robin"))
                .isInstanceOf(Refused.class);
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(before);
    }

    @Test
    void what_is_written_reads_back_the_same() {
        Outline odd = Outline.of(
                List.of(
                        new Point(0, 0),
                        new Point(300, 0),
                        new Point(300, 200),
                        new Point(120, 200.5),
                        new Point(0, 90)),
                List.of(List.of(new Point(20, 20), new Point(40, 20), new Point(30, 40))));
        rack.add(
                odd,
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)).at("=B2"),
                Money.of("1.00", "EUR"),
                "Robin");
        String text = lists.write();
        assertThat(text).contains("'=B2");
        StockList.Table table = lists.read(text);
        List<StockList.Line> lines = lists.preview(table, table.guessed());
        assertThat(lines).allMatch(StockList.Line::isGood);
        assertThat(lines.getFirst().outline()).contains(odd);
        assertThat(lines.getFirst().facts().orElseThrow().place()).isEqualTo("=B2");
    }

    @Test
    void the_code_on_a_label_opens_the_sheet() throws Exception {
        SheetId id = rack.add(
                Outline.rectangle(Size.mm(330, 245)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)).at("Ł2 Щ Ψ"),
                Money.of("1.00", "EUR"),
                "Robin");
        byte[] pdf = labels.pdf(List.of(rack.find(id).orElseThrow()), "http://rack.example");
        assertThat(ReadPaper.text(pdf)).contains("Ł2 Щ Ψ");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            var picture = new PDFRenderer(document).renderImageWithDPI(0, 300);
            String read = new QRCodeReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(picture))))
                    .getText();
            assertThat(read).isEqualTo("http://rack.example/sheets/number/" + id);
        }
    }

    @Test
    void on_a_walk_along_the_rack_what_is_not_ticked_is_missing() {
        BoardFacts birch = BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3));
        SheetId found = rack.add(Outline.rectangle(Size.mm(330, 245)), birch, Money.of("1.00", "EUR"), "Robin");
        SheetId lost = rack.add(Outline.rectangle(Size.mm(200, 145)), birch, Money.of("1.00", "EUR"), "Robin");
        taking.start("Robin");
        taking.seen(found, "Robin");
        taking.seen(found, "Kim");
        assertThat(taking.missing(0, 1000)).contains(lost).doesNotContain(found);
        SheetId fresh = rack.add(Outline.rectangle(Size.mm(210, 150)), birch, Money.of("1.00", "EUR"), "Robin");
        assertThat(taking.missing(0, 1000))
                .as("a piece entered on the way is there")
                .doesNotContain(fresh);
        StockTaking.Outcome outcome = taking.finish(true, "Robin");
        assertThat(outcome.missing()).contains(lost).doesNotContain(found, fresh);
        assertThat(outcome.fresh()).containsExactly(fresh);
        assertThat(rack.find(fresh).orElseThrow().state()).isEqualTo(SheetState.FREE);
        assertThat(rack.find(lost).orElseThrow().state()).isEqualTo(SheetState.SCRAPPED);
        assertThat(rack.find(found).orElseThrow().state()).isEqualTo(SheetState.FREE);
        taking.start("Robin");
        taking.seen(lost, "Robin");
        assertThat(rack.find(lost).orElseThrow().state()).isEqualTo(SheetState.FREE);
    }
}
