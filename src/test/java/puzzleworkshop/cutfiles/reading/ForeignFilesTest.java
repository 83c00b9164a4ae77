package puzzleworkshop.cutfiles.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Files as other programs write them, and files made to mislead, against figures from elsewhere ({@code
 * cutfiles/expected.csv} of the test's resources).
 *
 * <p>SVG: closed forms of the drawing that each file shows by SVG 2 and CSS (a rectangle of 40 × 30 mm, mostly, with
 * something larger that does not show). DXF with curves and placed blocks: sizes and lengths computed once by ezdxf 0.18.1
 * (path.make_path, flattening 0.0002) on the very files, which it also wrote. The files of an office program, a vector
 * drawing program, a graphics library and a converter show one drawing: rectangle, circle, an ellipse turned by 30° and
 * two cubic curves, whose figures come from a sum over 200,000 chords (NumPy 1.24).
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ForeignFilesTest {

    private static final String FOLDER = "/cutfiles/";

    static Stream<String> files() throws IOException {
        return new String(read("expected.csv"), StandardCharsets.UTF_8).lines().skip(1);
    }

    private static byte[] read(String name) throws IOException {
        try (InputStream in = ForeignFilesTest.class.getResourceAsStream(FOLDER + name)) {
            return in.readAllBytes();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void a_file_has_its_size_and_length_or_something_is_said(String row) throws IOException {
        String[] cells = row.split(",", -1);
        DrawnFile file = DrawnFile.read(cells[0], read(cells[0]));
        if (cells[0].startsWith("mask")) {
            assertThat(file.isSure()).isFalse();
            assertThat(file.unsure()).isNotEmpty();
            return;
        }
        assertThat(file.isSure()).as("%s", file.remarks()).isTrue();
        Bounds bounds = file.bounds();
        check(bounds.width(), cells[1], 0.05);
        check(bounds.height(), cells[2], 0.05);
        double length = file.lines().stream().mapToDouble(CurvePath::lengthMm).sum();
        check(length, cells[3], length * 0.001);
    }

    private static void check(double actual, String expected, double within) {
        if (!expected.isBlank()) {
            assertThat(actual).isCloseTo(Double.parseDouble(expected), within(within));
        }
    }

    private static DrawnFile svg(String body) {
        return DrawnFile.read(
                "drawing.svg",
                ("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='80mm' viewBox='0 0 100 80'>"
                                + "<rect x='10' y='10' width='40' height='30' stroke='red' fill='none'/>" + body
                                + "</svg>")
                        .getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @MethodSource("doubtful")
    void what_is_not_interpreted_is_said(String body) {
        assertThat(svg(body).isSure()).as(body).isFalse();
    }

    static List<String> doubtful() {
        String path = " d='M0 0H9' stroke='red'/>";
        return List.of(
                "<mask id='m'/><path mask='url(#m)'" + path,
                "<filter id='f'/><g filter='url(#f)'><path" + path + "</g>",
                "<clipPath id='c'><text>a</text></clipPath><path clip-path='url(#c)'" + path,
                "<path style='clip-path:circle(5px)'" + path,
                "<marker id='m'><path" + path + "</marker><path marker-mid='url(#m)'" + path,
                "<pattern id='p'><path" + path + "</pattern><rect fill='url(#p)' width='5' height='5'/>",
                "<text stroke='red'>a</text>",
                "<foreignObject width='9' height='9'><svg/></foreignObject>",
                "<flowRoot/>",
                "<use href='other.svg#a'/>",
                "<image href='other.svg' width='9' height='9'/>",
                "<script>draw()</script>",
                "<path stroke='red' d='M0 0H9'><animate attributeName='d'/></path>",
                "<style>@import 'other.css';</style>",
                "<style>@media (min-width: 5px) {path{display:none}}</style>",
                "<style>path:has(a){display:none}</style>",
                "<style>path{translate: 5px}</style><path" + path,
                "<path transform='rotateX(40deg)'" + path,
                "<path stroke='red' d='M0 0H9 L nonsense'/>",
                "<rect stroke='red' width='calc(5px + 3%)' height='5'/>");
    }

    @ParameterizedTest
    @MethodSource("plain")
    void what_is_no_line_leaves_the_rest_sure(String body) {
        DrawnFile file = svg(body);
        assertThat(file.isSure()).as("%s %s", body, file.remarks()).isTrue();
        assertThat(file.lines()).as(body).hasSize(1);
    }

    static List<String> plain() {
        return List.of(
                "<rect width='100' height='80' fill='white'/>",
                "<text x='5' y='70'>words</text>",
                "<foreignObject width='9' height='9'><div xmlns='http://www.w3.org/1999/xhtml'>words</div></foreignObject>",
                "<image href='data:image/png;base64,AA' width='9' height='9'/>",
                "<defs><path d='M0 0H9' stroke='red'/></defs>",
                "<symbol id='s'><path d='M0 0H9' stroke='red'/></symbol>",
                "<path d='M0 0H9' stroke='none'/>",
                "<path d='M0 0H9' stroke='red' stroke-opacity='0'/>",
                "<path d='M0 0H9' stroke='red' stroke-width='0'/>",
                "<path d='M0 0H9' stroke='#f000'/>",
                "<path d='M0 0H9' stroke='url(#missing)'/>",
                "<style>.a{visibility:hidden}</style><path class='a' d='M0 0H9' stroke='red'/>",
                "<style>@media print{rect{display:none}} /* rect{display:none} */</style>",
                "<metadata><x:a xmlns:x='http://example.org/'><x:path/></x:a></metadata>");
    }

    @org.junit.jupiter.api.Test
    void a_silhouette_without_any_line_gives_its_outline_and_says_so() {
        DrawnFile file = DrawnFile.read(
                "silhouette.svg",
                ("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='80mm' viewBox='0 0 100 80'>"
                                + "<rect width='100' height='80' fill='white'/><circle cx='50' cy='40' r='10'/></svg>")
                        .getBytes(StandardCharsets.UTF_8));
        assertThat(file.lines()).hasSize(1); // the page's ground is no shape
        assertThat(file.bounds().width()).isCloseTo(20, within(1e-3));
        assertThat(file.isSure()).isFalse();
    }
}
