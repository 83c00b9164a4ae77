package puzzleworkshop.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.find.SheetFinder;
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
    void no_photo_is_measured_before_the_printed_line_was_and_a_wrong_print_is_refused() {
        if (measured.printedLine().isEmpty()) {
            assertThatThrownBy(measured::printScale).isInstanceOf(Refused.class);
        }
        assertThatThrownBy(() -> measured.confirmPrint(Length.mm(88), "Robin")).isInstanceOf(Refused.class);
        measured.confirmPrint(Length.mm(97), "Robin");
        assertThat(measured.printScale()).isCloseTo(0.97, within(1e-12));
        measured.confirmPrint(Length.mm(100), "Robin");
        assertThat(measured.printScale()).isEqualTo(1);
    }
}
