package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** The fence as a polygon, looked at by JTS. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LocatingJigTest {

    private static final GeometryFactory JTS = new GeometryFactory();

    @Test
    void any_fence_is_one_simple_piece_on_the_bed_that_touches_its_blanks_and_covers_none_of_them() {
        Random random = new Random(Seeds.from(141));
        for (int i = 0; i < 300; i++) {
            Size bed = Size.mm(300 + random.nextInt(700), 300 + random.nextInt(500));
            double arm = 22 + random.nextInt(50);
            List<Size> blanks = new ArrayList<>();
            for (int k = 0; k <= random.nextInt(4); k++) {
                blanks.add(Size.mm(
                        60 + random.nextInt((int) (bed.width().mm() - arm - 60)),
                        60 + random.nextInt((int) (bed.height().mm() - arm - 60))));
            }
            LocatingJig jig = new LocatingJig(bed, Length.mm(arm), blanks);
            Polygon fence = polygon(jig);
            assertThat(fence.isValid()).as("simple").isTrue();
            assertThat(new Envelope(0, bed.width().mm(), 0, bed.height().mm()).contains(fence.getEnvelopeInternal()))
                    .isTrue();
            for (Size blank : blanks) {
                Polygon lies = (Polygon) JTS.toGeometry(new Envelope(
                        jig.corner().xMm(),
                        jig.corner().xMm() + blank.width().mm(),
                        jig.corner().yMm() - blank.height().mm(),
                        jig.corner().yMm()));
                assertThat(fence.intersection(lies).getArea()).isEqualTo(0, within(0.05));
                assertThat(fence.distance(lies)).isEqualTo(0, within(1e-6));
            }
        }
    }

    /** Two arms less two half circles of 12 mm and three quarters of one of 3 mm: area by school geometry. */
    @Test
    void its_area_is_the_arms_less_the_finger_holes_and_the_relief() {
        LocatingJig jig = new LocatingJig(Size.mm(400, 400), Length.mm(40), List.of(Size.mm(220, 170)));
        double arms = 40 * (220 + 15 + 40) + 40 * (170 + 15);
        double holes = Math.PI * 12 * 12 + 0.75 * Math.PI * 9;
        assertThat(polygon(jig).getArea()).isEqualTo(arms - holes, within(2.0));
        assertThat(jig.marking("x").inner()).isNotEmpty();
    }

    @Test
    void a_blank_that_finds_no_room_on_the_bed_is_refused() {
        assertThatThrownBy(() -> new LocatingJig(Size.mm(400, 400), Length.mm(40), List.of(Size.mm(380, 200))))
                .isInstanceOf(Refused.class);
    }

    private static Polygon polygon(LocatingJig jig) {
        List<Coordinate> ring = new ArrayList<>();
        for (Point p : jig.outline().flattened(0.01)) {
            ring.add(new Coordinate(p.xMm(), p.yMm()));
        }
        if (!ring.getFirst().equals2D(ring.getLast())) {
            ring.add(ring.getFirst());
        }
        return JTS.createPolygon(ring.toArray(Coordinate[]::new));
    }
}
