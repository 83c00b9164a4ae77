package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import puzzleworkshop.bench.PieceEdges;
import puzzleworkshop.camera.MadeUpPicture;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.camera.pieces.PieceShape;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * Counting pieces and naming the missing ones. With a folder: each {@code NAME.txt} with {@code NAME.jpg} (and {@code NAME-2.jpg},
 * {@code NAME-3.jpg} … for large puzzles) beside it. The text has one {@code key value} a line, in any order, # begins a remark:
 * {@code pattern} the pattern's number, {@code size} width and height in mm, {@code pieces} across and down (or the total),
 * {@code style} knobs, wavy or straight (knobs), {@code thickness} in mm (3), {@code kerf} in mm (0.15), {@code edge} square, rounded
 * or wavy (square), {@code missing} numbers of the missing pieces in reading order from 1, or row:column, or none. Without a folder: sets rendered
 * from the program's own patterns; -Dbench.images says how many photos at least (4), -Dbench.pieces 24, 48 or 300 (both: 0),
 * -Dbench.laying how the pieces lie: down, up (a picture with some clouds), cloth (dark, with the cards) or cloth-up; -Dbench.clouds
 * how white the clouds are (0 to 1: 0.5), -Dbench.pixels the longer side of the photos (4032), -Dbench.keep a folder for them.
 */
public final class PiecesBenchmark implements Benchmark {

    private int images;
    private int pieces;
    private int countWrong;
    private int missing;
    private int named;
    private int namedWrong;
    private int refused;
    private double seconds;
    private PrintStream out;

    @Override
    public String run(Optional<Path> folder, PrintStream to) throws IOException {
        out = to;
        if (folder.isPresent()) {
            try (Stream<Path> files = Files.walk(folder.get())) {
                for (Path file : files.filter(f -> f.toString().endsWith(".txt"))
                        .sorted()
                        .toList()) {
                    readSet(file);
                }
            }
        } else {
            renderSets();
        }
        return String.format(
                "images=%d pieces=%d count_wrong=%d missing_named_percent=%.1f named_wrong=%d refused=%d seconds=%.2f",
                images,
                pieces,
                countWrong,
                missing == 0 ? 100.0 : 100.0 * named / missing,
                namedWrong,
                refused,
                seconds / Math.max(1, images));
    }

    private void readSet(Path file) throws IOException {
        String stem = file.getFileName().toString().replaceAll("\\.txt$", "");
        List<byte[]> photos = new ArrayList<>();
        try (Stream<Path> beside = Files.list(file.toAbsolutePath().getParent())) {
            for (Path photo : beside.sorted().toList()) {
                String name = photo.getFileName().toString();
                if (name.toLowerCase(Locale.ROOT).matches(".*\\.jpe?g")
                        && name.replaceAll("\\.[^.]*$", "").matches(java.util.regex.Pattern.quote(stem) + "(-\\d+)?")) {
                    photos.add(Files.readAllBytes(photo));
                }
            }
        }
        if (photos.isEmpty()) {
            return;
        }
        Map<String, String> facts = new TreeMap<>();
        for (String line : Files.readString(file).split("\\R")) {
            String[] words = line.replaceAll("#.*", "").trim().split("[\\s:=]+", 2);
            if (words.length == 2) {
                facts.put(words[0].toLowerCase(Locale.ROOT), words[1].trim());
            }
        }
        CutPattern pattern = PatternMaker.make(spec(facts));
        Set<Integer> gone = new HashSet<>();
        for (String word : facts.getOrDefault("missing", "").split("[\\s,;]+")) {
            if (word.matches("\\d+")) {
                gone.add(Integer.valueOf(word));
            } else if (word.matches("\\d+[:/x]\\d+")) {
                String[] place = word.split("[:/x]");
                gone.add(
                        (Integer.parseInt(place[0]) - 1) * pattern.spec().grid().columns()
                                + Integer.parseInt(place[1]));
            }
        }
        judge(stem, pattern, photos, gone);
    }

    private static PatternSpec spec(Map<String, String> facts) {
        String[] size = facts.get("size").replaceAll("mm", "").trim().split("[\\s,x×]+");
        Size finished = Size.mm(Double.parseDouble(size[0]), Double.parseDouble(size[1]));
        String[] count = facts.get("pieces").trim().split("[\\s,x×]+");
        PieceGrid grid = count.length > 1
                ? new PieceGrid(Integer.parseInt(count[0]), Integer.parseInt(count[1]))
                : PieceGrid.nearest(finished, Integer.parseInt(count[0]));
        return new PatternSpec(
                finished,
                grid,
                Long.parseLong(facts.get("pattern")),
                CutStyle.valueOf(facts.getOrDefault("style", "knobs").toUpperCase(Locale.ROOT)),
                PuzzleEdge.usual(PuzzleEdge.Kind.valueOf(
                        facts.getOrDefault("edge", "square").toUpperCase(Locale.ROOT))),
                Length.mm(Double.parseDouble(facts.getOrDefault("thickness", "3"))),
                Length.mm(Double.parseDouble(facts.getOrDefault("kerf", "0.15"))),
                List.of());
    }

