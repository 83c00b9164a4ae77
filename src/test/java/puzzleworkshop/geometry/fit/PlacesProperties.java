package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** JTS {@code covers} judges every place found; a grid judges what is said not to fit and which corners are found. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PlacesProperties {

    private static final long SEED = 300;

    @Test
    void jts_confirms_the_places_found_in_ten_thousand_random_cases() {
        RandomOutlines outlines = new RandomOutlines(SEED);
        Random random = new Random(Seeds.from(SEED));
        int fitting = 0;
        for (int i = 0; i < 10_000; i++) {
            Outline outline = outlines.next(true);
            Size size = blank(outline, random);
            double degrees = 180 * random.nextDouble();
            List<Placement> corners = RectanglePlaces.corners(outline, size, degrees);
            PreparedGeometry judge = PreparedGeometryFactory.prepare(outline.free());
            fitting += corners.isEmpty() ? 0 : 1;
            assertThat(corners)
                    .as("seed %d case %d: %s at %s in %s", SEED, i, size, degrees, outline)
                    .allMatch(place -> judge.covers(place.polygon(size, 2 * Outline.TOLERANCE)));
            assertThat(RectanglePlaces.fitsAt(outline, size, degrees)).isEqualTo(!corners.isEmpty());
        }
        assertThat(fitting).isBetween(2_000, 9_000);
    }

    @Test
    void every_place_that_a_grid_finds_lies_within_the_hull_of_the_corners_found() {
        RandomOutlines outlines = new RandomOutlines(SEED + 1);
        Random random = new Random(Seeds.from(SEED + 1));
        for (int i = 0; i < 600; i++) {
            Outline outline = outlines.next(true);
            Size size = blank(outline, random);
            double degrees = random.nextInt(4) == 0 ? 0 : random.nextInt(180);
            PreparedGeometry judge = PreparedGeometryFactory.prepare(outline.free());
            List<Placement> corners = RectanglePlaces.corners(outline, size, degrees);
            for (Placement place : grid(outline, degrees, 9)) {
                if (judge.covers(place.polygon(size, 0))) {
                    assertThat(insideHull(corners, place))
                            .as("seed %d case %d: %s of %s in %s", SEED + 1, i, place, size, outline)
                            .isTrue();
                }
            }
        }
    }

    @Test
    void where_no_place_is_found_at_any_angle_a_grid_finds_none_either() {
        RandomOutlines outlines = new RandomOutlines(SEED + 2);
        Random random = new Random(Seeds.from(SEED + 2));
        int refused = 0;
        for (int i = 0; i < 120; i++) {
            Outline outline = outlines.next(true);
            Size size = blank(outline, random);
            if (RectanglePlaces.fits(outline, size)) {
                continue;
            }
            refused++;
            PreparedGeometry judge = PreparedGeometryFactory.prepare(outline.free());
            for (int degrees = 0; degrees < 180; degrees += 4) {
                for (Placement place : grid(outline, degrees, 6)) {
                    assertThat(judge.covers(place.polygon(size, 0)))
                            .as("seed %d case %d: %s of %s in %s", SEED + 2, i, place, size, outline)
                            .isFalse();
                }
            }
        }
        assertThat(refused).isPositive();
    }

    @Test
    void board_less_blank_is_what_remains() {
        RandomOutlines outlines = new RandomOutlines(SEED + 3);
        Random random = new Random(Seeds.from(SEED + 3));
        for (int i = 0; i < 300; i++) {
            Outline outline = outlines.next(true);
            Size size = blank(outline, random);
            Optional<BestSheets.Ranked> best =
                    BestSheets.finest(Profile.of(outline, UsefulSizes.common()), size, null, UsefulSizes.common());
            if (best.isPresent()) {
                Remainder rest = Remainder.after(outline, size, best.get().place(), Length.ZERO, UsefulSizes.common());
                double left = rest.parts().stream()
                        .mapToDouble(p -> p.outline().area().mm2())
                        .sum();
                assertThat(left + size.area().mm2())
                        .as("seed %d case %d", SEED + 3, i)
                        .isCloseTo(outline.area().mm2(), org.assertj.core.api.Assertions.within(4.0));
                PreparedGeometry judge = PreparedGeometryFactory.prepare(outline.free());
                rest.parts()
                        .forEach(part -> part.useful()
                                .forEach(useful -> assertThat(judge.covers(
                                                useful.placement().polygon(useful.size(), 2 * Outline.TOLERANCE)))
                                        .isTrue()));
            }
        }
    }

    private static Size blank(Outline outline, Random random) {
        double reach = outline.bounds().longerSide().mm();
        double w = reach * (0.1 + 0.6 * random.nextDouble());
        return Size.mm(w, w * (0.3 + 0.7 * random.nextDouble()));
    }

    private static List<Placement> grid(Outline outline, double degrees, double step) {
        List<Placement> grid = new ArrayList<>();
        Point origin = outline.origin();
        double reach = Math.hypot(
                outline.bounds().width().mm(), outline.bounds().height().mm());
        for (double y = origin.yMm() + 0.37; y < origin.yMm() + reach; y += step) {
            for (double x = origin.xMm() + 0.41; x < origin.xMm() + reach; x += step) {
                grid.add(new Placement(x, y, degrees));
            }
        }
        return grid;
    }

    private static boolean insideHull(List<Placement> corners, Placement place) {
        List<Point> hull =
                ConvexHull.of(corners.stream().map(c -> new Point(c.x(), c.y())).toList());
        for (int k = 0; k < hull.size(); k++) {
            Point a = hull.get(k);
            Point b = hull.get((k + 1) % hull.size());
            double turn = (b.xMm() - a.xMm()) * (place.y() - a.yMm()) - (b.yMm() - a.yMm()) * (place.x() - a.xMm());
            if (turn < -0.01 * a.distanceTo(b)) {
                return false;
            }
        }
        return !hull.isEmpty();
    }
}
