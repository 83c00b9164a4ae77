package puzzleworkshop.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.cutfiles.Inspection;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PersonalShapeTest {

    private static final PatternSpec PLAIN = PatternSpec.of(Size.mm(240, 180), new PieceGrid(8, 6), 5);

    private static void assertWhole(CutPattern pattern, PersonalShape shape, String about) {
        Piece personal =
                pattern.pieces().stream().filter(Piece::isPersonal).findFirst().orElseThrow();
        assertThat(personal.areaMm2())
                .as(about)
                .isCloseTo(Math.abs(shape.outline().signedAreaMm2()), within(1e-6));
        double size = pattern.spec().size().area().mm2();
        assertThat(pattern.pieces().stream().mapToDouble(Piece::areaMm2).sum())
                .as(about)
                .isCloseTo(size, within(size * 1e-9));
        assertThat(JtsLines.crossings(pattern)).as(about).isZero();
        assertThat(JtsLines.doubled(pattern)).as(about).isZero();
        Inspection inspection = CutInspector.inspect(new DrawnFile(
                "shaped",
                DrawnFile.Kind.SVG,
                pattern.plan(CutPlan.Sequence.INNER_FIRST).inOrder(),
                List.of(),
                Optional.empty(),
                List.of()));
        assertThat(inspection.findings()).as(about).isEmpty();
        double smallest =
                pattern.spec().grid().pieceSize(pattern.spec().size()).area().mm2() / 4;
        assertThat(pattern.pieces()).as(about).allMatch(piece -> piece.areaMm2() > smallest);
    }

    /** Letters come from a machine's own face, so their outlines are kept, not their names. */
    @Test
    void a_shape_written_down_and_read_again_is_the_same_to_the_last_bit() {
        PersonalShape letter = PersonalShapes.letter('R', Point.of(1 / 3.0, 200 / 7.0), Length.mm(61.3));
        assertThat(PersonalShape.kept(letter.name(), letter.outlineText())).isEqualTo(letter);
        assertThat(PersonalShapes.placed(letter, Point.of(1 / 3.0, 200 / 7.0), Length.mm(61.3)))
                .isSameAs(letter);
    }

    @Test
    void a_heart_lies_whole_among_the_pieces_wherever_it_is_put() {
        Random random = new Random(Seeds.from(99));
        int placed = 0;
        for (int i = 0; i < 60; i++) {
            PersonalShape heart = PersonalShapes.heart(
                    Point.of(50 + random.nextDouble() * 140, 50 + random.nextDouble() * 80),
                    Length.mm(35 + random.nextDouble() * 45));
            CutStyle style = CutStyle.values()[i % 3];
            String about = "case " + i + " of seed 99, " + style;
            try {
                assertWhole(
                        PatternMaker.make(PLAIN.withSeed(i).withStyle(style).withShapes(List.of(heart))), heart, about);
                placed++;
            } catch (Refused refused) {
                // a refusal is allowed where there is no room, but must be rare
                assertThat(refused.sentence().key())
                        .as(about)
                        .isIn("pattern.shape.no_room", "pattern.shape.at_edge", "pattern.no_room");
            }
        }
        assertThat(placed).isGreaterThan(48);
    }

    @Test
    void a_shape_from_a_file_lies_whole_among_the_pieces() {
        String star =
                "<svg width='10mm' height='10mm' viewBox='0 0 10 10'><path d='M5 0L6.5 3.3 10 3.8 7.4 6.2 8.1 9.8 5 8"
                        + " 1.9 9.8 2.6 6.2 0 3.8 3.5 3.3Z'/></svg>";
        PersonalShape shape = PersonalShapes.imported(
                DrawnFile.read("star.svg", star.getBytes(StandardCharsets.UTF_8)),
                Point.of(120, 90),
                Length.mm(70),
                Length.mm(70));
        assertThat(shape.outline().bounds().width()).isCloseTo(70, within(1e-6));
        assertWhole(PatternMaker.make(PLAIN.withShapes(List.of(shape))), shape, "star");
    }

    @Test
    void shapes_at_the_edge_too_close_or_crossing_themselves_are_refused() {
        assertThatThrownBy(() -> PatternMaker.make(
                        PLAIN.withShapes(List.of(PersonalShapes.heart(Point.of(20, 90), Length.mm(60))))))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.shape.at_edge");
        PersonalShape bow = new PersonalShape(
                "bow",
                CurvePath.through(
                        List.of(Point.of(100, 70), Point.of(140, 110), Point.of(140, 70), Point.of(100, 110)), true));
        assertThatThrownBy(() -> PatternMaker.make(PLAIN.withShapes(List.of(bow))))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.shape.crosses");
    }

    /** Frame: perimeter of the opening and of the outer edge, closed form with corners of radius 5 and play 0.5. */
    @Test
    void a_tray_has_an_opening_with_play_and_a_backing_of_its_outer_size() {
        Tray tray = Tray.of(PatternSpec.of(Size.mm(200, 150), new PieceGrid(4, 3), 1));
        assertThat(tray.outerSize()).isEqualTo(Size.mm(231, 181));
        double outer = 2 * (231 + 181) - 40 + 10 * Math.PI;
        assertThat(tray.backing().lengthMm()).isCloseTo(outer, within(0.01));
        assertThat(tray.frame(CutPlan.Sequence.INNER_FIRST).lengthMm())
                .isCloseTo(outer + 2 * (201 + 151), within(0.01));
        assertThatThrownBy(() -> new Tray(Size.mm(200, 150), PuzzleEdge.square(), Length.mm(2), Length.mm(0.5)))
                .isInstanceOf(Refused.class);
    }

    /** The offset of a convex curve by d is longer by 2πd (Steiner's formula). */
    @Test
    void the_tray_of_a_round_puzzle_has_a_round_opening_with_play_all_round() {
        PatternSpec round = PatternSpec.of(Size.mm(200, 150), new PieceGrid(4, 3), 1)
                .withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUND));
        Tray tray = Tray.of(round);
        double edge = round.outline().curve(round.size()).lengthMm();
        double outer = 2 * (231 + 181) - 40 + 10 * Math.PI;
        assertThat(tray.frame(CutPlan.Sequence.INNER_FIRST).lengthMm())
                .isCloseTo(outer + edge + 2 * Math.PI * 0.5, within(0.05));
    }

    @Test
    void every_letter_of_a_name_is_a_piece_of_its_own() {
        PatternSpec spec = PatternSpec.of(Size.mm(360, 200), new PieceGrid(18, 10), 5);
        List<PersonalShape> letters = PersonalShapes.name("Ida Lo", Point.of(180, 100), Length.mm(45), Length.mm(20.5));
        assertThat(letters).extracting(PersonalShape::name).containsExactly("I", "d", "a", "L", "o");
        CutPattern pattern = PatternMaker.make(spec.withShapes(letters));
        assertThat(pattern.pieces().stream().filter(Piece::isPersonal)).hasSize(5);
        assertThat(JtsLines.crossings(pattern)).isZero();
        assertThat(JtsLines.doubled(pattern)).isZero();
        double middle = (letters.getFirst().outline().bounds().minX()
                        + letters.getLast().outline().bounds().maxX())
                / 2;
        assertThat(middle).isCloseTo(180, within(1e-6));
    }

    /** Children's puzzles of a few large shapes keep the promises too, and their shapes are no small parts. */
    @Test
    void large_shapes_lie_whole_where_four_pieces_meet() {
        for (int count : new int[] {4, 8, 12, 24}) {
            Size size = Size.mm(400, 260);
            PieceGrid grid = PieceGrid.nearest(size, count);
            List<PersonalShape> shapes = LargeShapes.laid(size, grid, 6);
            CutPattern pattern =
                    PatternMaker.make(PatternSpec.of(size, grid, count).withShapes(shapes));
            String about = count + " pieces";
            assertThat(pattern.pieces().stream().filter(Piece::isPersonal))
                    .as(about)
                    .hasSameSizeAs(shapes);
            assertThat(shapes).as(about).isNotEmpty();
            assertThat(JtsLines.crossings(pattern)).as(about).isZero();
            assertThat(JtsLines.doubled(pattern)).as(about).isZero();
            if (count <= 8) {
                assertThat(puzzleworkshop.pattern.smallparts.SmallParts.judge(pattern, IntendedAge.FROM_3)
                                .boxText())
                        .as(about)
                        .isEmpty();
            }
        }
    }
}
