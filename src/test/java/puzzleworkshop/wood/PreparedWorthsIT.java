package puzzleworkshop.wood;

import static org.assertj.core.api.Assertions.assertThat;

import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class PreparedWorthsIT {

    @Autowired
    PreparedWorths prepared;

    @Autowired
    SheetRack rack;

    @Autowired
    Workshop workshop;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
        prepared.prepare();
    }

    @Test
    void worths_are_prepared_once_after_a_change_of_the_rack_and_not_again_without_one() {
        assertThat(prepared.prepare()).isFalse();
        rack.add(
                Outline.rectangle(Size.mm(400, 300)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of(new java.math.BigDecimal("4.00"), workshop.currency()),
                "Robin");
        assertThat(prepared.prepare()).isTrue();
        assertThat(prepared.prepare()).isFalse();
    }
}
