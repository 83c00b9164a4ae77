package puzzleworkshop.pattern.judged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.mesh.GridPlaces;
import puzzleworkshop.pattern.mesh.PatternMaker;

/** JTS cuts the old puzzle with the old kerf, the new piece with today's, puts it back and measures the play all round. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LostPieceTest {

    private static final GeometryFactory JTS = new GeometryFactory();
    private static final PatternSpec SPEC = PatternSpec.of(Size.mm(200, 150), new PieceGrid(8, 6), 33);

    @Test
    void cut_with_the_same_kerf_the_new_piece_has_the_play_of_the_old_one_all_round() {
        for (PatternSpec spec : new PatternSpec[] {SPEC, SPEC.withDesign(PatternSpec.FIRST_DESIGN)}) {
            requirePlay(spec, new LostPiece.Today(spec.kerf(), 1, 1));
        }
    }

    @Test
    void cut_with_another_kerf_it_still_has_the_play_of_the_old_one() {
        requirePlay(SPEC, LostPiece.Today.withKerf(Length.mm(0.22)));
        requirePlay(SPEC, LostPiece.Today.withKerf(Length.mm(0.08)));
    }

    @Test
    void a_puzzle_that_came_out_larger_than_drawn_gets_a_larger_piece() {
        requirePlay(SPEC, new LostPiece.Today(Length.mm(0.2), 1.004, 0.997));
    }

    private static void requirePlay(PatternSpec spec, LostPiece.Today today) {
        CutPattern pattern = PatternMaker.make(spec);
        Random random = new Random(16);
        for (int i = 0; i < 8; i++) {
            int number = 1 + random.nextInt(pattern.pieces().size());
            LostPiece lost = LostPiece.of(pattern, number, today);
            AffineTransform stretch = AffineTransform.getScaleInstance(today.acrossStretch(), today.downStretch());
            Geometry hole = around(
                    pattern.pieces().get(number - 1).outline().transformed(stretch),
                    spec.kerf().mm() / 2);
            Bounds place = pattern.pieces()
                    .get(number - 1)
                    .outline()
                    .transformed(stretch)
                    .bounds();
            double out = (today.kerf().mm() - spec.kerf().mm()) / 2;
            CurvePath back = lost.line().translated(place.minX() - out, place.minY() - out);
            Geometry piece = around(back, -today.kerf().mm() / 2);
            assertThat(hole.contains(piece))
                    .as("piece %d of seed 16 goes in", number)
                    .isTrue();
            double least = piece.distance(hole.getBoundary());
            double most = 0;
            for (Coordinate c : piece.getCoordinates()) {
                most = Math.max(most, JTS.createPoint(c).distance(hole.getBoundary()));
            }
            assertThat(least)
                    .as("play of piece %d", number)
                    .isCloseTo(spec.kerf().mm(), within(0.015));
            assertThat(most)
                    .as("play of piece %d", number)
                    .isCloseTo(spec.kerf().mm(), within(0.03));
        }
    }

    private static Geometry around(CurvePath path, double by) {
        Coordinate[] ring = path.flattened(0.002).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new);
        return BufferOp.bufferOp(JTS.createPolygon(ring), by, new BufferParameters(32));
    }

    @Test
    void a_tap_on_the_picture_finds_the_piece_that_holds_the_point() {
        CutPattern pattern = PatternMaker.make(SPEC);
        for (Piece piece : pattern.pieces()) {
            assertThat(LostPiece.at(pattern, piece.centre())).contains(piece);
        }
        assertThat(LostPiece.at(pattern, Point.of(-3, 20))).isEmpty();
        assertThat(GridPlaces.piece(pattern, 2, 3).orElseThrow().number()).isEqualTo(8 + 3);
    }

    /** Rows and columns of differing width, and moved aside for a place kept whole: both ways lead to the same piece. */
    @Test
    void row_and_column_find_the_piece_that_says_them_where_rows_are_uneven_or_moved_aside() {
        for (PieceLayout layout : List.of(
                PieceLayout.of(true, List.of()),
                PieceLayout.of(false, List.of(new KeptWhole(Point.of(70, 60), 13, 17))),
                PieceLayout.of(true, List.of(new KeptWhole(Point.of(120, 90), 11, 14))))) {
            CutPattern pattern = PatternMaker.make(SPEC.withLayout(layout));
            GridPlaces places = GridPlaces.of(pattern);
            for (Piece piece : pattern.pieces()) {
                assertThat(GridPlaces.piece(pattern, places.row(piece), places.column(piece)))
                        .as("piece %d", piece.number())
                        .contains(piece);
            }
        }
    }

    /** The hole is as wide as the beam of its day made it, whatever the pattern was drawn for. */
    @Test
    void the_kerf_of_the_beam_that_cut_the_old_puzzle_counts() {
        CutPattern pattern = PatternMaker.make(SPEC);
        Length today = Length.mm(0.2);
        LostPiece asDrawn = LostPiece.of(pattern, 20, new LostPiece.Today(today, 1, 1));
        LostPiece asCut = LostPiece.of(pattern, 20, new LostPiece.Today(today, 1, 1, Optional.of(Length.mm(0.1))));
        assertThat(asDrawn.size().width().mm()
                        - pattern.pieces().get(19).outline().bounds().width())
                .isCloseTo(0.2 - 0.15, within(0.01));
        assertThat(asCut.size().width().mm()
                        - pattern.pieces().get(19).outline().bounds().width())
                .isCloseTo(0.2 - 0.1, within(0.01));
    }

    @Test
    void print_and_blank_reach_beyond_the_piece_on_every_side() {
        CutPattern pattern = PatternMaker.make(SPEC);
        LostPiece lost = LostPiece.of(pattern, 20, LostPiece.Today.withKerf(SPEC.kerf()));
        Bounds print = lost.print(Length.mm(3));
        assertThat(print.holds(pattern.pieces().get(19).outline().bounds().grownBy(2.999)))
                .isTrue();
        assertThat(lost.plan(Length.mm(11)).frame().minX()).isCloseTo(11, within(1e-9));
        assertThat(lost.size().width().mm()).isCloseTo(print.width() - 6, within(1e-9));
    }
}
