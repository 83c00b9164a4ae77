package puzzleworkshop.sheets.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Currency;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.ImpossibleOutline;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@Transactional
@DisplayNameGeneration(ReplaceUnderscores.class)
class BoardLimitsIT {

    @Autowired
    SheetRack rack;

    @Autowired
    RackSettings settings;

    @Autowired
    Machines machines;

    @Test
    void a_board_beyond_every_bed_is_refused_with_the_spot_unless_boards_are_sawn_first() {
        machines.save(Machine.usual("Laser", Currency.getInstance("EUR")));
        RackRules rules = settings.rules();
        assertThat(rules.sawnFirst())
                .as("a new workshop may enter the whole boards it owns")
                .isTrue();
        save(rules, false);
        assertThatThrownBy(() -> add(600, 400)).isInstanceOf(ImpossibleOutline.class);
        assertThat(add(390, 400)).isNotNull();

        save(rules, true);
        assertThat(settings.rules().sawnFirst()).isTrue();
        assertThat(add(600, 400)).isNotNull();
        assertThatThrownBy(() -> add(1300, 400)).isInstanceOf(ImpossibleOutline.class);
    }

    private void save(RackRules rules, boolean sawnFirst) {
        settings.save(new RackRules(
                Size.mm(1220, 610),
                rules.kerf(),
                rules.mostBow(),
                rules.thicknessSlack(),
                rules.offcutCost(),
                rules.share(),
                sawnFirst));
    }

    private SheetId add(double width, double height) {
        return rack.add(
                Outline.rectangle(Size.mm(width, height)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("1.00", "EUR"),
                "Robin");
    }
}
