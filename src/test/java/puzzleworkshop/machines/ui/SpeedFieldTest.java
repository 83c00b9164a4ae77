package puzzleworkshop.machines.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.vaadin.flow.component.textfield.NumberField;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.support.MetricHouse;
import puzzleworkshop.support.Seeds;

/** A speed that is only shown stays what it is; what is typed in mm/min is said in mm/s as well. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SpeedFieldTest {

    /** One for all: every text of the house is read for it. */
    private static final Formatter FIGURES = MetricHouse.figures();

    @Test
    void a_speed_nobody_touches_comes_back_to_the_last_bit() {
        long seed = Seeds.from(60);
        Random random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            Speed speed = random.nextInt(3) == 0
                    ? Speed.mmPerMinute(5 * (1 + random.nextInt(2000)))
                    : Speed.mmPerSecond(0.01 + random.nextDouble() * 150);
            SpeedField field = field();
            field.setValue(speed);
            assertThat(field.getValue()).as("seed %d, %s", seed, speed).isEqualTo(speed);
            inside(field).setInvalid(true);
            inside(field).setReadOnly(true);
            assertThat(field.getValue()).as("seed %d, %s", seed, speed).isEqualTo(speed);
        }
    }

    /** 300 mm/min are 5 mm/s: a minute has 60 seconds. */
    @Test
    void what_is_typed_counts_and_its_other_unit_stands_below() {
        SpeedField field = field();
        field.setValue(Speed.mmPerSecond(100.0 / 3));
        assertThat(inside(field).getValue()).as("shown in few digits").isEqualTo(2000);
        inside(field).setValue(300.0);
        assertThat(field.getValue().mmPerSecond()).isCloseTo(5, within(1e-12));
        assertThat(inside(field).getHelperText()).contains("5 mm/s");
        inside(field).setValue(2000.0);
        assertThat(field.getValue())
                .as("the old figure typed again is no change")
                .isEqualTo(Speed.mmPerSecond(100.0 / 3));
    }

    @Test
    void what_is_no_speed_is_none() {
        SpeedField field = field();
        field.setValue(Speed.mmPerMinute(300));
        inside(field).setValue(0.0);
        assertThat(field.getValue()).isNull();
        assertThat(inside(field).getHelperText()).isEmpty();
        inside(field).setValue(null);
        assertThat(field.getValue()).isNull();
        inside(field).setValue(-4.0);
        assertThat(field.getValue()).isNull();
    }

    private static NumberField inside(SpeedField field) {
        return (NumberField) field.getChildren().findFirst().orElseThrow();
    }

    private static SpeedField field() {
        return new SpeedField("Speed", FIGURES);
    }
}
