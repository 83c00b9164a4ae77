package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.cutfiles.Inspection;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * Reads and inspects every SVG and DXF file of a folder, or files made here: puzzles with each line once, and the same
 * puzzles with every piece drawn on its own, where the length doubled is known (the inner lines) and compared.
 *
 * <p>A folder may hold {@code expected.csv} ({@code file,width_mm,height_mm,length_mm}; empty is not checked): size within
 * {@value #SIZE_MM} mm, length within {@value #LENGTH_SHARE} of itself. A file that is refused, or of which something is
 * said not to be interpreted, counts as told; so does one whose figures differ where the file left something open and
 * that was said (its unit). Any other difference is wrong. What is merely left out with a note does not excuse anything.
 */
public final class InspectBenchmark implements Benchmark {

    private static final double SIZE_MM = 0.05;
    private static final double LENGTH_SHARE = 0.001;

    /** NaN where it is not checked. */
    private record Expected(double width, double height, double length) {}

    private int wrong;
    private int told;
    private int files;
    private long segments;
    private double seconds;

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        if (folder.isPresent()) {
            try (Stream<Path> found = Files.walk(folder.get())) {
                Map<String, Expected> expected = expected(folder.get());
                for (Path path :
                        found.filter(InspectBenchmark::isDrawing).sorted().toList()) {
                    byte[] bytes = Files.readAllBytes(path);
                    String name = path.getFileName().toString();
                    try {
                        judge(inspect(name, bytes, out), expected.get(name), out);
                    } catch (Refused refused) {
                        out.printf("%s: refused, %s%n", name, refused.getMessage());
                        files++;
                        told++;
                    }
                }
            }
        } else {
            for (Map.Entry<String, CutPattern> each : puzzles().entrySet()) {
                CutPattern pattern = each.getValue();
                CutPlan once = pattern.plan(CutPlan.Sequence.INNER_FIRST);
                CutPlan twice = CutPlan.of(
                        each.getKey(),
                        pattern.pieces().stream().map(Piece::outline).toList(),
                        List.of(),
                        CutPlan.Sequence.INNER_FIRST);
                for (CutFile.Format format : List.of(CutFile.Format.SVG, CutFile.Format.DXF)) {
                    inspect(
                            each.getKey() + ", each line once, " + format,
                            CutFile.write(once, format).bytes(),
                            out);
                    byte[] doubled = CutFile.write(twice, format).bytes();
                    if (doubled.length > DrawnFile.MOST_BYTES) {
                        continue; // larger than a file may be on the screen
                    }
                    Inspection found = inspect(each.getKey() + ", piece by piece, " + format, doubled, out);
                    out.printf(
                            Locale.ROOT,
                            "    doubled %.1f mm of %.1f known%n",
                            found.savedMm(),
                            pattern.innerLengthMm());
                }
            }
        }
        return String.format(
                Locale.ROOT,
                "files=%d segments=%d wrong=%d told=%d seconds=%.3f",
                files,
                segments,
                wrong,
                told,
                seconds);
    }

    private static Map<String, Expected> expected(Path folder) throws java.io.IOException {
        Map<String, Expected> expected = new LinkedHashMap<>();
        Path list = folder.resolve("expected.csv");
        if (Files.exists(list)) {
            for (String row : Files.readAllLines(list)) {
                String[] cells = row.split(",", -1);
                if (cells.length > 3 && !cells[0].strip().equals("file")) {
                    expected.put(
                            cells[0].strip().replaceAll("^\"|\"$", ""),
                            new Expected(number(cells[1]), number(cells[2]), number(cells[3])));
                }
            }
        }
        return expected;
    }

    private static double number(String cell) {
        return cell.isBlank() ? Double.NaN : Double.parseDouble(cell.strip());
    }

    private void judge(Inspection found, Expected expected, PrintStream out) {
        found.file().remarks().forEach(remark -> out.printf("    %s %s%n", remark.kind(), remark.sentence()));
        if (!found.file().isSure()) {
            told++;
            return;
        }
        if (expected == null) {
            return;
        }
        boolean differs = Math.abs(found.frame().width() - expected.width()) > SIZE_MM
                || Math.abs(found.frame().height() - expected.height()) > SIZE_MM
                || Math.abs(found.totalLengthMm() - expected.length()) > LENGTH_SHARE * expected.length();
        if (!differs) {
            return;
        }
        boolean open = found.file().remarks().stream().anyMatch(remark -> remark.kind() == Remark.Kind.ASSUMED);
        if (open) {
            told++;
        } else {
            wrong++;
        }
        out.printf(
                Locale.ROOT,
                "    %s: %.3f x %.3f mm, %.2f mm long; expected %s%n",
                open ? "TOLD" : "WRONG",
                found.frame().width(),
                found.frame().height(),
                found.totalLengthMm(),
                expected);
    }

    private static boolean isDrawing(Path path) {
        String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
        return Files.isRegularFile(path) && (name.endsWith(".svg") || name.endsWith(".dxf"));
    }

    private Inspection inspect(String name, byte[] bytes, PrintStream out) {
        long started = System.nanoTime();
        Inspection inspection = CutInspector.inspect(DrawnFile.read(name, bytes));
        double took = (System.nanoTime() - started) / 1e9;
        files++;
        segments += inspection.stretches();
        seconds += took;
        out.printf(
                Locale.ROOT,
                "%s: %.1f kB, %d lines, %d segments, %.1f x %.1f mm, %.0f mm long, %.3f s%n",
                name,
                bytes.length / 1e3,
                inspection.file().lines().size(),
                inspection.stretches(),
                inspection.frame().width(),
                inspection.frame().height(),
                inspection.totalLengthMm(),
                took);
        inspection
                .findings()
                .forEach(finding -> out.printf(
                        Locale.ROOT, "    %s: %d, %.1f mm%n", finding.trouble(), finding.count(), finding.lengthMm()));
        return inspection;
    }

    private static Map<String, CutPattern> puzzles() {
        Map<String, CutPattern> puzzles = new LinkedHashMap<>();
        puzzles.put("12 pieces", PatternMaker.make(PatternSpec.of(Size.mm(200, 150), new PieceGrid(4, 3), 1)));
        puzzles.put("500 pieces", PatternMaker.make(PatternSpec.of(Size.mm(500, 400), new PieceGrid(25, 20), 2)));
        puzzles.put("2,000 pieces", PatternMaker.make(PatternSpec.of(Size.mm(1000, 700), new PieceGrid(50, 40), 3)));
        return puzzles;
    }
}
