package puzzleworkshop.cutfiles.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/** Sizes follow from SVG 2 (chapters 8 to 10), CSS units (1 in = 25.4 mm = 96 px) and the AutoCAD DXF reference. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DrawnFileTest {

    private static DrawnFile svg(String attributes, String body) {
        return DrawnFile.read(
                "drawing.svg",
                ("<svg xmlns='http://www.w3.org/2000/svg' stroke='red' fill='none' "
                                + "xmlns:xlink='http://www.w3.org/1999/xlink' " + attributes + ">" + body + "</svg>")
                        .getBytes(StandardCharsets.UTF_8));
    }

    private static void assertBounds(DrawnFile file, double minX, double minY, double maxX, double maxY) {
        Bounds b = file.bounds();
        assertThat(new double[] {b.minX(), b.minY(), b.maxX(), b.maxY()})
                .containsExactly(new double[] {minX, minY, maxX, maxY}, within(1e-3));
    }

    private static List<String> keys(DrawnFile file) {
        return file.remarks().stream().map(remark -> remark.sentence().key()).toList();
    }

    private static double length(DrawnFile file) {
        return file.lines().stream().mapToDouble(CurvePath::lengthMm).sum();
    }

    @Test
    void millimetres_with_a_view_box_are_scaled() {
        DrawnFile file = svg(
                "width='100mm' height='50mm' viewBox='0 0 1000 500'",
                "<rect x='100' y='100' width='800' height='300'/>");
        assertBounds(file, 10, 10, 90, 40);
        assertThat(file.page()).hasValueSatisfying(page -> {
            assertThat(page.width().mm()).isCloseTo(100, within(1e-9));
            assertThat(page.height().mm()).isCloseTo(50, within(1e-9));
        });
        assertThat(file.remarks()).isEmpty();
    }

    @Test
    void pixels_are_ninety_sixths_of_an_inch_and_the_reader_is_told() {
        DrawnFile file = svg("", "<line x1='0' y1='0' x2='96' y2='0'/>");
        assertThat(length(file)).isCloseTo(25.4, within(1e-9));
        assertThat(keys(file)).containsExactly("cutfiles.file.no_size");
        DrawnFile old = DrawnFile.read(
                "old.svg",
                "<svg stroke='red' viewBox='0 0 90 90'><line x2='90'/></svg>".getBytes(StandardCharsets.UTF_8),
                90);
        assertThat(length(old)).isCloseTo(25.4, within(1e-9));
    }

    @Test
    void inches_points_and_picas_are_read() {
        assertThat(length(svg("width='2in' height='1in'", "<line x2='1in'/>"))).isCloseTo(25.4, within(1e-9));
        assertThat(length(svg("width='2in' height='1in'", "<line x2='72pt'/><line x2='6pc'/><line x2='2.54cm'/>")))
                .isCloseTo(3 * 25.4, within(1e-9));
    }

    @Test
    void a_view_box_that_does_not_fit_is_centred_and_its_origin_counts() {
        DrawnFile file = svg(
                "width='200mm' height='100mm' viewBox='50 50 100 100'",
                "<rect x='50' y='50' width='100' height='100'/>");
        assertBounds(file, 50, 0, 150, 100);
        DrawnFile stretched = svg(
                "width='200mm' height='100mm' viewBox='0 0 100 100' preserveAspectRatio='none'",
                "<rect width='100' height='100'/>");
        assertBounds(stretched, 0, 0, 200, 100);
    }

    @Test
    void transforms_nest_from_the_outside_in() {
        DrawnFile file = svg(
                "width='100mm' height='100mm' viewBox='0 0 100 100'",
                "<g transform='translate(10,20)'><g transform='rotate(90) scale(2)'><line x1='0' y1='0' x2='10' y2='0'/></g></g>");
        assertBounds(file, 10, 20, 10, 40);
    }

    @Test
    void shapes_have_the_lengths_of_geometry() {
        String mm = "width='100mm' height='100mm' viewBox='0 0 100 100'";
        assertThat(length(svg(mm, "<circle cx='50' cy='50' r='10'/>"))).isCloseTo(20 * Math.PI, within(0.02));
        assertThat(length(svg(mm, "<rect width='40' height='30' rx='5'/>")))
                .isCloseTo(140 - 40 + 10 * Math.PI, within(0.01));
        assertThat(length(svg(mm, "<polygon points='0,0 30,0 30,40'/>"))).isCloseTo(120, within(1e-9));
        assertThat(length(svg(mm, "<path d='M0 0h30v40z m50,0 l3 4'/>"))).isCloseTo(125, within(1e-4));
        assertThat(length(svg(mm, "<path d='M 0 50 A 10 10 0 0 1 20 50'/>"))).isCloseTo(10 * Math.PI, within(0.01));
        DrawnFile half = svg(mm, "<path d='M 0 50 A 10 10 0 0 1 20 50'/>");
        assertBounds(half, 0, 40, 20, 50);
        // large and small arc, radii too small for their ends, an ellipse turned by 90 degrees
        assertThat(length(svg(mm, "<path d='M 40 50 a 10 10 0 1 0 10 -10'/>"))).isCloseTo(15 * Math.PI, within(0.01));
        assertThat(length(svg(mm, "<path d='M 40 50 a 10 10 0 0 0 10 -10'/>"))).isCloseTo(5 * Math.PI, within(0.01));
        assertBounds(svg(mm, "<path d='M 40 50 a 1 1 0 0 0 20 0'/>"), 40, 50, 60, 60);
        assertBounds(svg(mm, "<path d='M 40 50 a 20 10 90 0 0 20 0'/>"), 40, 50, 60, 70);
    }

    @Test
    void what_is_used_again_is_drawn_again_and_hidden_things_are_not() {
        DrawnFile file = svg(
                "width='100mm' height='100mm' viewBox='0 0 100 100'",
                "<defs><path id='a' d='M0 0H10'/></defs><use href='#a' x='5'/><use xlink:href='#a' y='7'/>"
                        + "<g style='display: none'><path d='M0 0H99'/></g>");
        assertThat(file.lines()).hasSize(2);
        assertThat(length(file)).isCloseTo(20, within(1e-6));
    }

    @Test
    void nothing_outside_the_file_is_fetched() {
        String trap = "<!DOCTYPE svg [<!ENTITY secret SYSTEM 'file:///etc/hostname'>]>"
                + "<svg stroke='red' width='10mm' height='10mm' viewBox='0 0 10 10'><desc>&secret;</desc><path d='M0 0H10'/></svg>";
        assertThat(DrawnFile.read("trap.svg", trap.getBytes(StandardCharsets.UTF_8))
                        .lines())
                .hasSize(1);
        StringBuilder bomb = new StringBuilder("<!DOCTYPE svg [<!ENTITY a 'aaaaaaaaaa'>");
        for (char c = 'b'; c <= 'k'; c++) {
            bomb.append("<!ENTITY ")
                    .append(c)
                    .append(" '")
                    .append(("&" + (char) (c - 1) + ";").repeat(10))
                    .append("'>");
        }
        bomb.append("]><svg><desc>&k;</desc></svg>");
        assertThatThrownBy(() -> DrawnFile.read("bomb.svg", bomb.toString().getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("cutfiles.file.damaged");
    }

    @Test
    void damaged_and_foreign_files_are_refused_in_a_sentence() {
        for (String text : new String[] {
            "<svg><path",
            "<html></html>",
            "hello there",
            "",
            "<svg viewBox='0 0 0 0'><path d='M0 0H1'/></svg>",
            "<svg><text>words</text></svg>"
        }) {
            assertThatThrownBy(() -> DrawnFile.read("x", text.getBytes(StandardCharsets.UTF_8)))
                    .isInstanceOf(Refused.class);
        }
    }

    private static DrawnFile dxf(int units, String... entities) {
        String text = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n" + units + "\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"
                + String.join("\n", entities) + "\n0\nENDSEC\n0\nEOF\n";
        return DrawnFile.read("drawing.dxf", text.getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void dxf_units_and_the_upward_axis_are_turned_into_millimetres_down() {
        DrawnFile inches = dxf(1, "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n2");
        assertBounds(inches, 0, -50.8, 25.4, 0);
        DrawnFile unknown = dxf(0, "0\nLINE\n10\n0\n20\n0\n11\n10\n21\n0");
        assertThat(length(unknown)).isEqualTo(10);
        assertThat(keys(unknown)).containsExactly("cutfiles.file.no_units");
    }

    @Test
    void dxf_arcs_bulges_circles_and_ellipses_have_the_lengths_of_geometry() {
        assertThat(length(dxf(4, "0\nCIRCLE\n10\n5\n20\n5\n40\n10"))).isCloseTo(20 * Math.PI, within(0.02));
        DrawnFile arc = dxf(4, "0\nARC\n10\n0\n20\n0\n40\n10\n50\n0\n51\n90");
        assertThat(length(arc)).isCloseTo(5 * Math.PI, within(0.01));
        assertBounds(arc, 0, -10, 10, 0);
        // a bulge of 1 is a half circle, counter-clockwise: from (0,0) to (20,0) below the chord, y up
        DrawnFile half = dxf(4, "0\nLWPOLYLINE\n90\n2\n70\n0\n10\n0\n20\n0\n42\n1\n10\n20\n20\n0");
        assertThat(length(half)).isCloseTo(10 * Math.PI, within(0.01));
        assertBounds(half, 0, 0, 20, 10);
        DrawnFile quarter = dxf(
                4,
                "0\nPOLYLINE\n66\n1\n70\n0\n0\nVERTEX\n10\n0\n20\n0\n42\n" + Math.tan(Math.PI / 8)
                        + "\n0\nVERTEX\n10\n10\n20\n10\n0\nSEQEND");
        assertThat(length(quarter)).isCloseTo(5 * Math.PI, within(0.01));
        DrawnFile ellipse = dxf(4, "0\nELLIPSE\n10\n0\n20\n0\n11\n0\n21\n20\n40\n0.5\n41\n0\n42\n6.283185307179586");
        assertBounds(ellipse, -10, -20, 10, 20);
    }

    /** A quarter circle as a rational quadratic with middle weight √2/2 (The NURBS Book, 7.3). */
    @Test
    void dxf_rational_splines_are_true_circles() {
        DrawnFile spline = dxf(
                4,
                "0\nSPLINE\n70\n0\n71\n2\n72\n6\n73\n3\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n41\n1\n41\n"
                        + Math.sqrt(0.5) + "\n41\n1\n10\n10\n20\n0\n10\n10\n20\n10\n10\n0\n20\n10");
        assertThat(length(spline)).isCloseTo(5 * Math.PI, within(1e-3));
        spline.lines()
                .getFirst()
                .flattened(0.01)
                .forEach(p -> assertThat(Math.hypot(p.xMm(), p.yMm())).isCloseTo(10, within(1e-9)));
    }

    @Test
    void dxf_blocks_are_placed_with_scale_and_angle() {
        String text =
                "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nknob\n10\n1\n20\n0\n0\nLINE\n10\n1\n20\n0\n11\n11\n21\n0\n0\nENDBLK\n0\nENDSEC\n"
                        + "0\nSECTION\n2\nENTITIES\n0\nINSERT\n2\nknob\n10\n100\n20\n50\n41\n2\n42\n2\n50\n90\n0\nENDSEC\n0\nEOF\n";
        DrawnFile file = DrawnFile.read("blocks.dxf", text.getBytes(StandardCharsets.US_ASCII));
        assertBounds(file, 100, -70, 100, -50);
    }

    @Test
    void our_own_files_are_read_back_with_the_same_length() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(200, 150), new PieceGrid(6, 4), 3));
        CutPlan plan = pattern.plan(CutPlan.Sequence.INNER_FIRST);
        for (CutFile.Format format : new CutFile.Format[] {CutFile.Format.SVG, CutFile.Format.DXF}) {
            DrawnFile file = DrawnFile.read("ours", CutFile.write(plan, format).bytes());
            // a chord that leaves a circle of radius r by s is shorter than its arc by the share s / 3r: with the 0.02
            // mm
            // of the DXF on knobs of 4 mm and more that is under 1.7 in a thousand
            double share = format == CutFile.Format.DXF ? CutFile.DXF_TOLERANCE_MM / (3 * 4) : 5e-4;
            assertThat(length(file)).isCloseTo(pattern.totalLengthMm(), within(pattern.totalLengthMm() * share));
            assertThat(file.bounds().width()).isCloseTo(200, within(0.01));
            assertThat(file.remarks()).isEmpty();
        }
    }
}
