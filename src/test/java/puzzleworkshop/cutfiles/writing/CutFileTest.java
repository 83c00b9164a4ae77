package puzzleworkshop.cutfiles.writing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.batik.parser.AWTPathProducer;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.judged.StickingCheck;
import puzzleworkshop.pattern.mesh.PatternMaker;

/** The files are read back by readers that share no code with the writers: Batik's parser, a DXF reader here, PDFBox. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CutFileTest {

    private static final CutPattern PATTERN = PatternMaker.make(
            PatternSpec.of(Size.mm(200, 150), new PieceGrid(6, 4), 11).withOutline(PuzzleEdge.rounded(Length.mm(8))));
    private static final CutPlan PLAN = PATTERN.plan(CutPlan.Sequence.INNER_FIRST);

    @Test
    void svg_read_by_batik_has_the_size_the_length_and_the_groups_in_order() throws Exception {
        byte[] bytes = CutFile.write(PLAN, CutFile.Format.SVG).bytes();
        Element svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(bytes))
                .getDocumentElement();
        assertThat(svg.getAttribute("width")).isEqualTo("200mm");
        assertThat(svg.getAttribute("height")).isEqualTo("150mm");
        assertThat(svg.getAttribute("viewBox")).isEqualTo("0 0 200 150");
        var groups = svg.getElementsByTagName("g");
        assertThat(((Element) groups.item(0)).getAttribute("id")).isEqualTo("inner-lines");
        assertThat(((Element) groups.item(1)).getAttribute("id")).isEqualTo("outline");
        assertThat(((Element) groups.item(0)).getElementsByTagName("path").getLength())
                .isEqualTo(5 + 3);
        double length = 0;
        Rectangle2D bounds = null;
        var paths = svg.getElementsByTagName("path");
        for (int i = 0; i < paths.getLength(); i++) {
            Shape shape = AWTPathProducer.createShape(
                    new StringReader(((Element) paths.item(i)).getAttribute("d")), PathIterator.WIND_NON_ZERO);
            length += length(shape);
            bounds = bounds == null ? shape.getBounds2D() : bounds.createUnion(shape.getBounds2D());
        }
        assertThat(length).isCloseTo(PATTERN.totalLengthMm(), within(PATTERN.totalLengthMm() * 1e-4));
        assertThat(bounds.getWidth()).isCloseTo(200, within(0.002));
    }

    @Test
    void dxf_has_every_line_once_on_its_layer_within_the_stated_tolerance() {
        List<DxfText.Line> lines =
                DxfText.lines(new String(CutFile.write(PLAN, CutFile.Format.DXF).bytes(), StandardCharsets.US_ASCII));
        assertThat(lines).hasSize(PATTERN.inner().size() + 1);
        assertThat(lines.subList(0, 8)).allMatch(line -> line.layer().equals("INNER_LINES") && !line.closed());
        assertThat(lines.getLast().layer()).isEqualTo("OUTLINE");
        assertThat(lines.getLast().closed()).isTrue();
        double length = lines.stream().mapToDouble(DxfText.Line::length).sum();
        assertThat(length).isBetween(PATTERN.totalLengthMm() * 0.9985, PATTERN.totalLengthMm() + 0.01);
        double right = lines.stream()
                .flatMap(line -> line.points().stream())
                .mapToDouble(Point2D::getX)
                .max()
                .orElseThrow();
        double top = lines.stream()
                .flatMap(line -> line.points().stream())
                .mapToDouble(Point2D::getY)
                .max()
                .orElseThrow();
        assertThat(right).isEqualTo(200);
        assertThat(top).isEqualTo(150);
    }

    /** Whatever the way to cut, other readers find every line once and the whole length. */
    @Test
    void every_way_to_cut_is_read_back_whole_by_batik_and_as_dxf() throws Exception {
        PatternSpec plain = PatternSpec.of(Size.mm(200, 150), new PieceGrid(8, 6), 11);
        for (PatternSpec spec : List.of(
                plain.withLayout(PieceLayout.UNEVEN),
                plain.withLayout(new PieceLayout(false, List.of(new KeptWhole(Point.of(70, 60), 12, 15)))),
                plain.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUND)),
                plain.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.HEART)),
                plain.withShapes(PersonalShapes.name("IDA", Point.of(100, 75), Length.mm(40), Length.mm(26))))) {
            CutPattern pattern = PatternMaker.make(spec);
            CutPlan plan = pattern.plan(CutPlan.Sequence.INNER_FIRST);
            List<DxfText.Line> lines = DxfText.lines(
                    new String(CutFile.write(plan, CutFile.Format.DXF).bytes(), StandardCharsets.US_ASCII));
            assertThat(lines).as(spec.toString()).hasSize(pattern.inner().size() + 1);
            assertThat(lines.stream().mapToDouble(DxfText.Line::length).sum())
                    .as(spec.toString())
                    .isBetween(pattern.totalLengthMm() * 0.9985, pattern.totalLengthMm() + 0.01);
            var paths = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(
                            CutFile.write(plan, CutFile.Format.SVG).bytes()))
                    .getDocumentElement()
                    .getElementsByTagName("path");
            double length = 0;
            for (int i = 0; i < paths.getLength(); i++) {
                length += length(AWTPathProducer.createShape(
                        new StringReader(((Element) paths.item(i)).getAttribute("d")), PathIterator.WIND_NON_ZERO));
            }
            assertThat(length)
                    .as(spec.toString())
                    .isCloseTo(pattern.totalLengthMm(), within(pattern.totalLengthMm() * 1e-4));
        }
    }

    /** ISO 32000-1: a point is 1/72 in; 200 × 150 mm are 566.929 × 425.197 pt. */
    @Test
    void pdf_read_by_pdfbox_has_real_size_named_layers_and_the_length() throws Exception {
        try (PDDocument document =
                Loader.loadPDF(CutFile.write(PLAN, CutFile.Format.PDF).bytes())) {
            PDPage page = document.getPage(0);
            assertThat(page.getMediaBox().getWidth()).isCloseTo(566.929f, within(0.01f));
            assertThat(page.getMediaBox().getHeight()).isCloseTo(425.197f, within(0.01f));
            assertThat(document.getDocumentCatalog().getOCProperties().getGroupNames())
                    .containsExactlyInAnyOrder("Inner lines", "Outline");
            List<Shape> strokes = PdfStrokes.of(page);
            assertThat(strokes).hasSize(PATTERN.inner().size() + 1);
            assertThat(strokes.stream().mapToDouble(CutFileTest::length).sum() * 25.4 / 72)
                    .isCloseTo(PATTERN.totalLengthMm(), within(PATTERN.totalLengthMm() * 1e-4));
        }
    }

    @Test
    void the_order_of_the_groups_can_be_turned_round() {
        String svg = new String(
                CutFile.write(PATTERN.plan(CutPlan.Sequence.OUTLINE_FIRST), CutFile.Format.SVG)
                        .bytes(),
                StandardCharsets.UTF_8);
        assertThat(svg.indexOf("id=\"outline\"")).isLessThan(svg.indexOf("id=\"inner-lines\""));
        assertThat(svg).contains("Outline first, inner lines last.");
    }

    @Test
    void travel_is_shorter_than_as_drawn_and_nothing_is_lost() {
        assertThat(PLAN.travelMm()).isLessThan(PLAN.travelAsDrawnMm());
        assertThat(PLAN.lengthMm()).isCloseTo(PATTERN.totalLengthMm(), within(1e-6));
        // eight lines from edge to edge and the outline: less than half of running back for each
        assertThat(PLAN.travelMm()).isLessThan(0.5 * PLAN.travelAsDrawnMm());
    }

    /** Rectangle turned by a and shifted by s: half extent w/2·cos a + h/2·sin a + s; closed form. */
    @Test
    void the_frame_with_sticking_tolerance_is_proved_inside_the_print_or_not() {
        CutPattern upright = PatternMaker.make(PatternSpec.of(Size.mm(200, 300), new PieceGrid(4, 6), 1));
        StickingCheck check = StickingCheck.of(upright);
        double expected = 3 - (100 * Math.cos(Math.toRadians(0.5)) + 150 * Math.sin(Math.toRadians(0.5)) - 100 + 1.5);
        assertThat(check.inside()).isTrue();
        assertThat(check.spare().mm()).isCloseTo(expected, within(0.006));
        CutPattern large = PatternMaker.make(PatternSpec.of(Size.mm(420, 297), new PieceGrid(10, 7), 1));
        assertThat(StickingCheck.of(large).inside()).isFalse();
        // 210·sin 0.5° = 1.8326 and 1.5 of shift, less 0.0057 by the cosine: 3.327, so 3.4 will do
        assertThat(StickingCheck.of(large).overhangNeeded()).isEqualTo(Length.mm(3.4));
    }

    /** The drawing shows a position that takes exactly what the check says: bounds of the moved outline against the print's. */
    @Test
    void the_position_drawn_is_the_worst_one() {
        for (Size size : new Size[] {Size.mm(420, 297), Size.mm(180, 420), Size.mm(300, 300)}) {
            CutPattern pattern = PatternMaker.make(
                    PatternSpec.of(size, new PieceGrid(8, 8), 3).withOutline(PuzzleEdge.wavy(Length.mm(2))));
            StickingCheck check = StickingCheck.of(pattern);
            Bounds moved = check.worst().of(pattern.outline(), size).bounds();
            double out = switch (check.narrowest()) {
                case LEFT -> -3 - moved.minX();
                case TOP -> -3 - moved.minY();
                case RIGHT -> moved.maxX() - size.width().mm() - 3;
                case BOTTOM -> moved.maxY() - size.height().mm() - 3;
            };
            assertThat(out).isCloseTo(-check.spare().mm(), within(0.011));
        }
    }

    private static double length(Shape shape) {
        double length = 0;
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        for (PathIterator it = new FlatteningPathIterator(shape.getPathIterator(null), 0.001, 16);
                !it.isDone();
                it.next()) {
            int kind = it.currentSegment(c);
            double toX = kind == PathIterator.SEG_CLOSE ? startX : c[0];
            double toY = kind == PathIterator.SEG_CLOSE ? startY : c[1];
            if (kind == PathIterator.SEG_MOVETO) {
                startX = toX;
                startY = toY;
            } else {
                length += Math.hypot(toX - x, toY - y);
            }
            x = toX;
            y = toY;
        }
        return length;
    }
}
