package puzzleworkshop.pattern.shapes;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.JtsLines;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/** Pictures drawn here, whose edge is known as a formula; distances are JTS's. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PictureContourTest {

    private static final Size SIZE = Size.mm(200, 150);
    private static final int PER_MM = 4;
    private static final Point MIDDLE = Point.of(92, 74);
    private static final GeometryFactory JTS = new GeometryFactory();

    /** How far out the edge lies: a head with ears, if one likes. */
    private static double edge(double angle) {
        return 21 + 2.5 * Math.cos(3 * angle) + 1.6 * Math.sin(5 * angle + 1);
    }

    private static LinearRing trueEdge() {
        Coordinate[] ring = new Coordinate[721];
        for (int i = 0; i < 720; i++) {
            double angle = Math.toRadians(i / 2.0);
            ring[i] = new Coordinate(
                    MIDDLE.xMm() + edge(angle) * Math.cos(angle), MIDDLE.yMm() + edge(angle) * Math.sin(angle));
        }
        ring[720] = ring[0];
        return JTS.createLinearRing(ring);
    }

    /** Inside one colour, outside another that gets lighter to the right; grain on all; two eyes, which are edges as well. */
    private static BufferedImage picture(int inside, int outside) {
        Random grain = new Random(4);
        BufferedImage image = new BufferedImage(200 * PER_MM, 150 * PER_MM, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                double dx = (x + 0.5) / PER_MM - MIDDLE.xMm();
                double dy = (y + 0.5) / PER_MM - MIDDLE.yMm();
                boolean in = Math.hypot(dx, dy) < edge(Math.atan2(dy, dx));
                boolean eye = Math.hypot(Math.abs(dx) - 7, dy + 5) < 2.5;
                int grey = (in ? eye ? 10 : inside : outside + (int) (20 * x / (double) image.getWidth()))
                        + grain.nextInt(-6, 7);
                int value = Math.clamp(grey, 0, 255);
                image.setRGB(x, y, value << 16 | value << 8 | Math.clamp(value - 12, 0, 255));
            }
        }
        return image;
    }

    /** The customer's tap lies off the middle, and the oval is not as large as the head. */
    private static final KeptWhole TAPPED = KeptWhole.face(MIDDLE.plus(2, -1.5), Length.mm(36));

    private static double[] distances(CurvePath line) {
        LinearRing edge = trueEdge();
        return line.flattened(0.05).stream()
                .mapToDouble(p -> edge.distance(JTS.createPoint(new Coordinate(p.xMm(), p.yMm()))))
                .toArray();
    }

    /** Marks a sixth too small, about right and a fifth too large. */
    @ParameterizedTest
    @ValueSource(doubles = {36, 42, 50})
    void the_line_lies_on_the_edge_that_the_picture_has_around_the_mark(double widthMm) {
        KeptWhole marked = KeptWhole.face(TAPPED.middle(), Length.mm(widthMm));
        PictureContour found = PictureContour.around(marked, picture(190, 90), SIZE);
        assertThat(found.seen()).isGreaterThan(0.95);
        assertThat(Arrays.stream(distances(found.outline())).max().orElseThrow())
                .isLessThan(1.2);
        double mean = Arrays.stream(distances(found.outline())).average().orElseThrow();
        assertThat(mean).isLessThan(0.35);
        // the oval that was marked lies millimetres off
        assertThat(Arrays.stream(distances(marked.outline())).average().orElseThrow())
                .isGreaterThan(5 * mean);
    }

    @Test
    void where_the_picture_shows_no_edge_the_mark_itself_is_cut() {
        PictureContour found = PictureContour.around(TAPPED, picture(100, 95), SIZE);
        assertThat(found.seen()).isLessThan(0.3);
        assertThat(found.outline()).isEqualTo(TAPPED.outline());
    }

    @Test
    void the_same_picture_gives_the_same_line_and_its_text_gives_it_back_to_the_last_bit() {
        CurvePath line = PictureContour.around(TAPPED, picture(190, 90), SIZE).outline();
        assertThat(PictureContour.around(TAPPED, picture(190, 90), SIZE).outline())
                .isEqualTo(line);
        PersonalShape shape = new PersonalShape("face", line);
        assertThat(PersonalShape.kept("face", shape.outlineText())).isEqualTo(shape);
    }

    /** What the issue asks: cells that follow the picture's own edges, with all promises. */
    @Test
    void the_pattern_cuts_along_the_edge_instead_of_through_the_face_and_keeps_its_promises() {
        PatternSpec plain = PatternSpec.of(SIZE, new PieceGrid(10, 8), 5);
        CutPattern before = PatternMaker.make(plain);
        CutPattern after = PatternMaker.make(plain.withShapes(List.of(new PersonalShape(
                "face", PictureContour.around(TAPPED, picture(190, 90), SIZE).outline()))));
        assertThat(covered(after)).isGreaterThan(0.97);
        assertThat(covered(before)).isLessThan(0.3);
        assertThat(through(before)).isGreaterThan(100);
        assertThat(through(after)).isLessThan(1);
        assertThat(after.verified().edgesTold()).isTrue();
        assertThat(JtsLines.crossings(after)).isZero();
        assertThat(JtsLines.doubled(after)).isZero();
    }

    /** A head of many cells: the same, and cells within it too. */
    @Test
    void a_large_place_is_cut_along_its_edge_and_divided_within() {
        PatternSpec plain = PatternSpec.of(SIZE, new PieceGrid(20, 15), 5);
        CurvePath edge = PictureContour.around(TAPPED, picture(190, 90), SIZE).outline();
        CutPattern pattern = PatternMaker.make(plain.withShapes(List.of(new PersonalShape("head", edge, true))));
        assertThat(covered(pattern)).isGreaterThan(0.95);
        assertThat(covered(PatternMaker.make(plain)))
                .as("rows and columns of 10 mm pass near it here and there")
                .isLessThan(0.55);
        assertThat(pattern.pieces().size()).isGreaterThan(285);
        assertThat(through(pattern)).as("lines go on within").isGreaterThan(100);
        assertThat(JtsLines.crossings(pattern)).isZero();
    }

    /** Share of the picture's edge beside which, within 1 mm, a line is cut. */
    private static double covered(CutPattern pattern) {
        Geometry lines = lines(pattern).buffer(1);
        return trueEdge().intersection(lines).getLength() / trueEdge().getLength();
    }

    /** Millimetres of line that run through the face, more than 1.2 mm from its edge. */
    private static double through(CutPattern pattern) {
        return lines(pattern)
                .intersection(JTS.createPolygon(trueEdge()).buffer(-1.2))
                .getLength();
    }

    private static Geometry lines(CutPattern pattern) {
        return JTS.createMultiLineString(pattern.inner().stream()
                .map(line -> JTS.createLineString(line.flattened(0.02).stream()
                        .map(p -> new Coordinate(p.xMm(), p.yMm()))
                        .toArray(Coordinate[]::new)))
                .toArray(LineString[]::new));
    }
}
