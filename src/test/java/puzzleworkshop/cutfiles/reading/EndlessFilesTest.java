package puzzleworkshop.cutfiles.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.measure.Refused;

/** Small files that ask for endless work are refused with a sentence, in little time of the processor. */
@Tag("slow")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EndlessFilesTest {

    /** Two seconds on a machine that is not busy; some more here, as a virtual machine warms up. */
    private static final double MOST_CPU_SECONDS = 5;

    private static final String SVG =
            "<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm' viewBox='0 0 9 9' stroke='red' fill='none'>";

    private static String dxf(String blocks, String entities) {
        return "0\nSECTION\n2\nBLOCKS\n" + blocks + "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities
                + "0\nENDSEC\n0\nEOF\n";
    }

    private static final Map<String, String> FILES = new TreeMap<>();

    static {
        String block = "0\nBLOCK\n2\nA\n0\nLINE\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n";
        FILES.put("65536 x 65536 copies.dxf", dxf(block, "0\nINSERT\n2\na\n70\n65536\n71\n65536\n44\n1\n45\n1\n"));
        StringBuilder blocks = new StringBuilder();
        for (int i = 0; i < 15; i++) {
            blocks.append("0\nBLOCK\n2\nB").append(i).append('\n');
            blocks.append(("0\nINSERT\n2\nB" + (i + 1) + "\n").repeat(30)).append("0\nENDBLK\n");
        }
        FILES.put("blocks of blocks.dxf", dxf(blocks.toString(), "0\nINSERT\n2\nB0\n"));
        FILES.put(
                "copies of 20000.svg",
                SVG + "<defs><g id='a'>" + "<path d='M0 0h1'/>".repeat(20_000) + "</g></defs>"
                        + "<use href='#a'/>".repeat(100_000) + "</svg>");
        StringBuilder uses = new StringBuilder(SVG + "<defs>");
        for (int i = 0; i < 40; i++) {
            uses.append("<g id='g").append(i).append("'>");
            uses.append(("<use href='#g" + (i + 1) + "'/>").repeat(2)).append("</g>");
        }
        FILES.put("copies of copies.svg", uses + "<g id='g40'><path d='M0 0h1'/></g></defs><use href='#g0'/></svg>");
        FILES.put("long number.svg", SVG + "<path d='M0 0h" + "1".repeat(2_000_000) + "'/></svg>");
        FILES.put("long number.dxf", dxf("", "0\nLINE\n10\n" + "1".repeat(2_000_000) + "\n20\n0\n11\n1\n21\n1\n"));
        FILES.put("many points.svg", SVG + "<polyline points='" + "1 2 3 4 ".repeat(1_500_000) + "'/></svg>");
        FILES.put("far.svg", SVG + "<path d='M0 0L1e308 -1e308'/></svg>");
        FILES.put(
                "farther.svg",
                SVG + "<g transform='scale(1e300)'><path transform='scale(1e300)' d='M0 0h1'/></g></svg>");
        FILES.put("far.dxf", dxf("", "0\nCIRCLE\n10\n0\n20\n0\n40\n1e308\n"));
        FILES.put("no number.dxf", dxf("", "0\nLINE\n10\nNaN\n20\n0\n11\nInfinity\n21\n1\n"));
        FILES.put("deep.svg", SVG + "<g>".repeat(100_000) + "</g>".repeat(100_000) + "</svg>");
        StringBuilder rules = new StringBuilder(SVG + "<style>");
        for (int i = 1; i < 10_000; i++) {
            rules.append("g g g > path:nth-of-type(").append(i).append("n) ~ path{stroke:red}");
        }
        FILES.put(
                "quadratic styles.svg",
                rules + "</style>" + "<g>".repeat(20) + "<path d='M0 0h1'/>".repeat(20_000) + "</g>".repeat(20)
                        + "</svg>");
        FILES.put("lines on one spot.svg", SVG + "<path d='M0 0h100'/>".repeat(40_000) + "</svg>");
        FILES.put(
                "points on one spot.svg",
                SVG + "<path d='M0 0L9000 9000 0 0" + "l.01 .01l-.01 0".repeat(400_000) + "'/></svg>");
        FILES.put("arcs.svg", SVG + "<path d='M0 0" + "a1 1 0 1 1 .01 .01".repeat(500_000) + "'/></svg>");
    }

    static Stream<String> names() {
        return FILES.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void a_file_that_asks_for_too_much_is_refused(String name) {
        byte[] bytes = FILES.get(name).getBytes(StandardCharsets.US_ASCII);
        var clock = ManagementFactory.getThreadMXBean();
        long started = clock.getCurrentThreadCpuTime();
        boolean refused = false;
        try {
            CutInspector.inspect(DrawnFile.read(name, bytes));
        } catch (Refused expected) {
            refused = true;
        }
        assertThat(refused).isTrue();
        assertThat((clock.getCurrentThreadCpuTime() - started) / 1e9).isLessThan(MOST_CPU_SECONDS);
    }

    @Test
    void reading_stops_when_nobody_waits_for_it() {
        Thread.currentThread().interrupt();
        try {
            DrawnFile.read(
                    "many.svg",
                    (SVG + "<path d='M0 0h1'/>".repeat(5_000) + "</svg>").getBytes(StandardCharsets.US_ASCII));
            assertThat(true).as("it should have been given up").isFalse();
        } catch (Refused given) {
            assertThat(given.sentence().key()).isEqualTo("cutfiles.file.too_much_work");
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }
}
