package puzzleworkshop.cutfiles.writing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ShortTravelTest {

    private static final GeometryFactory JTS = new GeometryFactory();

    private static CurvePath rectangle(double x, double y, double width, double height) {
        return CurvePath.through(
                List.of(
                        Point.of(x, y),
                        Point.of(x + width, y),
                        Point.of(x + width, y + height),
                        Point.of(x, y + height),
                        Point.of(x, y)),
                true);
    }

    @Test
    void an_outline_begins_where_the_last_inner_line_ended() {
        CurvePath outline = rectangle(0, 0, 300, 200);
        CurvePath inner = CurvePath.through(List.of(Point.of(0, 120), Point.of(300, 120)), false);
        CutPlan plan = CutPlan.of("one line", List.of(inner), List.of(outline), CutPlan.Sequence.INNER_FIRST);
        assertThat(plan.travelMm()).isCloseTo(120, within(1e-9)); // from the origin to the line, then none
        CurvePath begun = plan.outline().getFirst();
        assertThat(begun.start()).isEqualTo(Point.of(300, 120));
        assertThat(begun.closed()).isTrue();
        assertThat(begun.lengthMm()).isCloseTo(1000, within(1e-9));
        assertThat(Math.abs(begun.signedAreaMm2())).isCloseTo(300 * 200, within(1e-6));
    }

    /** The way from the last inner line to the outline against the distance of JTS 1.20 (DistanceOp). */
    @Test
    void the_way_to_a_puzzles_outline_is_the_distance_between_them() {
        for (int seed = 1; seed <= 20; seed++) {
            CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(300, 200), new PieceGrid(6, 4), seed));
            CutPlan plan = pattern.plan(CutPlan.Sequence.INNER_FIRST);
            Point end = plan.inner().getLast().end();
            Coordinate[] rim = plan.outline().getFirst().flattened(0.001).stream()
                    .map(p -> new Coordinate(p.xMm(), p.yMm()))
                    .toArray(Coordinate[]::new);
            double nearest = DistanceOp.distance(
                    JTS.createPoint(new Coordinate(end.xMm(), end.yMm())), JTS.createLineString(rim));
            assertThat(end.distanceTo(plan.outline().getFirst().start()))
                    .as("seed %d", seed)
                    .isCloseTo(nearest, within(0.01));
            assertThat(plan.outline().getFirst().lengthMm())
                    .isCloseTo(pattern.outline().lengthMm(), within(1e-6));
        }
    }

    @Test
    void closed_lines_begun_elsewhere_never_make_the_way_longer() {
        Random random = new Random(20261129);
        for (int i = 0; i < 200; i++) {
            List<CurvePath> lines = random.doubles(12, 0, 280)
                    .mapToObj(x -> rectangle(x, random.nextDouble() * 180, 5 + x / 10, 12))
                    .toList();
            Point origin = Point.of(0, 0);
            List<CurvePath> ordered = ShortTravel.order(lines, origin);
            assertThat(ordered).hasSize(12);
            // the same order with every line begun where it was drawn
            double drawn = 0;
            Point at = origin;
            for (CurvePath line : ordered) {
                Point corner = lines.stream()
                        .filter(each -> each.bounds().equals(line.bounds()))
                        .findFirst()
                        .orElseThrow()
                        .start();
                drawn += at.distanceTo(corner);
                at = corner;
            }
            assertThat(ShortTravel.travel(ordered, List.of(), origin))
                    .as("case %d", i)
                    .isLessThanOrEqualTo(drawn + 1e-6);
        }
    }

    /**
     * The order against the shortest of all, found by dynamic programming over sets of lines and the end each is left at
     * (Held and Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962) 196–210).
     */
    @Test
    void the_way_is_near_the_shortest_of_all_orders() {
        Random random = new Random(20261129);
        double ours = 0;
        double shortest = 0;
        for (int i = 0; i < 100; i++) {
            List<CurvePath> lines = new java.util.ArrayList<>();
            for (int n = 0; n < 8; n++) {
                lines.add(CurvePath.through(List.of(anywhere(random), anywhere(random)), false));
            }
            Point origin = Point.of(0, 0);
            double way = ShortTravel.travel(ShortTravel.order(lines, origin), List.of(), origin);
            double least = shortest(lines, origin);
            assertThat(way).as("case %d", i).isGreaterThanOrEqualTo(least - 1e-9);
            ours += way;
            shortest += least;
        }
        assertThat(ours / shortest).isLessThan(1.12);
    }

    private static Point anywhere(Random random) {
        return Point.of(random.nextDouble() * 300, random.nextDouble() * 200);
    }

    private static double shortest(List<CurvePath> lines, Point from) {
        int n = lines.size();
        double[][] best = new double[1 << n][2 * n];
        for (double[] row : best) {
            java.util.Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        double least = Double.POSITIVE_INFINITY;
        for (int set = 0; set < 1 << n; set++) {
            for (int last = -1; last < 2 * n; last++) {
                if (last < 0 != (set == 0)) {
                    continue;
                }
                double so = last < 0 ? 0 : best[set][last];
                Point at = last < 0
                        ? from
                        : last % 2 == 0
                                ? lines.get(last / 2).end()
                                : lines.get(last / 2).start();
                if (set == (1 << n) - 1) {
                    least = Math.min(least, so);
                }
                for (int next = 0; next < 2 * n && so < Double.POSITIVE_INFINITY; next++) {
                    if ((set & 1 << next / 2) == 0) {
                        Point start = next % 2 == 0
                                ? lines.get(next / 2).start()
                                : lines.get(next / 2).end();
                        int with = set | 1 << next / 2;
                        best[with][next] = Math.min(best[with][next], so + at.distanceTo(start));
                    }
                }
            }
        }
        return least;
    }
}
