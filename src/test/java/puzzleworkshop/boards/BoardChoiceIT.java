package puzzleworkshop.boards;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@Transactional
@DisplayNameGeneration(ReplaceUnderscores.class)
class BoardChoiceIT {

    @Autowired
    BoardChoice choice;

    @Autowired
    SheetRack rack;

    @Test
    void what_lies_in_the_rack_comes_first_and_the_kind_with_most_sheets_at_the_head() {
        BoardFacts thick = BoardFacts.clean("birch-ply", Grade.CONSTRUCTION, Length.mm(4));
        BoardFacts usual = BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3));
        add(thick);
        add(usual);
        add(usual);
        assertThat(choice.kinds())
                .startsWith(BoardKind.of(usual), BoardKind.of(thick))
                .doesNotHaveDuplicates();
    }

    @Test
    void a_sheet_that_was_thrown_away_is_no_choice() {
        BoardFacts odd = BoardFacts.clean("birch-ply", Grade.GENERAL, Length.mm(7));
        SheetId sheet = add(odd);
        assertThat(choice.kinds()).contains(BoardKind.of(odd));
        rack.scrap(sheet, "split", "Robin");
        assertThat(choice.kinds()).isNotEmpty().doesNotContain(BoardKind.of(odd));
    }

    private SheetId add(BoardFacts facts) {
        return rack.add(Outline.rectangle(Size.mm(400, 300)), facts, Money.of("1.00", "EUR"), "Robin");
    }
}
