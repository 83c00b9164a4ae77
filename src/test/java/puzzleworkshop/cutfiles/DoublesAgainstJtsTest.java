package puzzleworkshop.cutfiles;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * What is left when each double is kept once, against the union of the same lines by JTS 1.20 (UnaryUnionOp, which
 * dissolves what lies on one another). Lines run along a lattice, so that both mean the same by 'on one another'.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DoublesAgainstJtsTest {

    private static final int CASES = 300;

    @Test
    void the_length_kept_is_the_length_of_the_union() {
        long seed = 20261129;
        Random random = new Random(seed);
        GeometryFactory jts = new GeometryFactory();
        int withDoubles = 0;
        for (int i = 0; i < CASES; i++) {
            List<CurvePath> lines = new ArrayList<>();
            List<LineString> same = new ArrayList<>();
            for (int n = 2 + random.nextInt(25); n > 0; n--) {
                List<Point> points = new ArrayList<>();
                int x = 2 * random.nextInt(12);
                int y = 2 * random.nextInt(12);
                points.add(Point.of(x, y));
                for (int k = 1 + random.nextInt(3); k > 0; k--) {
                    // no way back along itself: each leg turns by a right angle
                    boolean across = points.size() % 2 == 1;
                    int step = (1 + random.nextInt(6)) * (random.nextBoolean() ? 2 : -2);
                    x += across ? step : 0;
                    y += across ? 0 : step;
                    points.add(Point.of(x, y));
                }
                lines.add(CurvePath.through(points, false));
                same.add(jts.createLineString(points.stream()
                        .map(p -> new Coordinate(p.xMm(), p.yMm()))
                        .toArray(Coordinate[]::new)));
            }
            Inspection found = CutInspector.inspect(
                    new DrawnFile("lattice", DrawnFile.Kind.SVG, lines, List.of(), Optional.empty(), List.of()));
            double union = UnaryUnionOp.union(same).getLength();
            assertThat(found.cleanedLengthMm())
                    .as("seed %d, case %d", seed, i)
                    .isCloseTo(union, within(0.01 + 0.05 * lines.size()));
            withDoubles += found.hasDoubles() ? 1 : 0;
        }
        assertThat(withDoubles).isGreaterThan(CASES / 2);
    }
}
