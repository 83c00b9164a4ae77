package puzzleworkshop.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.list.RackByPhoto;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class MeasuredOutlinesIT {

    private static final BoardFacts BIRCH = BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3));

    @Autowired
    MeasuredOutlines measured;

    @Autowired
    SheetRack rack;

    @Autowired
    SheetFinder finder;

    @Autowired
    RackByPhoto byPhoto;

    @Test
    void a_measured_board_is_offered_only_for_what_surely_fits_until_the_ruler_agrees() {
        Outline seen = Outline.rectangle(Size.mm(300.3, 200.3));
        SheetId sheet = measured.add(seen, 0.4, BIRCH, Money.of("1.00", "EUR"), "Robin");
        BlankWish wish = BlankWish.of(Size.mm(300, 200), Length.mm(3));

        assertThat(rack.find(sheet).orElseThrow().outline().bounds().width().mm())
                .isCloseTo(299.5, within(1e-6));
        assertThat(measured.unconfirmed(sheet)).contains(Length.mm(0.4));
        assertThat(finder.suggest(wish).stream().map(s -> s.sheet().id())).doesNotContain(sheet);

        measured.confirm(sheet, "Robin");

        assertThat(rack.find(sheet).orElseThrow().outline().bounds().width().mm())
                .isCloseTo(300.3, within(1e-6));
        assertThat(measured.unconfirmed(sheet)).isEmpty();
        assertThat(finder.suggest(wish).stream().map(s -> s.sheet().id())).contains(sheet);
        assertThatThrownBy(() -> measured.confirm(sheet, "Robin")).isInstanceOf(Refused.class);
    }

    @Test
    void each_printer_has_its_own_line_the_last_confirmed_is_proposed_and_a_wrong_print_is_refused() {
        assertThatThrownBy(() -> measured.confirmPrint("Office", Length.mm(88), "Robin"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> measured.confirmPrint("x".repeat(61), Length.mm(100), "Robin"))
                .isInstanceOf(Refused.class);
        measured.confirmPrint("Office", Length.mm(97), "Robin");
        measured.confirmPrint("Copy shop", Length.mm(100), "Robin");
        assertThat(measured.printers())
                .extracting(MeasuredOutlines.Printer::name)
                .contains("Office", "Copy shop");
        assertThat(measured.printers().stream()
                        .filter(printer -> printer.name().equals("Office"))
                        .map(MeasuredOutlines.Printer::scale))
                .singleElement()
                .satisfies(scale -> assertThat(scale).isCloseTo(0.97, within(1e-12)));
        measured.confirmPrint("Office", Length.mm(98), "Robin");
        assertThat(measured.printers().stream().filter(p -> p.name().equals("Office")))
                .hasSize(1);
    }

    /** A board as its photo gave it is known again, turned over, by its outline as measured and not as shrunk. */
    @Test
    void a_photo_of_the_rack_names_the_sheet_it_shows_and_calls_another_one_new() {
        List<Point> elbow = List.of(
                new Point(0, 0),
                new Point(260, 0),
                new Point(260, 90),
                new Point(150, 90),
                new Point(150, 171),
                new Point(0, 171));
        SheetId sheet = measured.add(Outline.of(elbow), 0.8, BIRCH, Money.of("1.00", "EUR"), "Robin");
        List<Point> over = elbow.stream()
                .map(s -> new Point(-s.yMm() - 5, s.xMm() + 9))
                .toList()
                .reversed();
        List<Point> flipped =
                elbow.stream().map(s -> new Point(400 - s.xMm(), s.yMm())).toList();
        List<Point> other = List.of(new Point(0, 0), new Point(263, 0), new Point(230, 88), new Point(0, 120));
        FoundBoards photo = new FoundBoards(
                Stream.of(over, flipped, other)
                        .map(ring -> new FoundBoard(ring, List.of(), 0.5, 4, 4, 0.1, 3))
                        .toList(),
                List.of(),
                null);
        List<RackByPhoto.Recognised> found = byPhoto.in(photo);
        assertThat(found.stream().filter(board -> board.sheets().contains(sheet)))
                .as("one of two equal boards is it, the other is new")
                .hasSize(1);
        assertThat(found.get(2).sheets()).isEmpty();
    }
}
