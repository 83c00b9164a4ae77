package puzzleworkshop.machines;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Point2D;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MachineAxesTest {

    private static final Size BED = Size.mm(400, 300);

    @Test
    void the_commonest_machine_counts_from_the_front_left() {
        assertThat(MachineAxes.USUAL.onBed(10, 20, BED)).isEqualTo(new Point(10, 280));
    }

    @Test
    void a_machine_that_homes_at_the_back_right_shows_numbers_below_zero() {
        MachineAxes homed = new MachineAxes(BedCorner.BACK_RIGHT, true, true, MachineAxes.Unit.MM);
        assertThat(homed.onBed(-390, -20, BED)).isEqualTo(new Point(10, 20));
    }

    @Test
    void inches_are_counted_as_inches() {
        MachineAxes inch = new MachineAxes(BedCorner.BACK_LEFT, true, false, MachineAxes.Unit.INCH);
        Point seen = inch.onBed(2, 3, BED);
        assertThat(seen.xMm()).isEqualTo(50.8, within(1e-9));
        assertThat(seen.yMm()).isEqualTo(76.2, within(1e-9));
    }

    @Test
    void writing_for_the_machine_undoes_reading_from_it_for_every_corner_and_direction() {
        for (BedCorner corner : BedCorner.values()) {
            for (int way = 0; way < 4; way++) {
                MachineAxes axes = new MachineAxes(corner, (way & 1) == 0, (way & 2) == 0, MachineAxes.Unit.MM);
                Point bed = axes.onBed(37.5, -12.25, BED);
                Point2D back = axes.toMachine(BED).transform(new Point2D.Double(bed.xMm(), bed.yMm()), null);
                assertThat(back.getX()).isEqualTo(37.5, within(1e-9));
                assertThat(back.getY()).isEqualTo(-12.25, within(1e-9));
            }
        }
    }

    /** An inch is 25.4 mm (international yard and pound agreement, 1959). */
    @Test
    void one_speed_is_said_in_each_unit() {
        Speed five = Speed.mmPerSecond(5);
        assertThat(FeedUnit.MM_PER_MINUTE.of(five)).isEqualTo(300, within(1e-9));
        assertThat(FeedUnit.MM_PER_SECOND.of(five)).isEqualTo(5);
        assertThat(FeedUnit.INCH_PER_MINUTE.of(five)).isEqualTo(11.811, within(0.001));
    }
}
