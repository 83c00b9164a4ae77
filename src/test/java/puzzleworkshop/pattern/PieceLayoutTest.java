package puzzleworkshop.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.pattern.shapes.AlikeShapes;
import puzzleworkshop.support.Seeds;

/** Whatever the layout and outer edge, the same promises; JTS and brute force are the judges. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PieceLayoutTest {

    private static final GeometryFactory JTS = new GeometryFactory();
    private static final PatternSpec PLAIN = PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 31);

    private static void assertPromises(CutPattern pattern, String about) {
        assertThat(JtsLines.crossings(pattern)).as(about).isZero();
        assertThat(JtsLines.doubled(pattern)).as(about).isZero();
        double inside = Math.abs(pattern.outline().signedAreaMm2());
        assertThat(pattern.pieces().stream().mapToDouble(Piece::areaMm2).sum())
                .as(about)
                .isCloseTo(inside, within(inside * 1e-9));
        // no loose ends, nothing open, nothing cut twice: by the reader of foreign files
        assertThat(CutInspector.inspect(new DrawnFile(
                                "drawn",
                                DrawnFile.Kind.SVG,
                                pattern.plan(CutPlan.Sequence.INNER_FIRST).inOrder(),
                                List.of(),
                                Optional.empty(),
                                List.of()))
                        .findings())
                .as(about)
                .isEmpty();
        double plain =
                pattern.spec().grid().pieceSize(pattern.spec().size()).area().mm2();
        assertThat(pattern.pieces()).as(about).allMatch(piece -> piece.areaMm2() > plain / 4);
    }

    private static Polygon polygon(CurvePath path) {
        return JTS.createPolygon(path.flattened(0.005).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new));
    }

    private static void assertKeptWhole(CutPattern pattern, String about) {
        for (KeptWhole place : pattern.spec().layout().keptWhole()) {
            Polygon oval = polygon(place.outline());
            assertThat(pattern.pieces().stream()
                            .filter(piece -> polygon(piece.outline()).covers(oval))
                            .count())
                    .as(about + ": the place lies in one piece")
                    .isOne();
        }
    }

    /** A large place whose edge is cut while the lines go on within it: no line crosses the edge, and cells lie on both sides. */
    @ParameterizedTest
    @EnumSource(CutStyle.class)
    void lines_run_along_the_edge_of_a_divided_place_and_go_on_within_it(CutStyle style) {
        for (long seed : new long[] {3, 31, 77}) {
            CurvePath edge = new KeptWhole(Point.of(118, 92), 52, 44).outline();
            PersonalShape divided = new PersonalShape("lake", edge, true);
            CutPattern pattern =
                    PatternMaker.make(PLAIN.withSeed(seed).withStyle(style).withShapes(List.of(divided)));
            String about = style + " " + seed;
            assertPromises(pattern, about);
            // an ellipse is the hardest edge to follow: each of its stretches is like three others
            assertThat(pattern.verified().unlikeMm())
                    .as(about)
                    .isGreaterThan(pattern.spec().kerf().mm());
            Polygon lake = polygon(edge);
            long within = pattern.pieces().stream()
                    .filter(piece -> lake.buffer(1).covers(polygon(piece.outline())))
                    .count();
            assertThat(within).as(about + ": pieces within").isGreaterThan(8);
            // bends by which edges are told apart keep within a millimetre of the edge that is followed
            Geometry deep = lake.buffer(-1);
            assertThat(pattern.pieces().stream()
                            .filter(piece -> polygon(piece.outline()).intersects(deep))
                            .count())
                    .as(about + ": no piece lies on both sides")
                    .isEqualTo(within);
            double play = pattern.spec().kerf().mm();
            assertThat(BruteForceLikeness.of(
                                    pattern.inner(),
                                    pattern.outline(),
                                    play,
                                    AlikeShapes.toldApartMm(pattern.spec().kerf()))
                            .alike())
                    .as(about)
                    .isZero();
            assertThat(pattern.spec().shapes().getFirst()).isEqualTo(PersonalShape.kept("lake", divided.outlineText()));
        }
    }

    /** Between two points of the grid, and about one: where the pieces within would be slivers. */
    @Test
    void a_divided_place_too_small_to_be_divided_is_one_piece() {
        for (Point middle : List.of(Point.of(114, 90), Point.of(119, 82))) {
            CurvePath edge = new KeptWhole(middle, 9, 9).outline();
            CutPattern divided = PatternMaker.make(PLAIN.withShapes(List.of(new PersonalShape("sun", edge, true))));
            assertPromises(divided, middle.toString());
            assertThat(divided.pieces())
                    .filteredOn(piece -> piece.shape().equals("sun"))
                    .hasSize(1);
        }
    }

    @ParameterizedTest
    @EnumSource(CutStyle.class)
    void pieces_of_differing_size_keep_all_promises_and_no_two_edges_are_alike(CutStyle style) {
        CutPattern pattern =
                PatternMaker.make(PLAIN.withLayout(PieceLayout.UNEVEN).withStyle(style));
        assertPromises(pattern, style.name());
        assertThat(pattern.pieces()).hasSize(108);
        double least =
                pattern.pieces().stream().mapToDouble(Piece::areaMm2).min().orElseThrow();
        double most =
                pattern.pieces().stream().mapToDouble(Piece::areaMm2).max().orElseThrow();
        assertThat(most / least).isGreaterThan(2);
        assertThat(BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.25)
                        .alike())
                .isZero();
    }

    @ParameterizedTest
    @EnumSource(
            value = PuzzleEdge.Kind.class,
            names = {"ROUND", "HEART"})
    void a_round_and_a_heart_shaped_puzzle_keep_all_promises(PuzzleEdge.Kind kind) {
        PuzzleEdge edge = PuzzleEdge.usual(kind);
        CutPattern pattern = PatternMaker.make(PLAIN.withOutline(edge));
        assertPromises(pattern, kind.name());
        assertThat(Math.abs(pattern.outline().signedAreaMm2()))
                .isCloseTo(edge.share() * 240 * 180, within(0.001 * 240 * 180));
        assertThat(BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.25)
                        .alike())
                .isZero();
        assertThat(pattern.pieces().stream().filter(Piece::atEdge)).isNotEmpty();
    }

    /** Area of an ellipse: π·a·b. */
    @Test
    void a_round_puzzle_is_an_ellipse() {
        CutPattern pattern = PatternMaker.make(PLAIN.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUND)));
        assertThat(Math.abs(pattern.outline().signedAreaMm2())).isCloseTo(Math.PI * 120 * 90, within(10.0));
    }

    @Test
    @Tag("slow")
    void no_line_cuts_a_place_that_is_kept_whole_wherever_it_is() {
        Random random = new Random(Seeds.from(41));
        int made = 0;
        for (int i = 0; i < 40; i++) {
            List<KeptWhole> places = new ArrayList<>();
            for (int n = 0; n <= i % 3; n++) {
                double a = 4 + 14 * random.nextDouble();
                double b = a * (1 + 0.4 * random.nextDouble());
                places.add(new KeptWhole(
                        Point.of(a + random.nextDouble() * (240 - 2 * a), b + random.nextDouble() * (180 - 2 * b)),
                        a,
                        b));
            }
            CutStyle style = CutStyle.values()[i % 3];
            String about = "case " + i + " of seed 41, " + style;
            try {
                CutPattern pattern = PatternMaker.make(
                        PLAIN.withSeed(i).withStyle(style).withLayout(new PieceLayout(i % 2 == 0, places)));
                assertPromises(pattern, about);
                assertKeptWhole(pattern, about);
                made++;
            } catch (Refused refused) {
                assertThat(refused.sentence().key())
                        .as(about)
                        .isIn("pattern.kept.no_room", "pattern.kept.too_large", "pattern.no_room");
            }
        }
        assertThat(made).isGreaterThan(35);
    }

    @Test
    @Tag("slow")
    void all_of_it_together_in_any_size_and_grid() {
        Random random = new Random(Seeds.from(43));
        int made = 0;
        for (int i = 0; i < 60; i++) {
            double width = 150 + 250 * random.nextDouble();
            Size size = Size.mm(width, width * (0.7 + 0.3 * random.nextDouble()));
            PieceGrid grid = PieceGrid.byPieceSide(size, Length.mm(16 + 20 * random.nextDouble()));
            PuzzleEdge.Kind kind = i % 3 == 0 ? PuzzleEdge.Kind.HEART : PuzzleEdge.Kind.ROUND;
            PatternSpec spec = PatternSpec.of(size, grid, i)
                    .withStyle(CutStyle.values()[i / 3 % 3])
                    .withOutline(PuzzleEdge.usual(kind))
                    .withLayout(new PieceLayout(
                            i % 2 == 0,
                            List.of(new KeptWhole(
                                    Point.of(0.35 * width, 0.42 * size.height().mm()), 10, 13))));
            if (i % 4 == 0) {
                spec = spec.withShapes(List.of(PersonalShapes.heart(
                        Point.of(0.62 * width, 0.5 * size.height().mm()), Length.mm(40))));
            }
            String about = "case " + i + " of seed 43, " + spec;
            try {
                CutPattern pattern = PatternMaker.make(spec);
                assertPromises(pattern, about);
                assertKeptWhole(pattern, about);
                made++;
            } catch (Refused refused) {
                assertThat(refused.sentence().key())
                        .as(about)
                        .isIn(
                                "pattern.kept.no_room",
                                "pattern.kept.too_large",
                                "pattern.no_room",
                                "pattern.outline.no_room",
                                "pattern.shape.no_room",
                                "pattern.shape.at_edge");
            }
        }
        assertThat(made).isGreaterThan(48);
    }

    @Test
    void a_place_outside_or_as_large_as_the_puzzle_is_refused_in_words() {
        assertThatThrownBy(() -> PatternMaker.make(PLAIN.withLayout(
                        new PieceLayout(false, List.of(new KeptWhole(Point.of(5, 90), 12, 12))))))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.kept.outside");
        assertThatThrownBy(() -> PatternMaker.make(PLAIN.withLayout(
                        new PieceLayout(false, List.of(new KeptWhole(Point.of(120, 90), 115, 85))))))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.kept.too_large");
    }

    /** What a customer approved is known by a digest of the spec's text. */
    @Test
    void the_text_of_a_plain_pattern_is_as_it_was_before_there_were_layouts() {
        assertThat(PLAIN.toString())
                .isEqualTo("PatternSpec[size=" + PLAIN.size() + ", grid=" + PLAIN.grid()
                        + ", seed=31, style=KNOBS, outline=" + PLAIN.outline() + ", thickness=" + PLAIN.thickness()
                        + ", kerf=" + PLAIN.kerf() + ", shapes=[], design=2]");
        assertThat(PLAIN.withLayout(PieceLayout.UNEVEN).toString()).isNotEqualTo(PLAIN.toString());
    }
}
