package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import puzzleworkshop.bench.CountByWeight.Weighed;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceSizes;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.mesh.PatternMaker;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CountByWeightTest {

    /** Yellow birch: specific gravity 0.62 on oven-dry mass, × 1.12 at 12 % moisture (Wood Handbook, table 5-3; from memory). */
    private static final double BIRCH = 0.62 * 1.12 * 1000;

    private static final PatternSpec A4 = PatternSpec.of(Size.mm(300, 200), new PieceGrid(8, 6), 7);

    private static CountByWeight unweighed(PatternSpec spec) {
        return CountByWeight.of(PieceSizes.of(PatternMaker.make(spec)), spec.thickness(), BIRCH, Optional.empty());
    }

    /** JTS takes half a kerf off every piece, all round: its areas are the judge. */
    private static double areaByJts(CutPattern pattern) {
        GeometryFactory jts = new GeometryFactory();
        double sum = 0;
        for (Piece piece : pattern.pieces()) {
            Coordinate[] ring = piece.outline().flattened(0.005).stream()
                    .map(p -> new Coordinate(p.xMm(), p.yMm()))
                    .toArray(Coordinate[]::new);
            BufferParameters round = new BufferParameters(16);
            sum += BufferOp.bufferOp(
                            jts.createPolygon(ring), -pattern.spec().kerf().mm() / 2, round)
                    .getArea();
        }
        return sum;
    }

    @Test
    void all_pieces_weigh_what_their_own_areas_weigh_in_the_eyes_of_jts() {
        CutPattern pattern = PatternMaker.make(A4);
        double each = 3 * BIRCH * 1e-6 + 200e-6;
        assertThat(unweighed(A4).grams()).isCloseTo(areaByJts(pattern) * each, within(0.05));
    }

    /** The case of the review: a wavy edge, 105 × 148 mm, 5 mm, 12 pieces; by its rectangle it came out 8.3 % too heavy. */
    @Test
    void a_wavy_edge_is_not_weighed_as_a_rectangle() {
        PatternSpec wavy = PatternSpec.of(Size.mm(105, 148), new PieceGrid(3, 4), 5)
                .withThickness(Length.mm(5))
                .withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.WAVY));
        CutPattern pattern = PatternMaker.make(wavy);
        double truly = areaByJts(pattern) * (5 * BIRCH * 1e-6 + 200e-6);
        assertThat(unweighed(wavy).grams()).isCloseTo(truly, within(0.001 * truly));
        assertThat(105 * 148 * (5 * BIRCH * 1e-6 + 200e-6) / truly).isGreaterThan(1.05);
    }

    /** Boards differ more than one piece weighs: said, not hidden. */
    @Test
    void from_the_handbook_alone_one_missing_of_48_does_not_show() {
        CountByWeight count = unweighed(A4);
        assertThat(count.showsOneMissing()).isFalse();
        assertThat(count.fewestThatShow()).isBetween(8, 20);
    }

    @Test
    void the_blank_weighed_before_the_cut_lets_one_missing_of_48_be_seen_on_a_scale_of_a_tenth_of_a_gram() {
        CutPattern pattern = PatternMaker.make(A4);
        Size sticker = Size.mm(306, 206);
        Size blank = Size.mm(322, 222);
        // a board 15 % heavier than the handbook says
        double grams =
                blank.area().mm2() * 3 * 1.15 * BIRCH * 1e-6 + sticker.area().mm2() * 200e-6;
        CountByWeight count = CountByWeight.of(
                PieceSizes.of(pattern), Length.mm(3), BIRCH, Optional.of(new Weighed(grams, 0.1, blank, sticker)));
        double truly = areaByJts(pattern) * (3 * 1.15 * BIRCH * 1e-6 + 200e-6);
        assertThat(count.grams()).isCloseTo(truly, within(0.002 * truly));
        assertThat(count.showsOneMissing()).isTrue();
        assertThat(unweighed(A4).grams()).isLessThan(truly - count.scatterGrams());
    }

    @Test
    void a_coarse_scale_is_said_to_be_too_coarse() {
        CountByWeight count = CountByWeight.of(
                PieceSizes.of(PatternMaker.make(A4)),
                Length.mm(3),
                BIRCH,
                Optional.of(new Weighed(160, 5, Size.mm(322, 222), Size.mm(306, 206))));
        assertThat(count.showsOneMissing()).isFalse();
    }

    /** The kerf along every line, measured on two patterns that differ in nothing else. */
    @Test
    void a_wider_kerf_takes_its_share_along_every_line() {
        CutPattern narrow = PatternMaker.make(A4);
        double around = narrow.pieces().stream()
                .mapToDouble(piece -> piece.outline().lengthMm())
                .sum();
        double each = 3 * BIRCH * 1e-6 + 200e-6;
        double uncut = 60_000 * each;
        assertThat(uncut - unweighed(A4).grams()).isCloseTo(around * 0.15 / 2 * each, within(1e-6));
    }
}