    private void renderSets() {
        int wanted = Integer.getInteger("bench.images", 4);
        int only = Integer.getInteger("bench.pieces", 48);
        long seed = Long.getLong("bench.seed", 20261129);
        for (int set = 0; images < wanted; set++) {
            Random random = new Random(seed + set);
            boolean large = only == 300 || only == 0 && set % 3 == 2;
            CutPattern pattern = PatternMaker.make(
                    large
                            ? PatternSpec.of(Size.mm(400, 300), new PieceGrid(20, 15), seed + set)
                            : only == 24
                                    ? PatternSpec.of(Size.mm(180, 120), new PieceGrid(6, 4), seed + set)
                                    : PatternSpec.of(Size.mm(240, 180), new PieceGrid(8, 6), seed + set));
            Set<Integer> gone = new HashSet<>();
            for (int i = set % 3; i < 3; i++) {
                gone.add(1 + random.nextInt(pattern.pieces().size()));
            }
            List<Piece> waiting = new ArrayList<>(pattern.pieces());
            waiting.removeIf(piece -> gone.contains(piece.number()));
            List<byte[]> photos = new ArrayList<>();
            while (!waiting.isEmpty()) {
                photos.add(RenderedPhoto.jpeg(PieceScenes.lay(waiting, pattern, random, laying(pattern, set))));
            }
            judge("seed " + (seed + set), pattern, photos, gone);
        }
    }

    private static PieceScenes.Laying laying(CutPattern pattern, int set) {
        String how = System.getProperty("bench.laying", "down");
        int pixels = Integer.getInteger("bench.pixels", 4032);
        Scene.Face picture = how.endsWith("up")
                ? MadeUpPicture.landscape(
                        pattern.spec().size().width().mm(),
                        pattern.spec().size().height().mm(),
                        Double.parseDouble(System.getProperty("bench.clouds", "0.5")),
                        set)
                : null;
        return how.startsWith("cloth")
                ? PieceScenes.Laying.onCloth(pixels, new double[] {0.02, 0.022, 0.03}, picture)
                : PieceScenes.Laying.onSheet(MeasuringSheet.A3, pixels, picture);
    }

    private void judge(String name, CutPattern pattern, List<byte[]> jpegs, Set<Integer> gone) {
        List<PieceShape> shapes = PieceEdges.of(pattern);
        List<Photo> photos = jpegs.stream().map(RenderedPhoto::read).toList();
        int lying = shapes.size() - gone.size();
        images += photos.size();
        pieces += lying;
        missing += gone.size();
        double thickness = pattern.spec().thickness().mm();
        long started = System.nanoTime();
        PieceCheck.Result result;
        try {
            result = PieceCheck.of(shapes, photos, thickness, 1);
        } catch (Refused no) {
            refused++;
            out.printf("%s refused: %s%n", name, no.sentence().key());
            return;
        }
        double took = (System.nanoTime() - started) / 1e9;
        seconds += took;
        String keep = System.getProperty("bench.keep");
        if (keep != null) {
            for (int i = 0; i < jpegs.size(); i++) {
                keep(Path.of(keep, name.replace(' ', '-') + "-" + i + ".jpg"), jpegs.get(i));
            }
        }
        if (!result.troubles().isEmpty()) {
            refused++;
        } else if (result.seen().size() != lying) {
            countWrong++;
        }
        int right = 0;
        int wrong = 0;
        for (List<Integer> group : result.missing()) {
            if (group.size() == 1 && gone.contains(group.getFirst())) {
                right++;
            } else if (group.stream().noneMatch(gone::contains)) {
                wrong++;
            }
        }
        named += right;
        namedWrong += wrong;
        double worst = result.seen().stream()
                .mapToDouble(PieceCheck.SeenPiece::distanceMm)
                .max()
                .orElse(0);
        out.printf(
                "%s: %d of %d pieces in %d photos, %d found; missing %s, said %s; foreign %d, %s; farthest %.3f mm"
                        + " (%.2f s)%n",
                name,
                lying,
                shapes.size(),
                photos.size(),
                result.seen().size(),
                gone,
                result.missing(),
                result.foreign(),
                result.troubles().stream().map(t -> t.key()).toList(),
                worst,
                took);
    }

    private static void keep(Path file, byte[] jpeg) {
        try {
            Files.write(file, jpeg);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
