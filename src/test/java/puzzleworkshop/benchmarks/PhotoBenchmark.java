package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.PhoneLook;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.RandomScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.traced.TracedPhoto;
import puzzleworkshop.camera.traced.TracedScene;
import puzzleworkshop.measure.Refused;

/**
 * Outlines from photos against the truth. With a folder: each {@code *.jpg} with a {@code *.txt} of the same name beside it, whose
 * first line is the thickness in mm and whose further lines are the true outline, {@code x y} in mm, in any position and turn
 * (empty lines and lines that begin with # are passed over). Without: photos rendered from a seed, 12 megapixels, most of A3, every second one by
 * another renderer ({@link TracedPhoto}; -Dbench.renderer=traced or samples: all by one of them, -Dbench.megapixels: how large the traced ones are); -Dbench.images
 * says how many (24), -Dbench.seed another seed, -Dbench.keep a folder to write them to. -Dbench.phone=true
 * makes of each photo, of either kind, what phones usually hand over ({@link PhoneLook}).
 */
public final class PhotoBenchmark implements Benchmark {

    private static final double WRONG_MM = 3;

    private int images;
    private int refused;
    private int wrong;
    private final List<Double> means = new ArrayList<>();
    private final List<Double> p95s = new ArrayList<>();
    private double outside;
    private double seconds;
    private PrintStream out;

    @Override
    public String run(Optional<Path> folder, PrintStream to) throws IOException {
        out = to;
        if (folder.isPresent()) {
            readAll(folder.get());
        } else {
            renderAll();
        }
        p95s.sort(null);
        return String.format(
                "images=%d refused=%d wrong=%d mean_error_mm=%.3f p95_error_mm=%.3f outside_mm=%.3f seconds=%.2f",
                images,
                refused,
                wrong,
                means.stream().mapToDouble(d -> d).average().orElse(0),
                // the 95th percentile over all points of all photos: the mean of theirs would hide a bad one, so the
                // worst twentieth counts
                p95s.isEmpty() ? 0 : p95s.get((int) Math.min(p95s.size() - 1, Math.round(0.95 * p95s.size()))),
                outside,
                seconds / Math.max(1, images));
    }

    private void readAll(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> f.toString().toLowerCase().matches(".*\\.jpe?g"))
                    .sorted()
                    .toList()) {
                Path beside = Path.of(file.toString().replaceAll("\\.[^.]*$", ".txt"));
                if (Files.exists(beside)) {
                    double[] numbers = numbers(Files.readString(beside));
                    double[] truth = java.util.Arrays.copyOfRange(numbers, 1, numbers.length / 2 * 2 + 1);
                    judge(file.getFileName().toString(), Files.readAllBytes(file), numbers[0], truth);
                }
            }
        }
    }

    private static double[] numbers(String text) {
        return text.lines()
                .map(line -> line.replaceAll("#.*", "").trim())
                .filter(line -> !line.isEmpty())
                .flatMap(line -> Stream.of(line.split("[\\s,;]+")))
                .filter(word -> word.matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private void renderAll() throws IOException {
        int count = Integer.getInteger("bench.images", 24);
        long seed = Long.getLong("bench.seed", 20261129);
        double megapixels = Double.parseDouble(System.getProperty("bench.megapixels", "12"));
        String only = System.getProperty("bench.renderer", "both");
        MeasuringSheet[] sheets = {
            MeasuringSheet.A3, MeasuringSheet.A3, MeasuringSheet.A4, MeasuringSheet.A3, MeasuringSheet.LETTER
        };
        for (int i = 0; i < count; i++) {
            Random random = new Random(seed + i);
            MeasuringSheet sheet = sheets[i % sheets.length];
            if (only.equals("traced") || only.equals("both") && i % 2 == 1) {
                TracedScene scene = TracedScene.next(random, sheet, megapixels);
                rendered("traced " + (seed + i), TracedPhoto.jpeg(scene), scene.thickness, scene.outlines.getFirst());
            } else {
                Scene scene = RandomScenes.next(random, sheet);
                Scene.Board board = scene.boards.getFirst();
                rendered("seed " + (seed + i), RenderedPhoto.jpeg(scene), board.thickness, board.rings.getFirst());
            }
        }
    }

    private void rendered(String name, byte[] jpeg, double thickness, double[] truth) throws IOException {
        String keep = System.getProperty("bench.keep");
        if (keep != null) {
            String stem = name.replace(' ', '-');
            Files.write(Path.of(keep, stem + ".jpg"), jpeg);
            StringBuilder text = new StringBuilder(thickness + "\n");
            for (int k = 0; k < truth.length; k += 2) {
                text.append(truth[k]).append(' ').append(truth[k + 1]).append('\n');
            }
            Files.writeString(Path.of(keep, stem + ".txt"), text);
        }
        judge(name, jpeg, thickness, truth);
    }

    private void judge(String name, byte[] jpeg, double thickness, double[] truth) {
        images++;
        Photo photo = RenderedPhoto.read(Boolean.getBoolean("bench.phone") ? PhoneLook.of(jpeg, images) : jpeg);
        if (images == 1) {
            // the first photo also loads the classes
            attempt(photo, thickness);
        }
        long started = System.nanoTime();
        Object answer = attempt(photo, thickness);
        double took = (System.nanoTime() - started) / 1e9;
        seconds += took;
        if (answer instanceof Refused no) {
            refused++;
            out.printf(
                    "%-28s refused: %s %s (%.2f s)%n",
                    name, no.sentence().key(), no.sentence().arguments(), took);
            return;
        }
        FoundBoard board = (FoundBoard) answer;
        double[] found = new double[2 * board.outer().size()];
        for (int i = 0; i < board.outer().size(); i++) {
            found[2 * i] = board.outer().get(i).xMm();
            found[2 * i + 1] = board.outer().get(i).yMm();
        }
        OutlineError error = OutlineError.between(truth, found, board.uncertaintyMm());
        means.add(error.mean());
        p95s.add(error.p95());
        outside = Math.max(outside, error.outside());
        wrong += error.largest() > WRONG_MM ? 1 : 0;
        out.printf(
                "%-28s %4.1f mm thick, %3d corners of %3d: mean %.3f, p95 %.3f, largest %.3f mm; unsure by %.2f,"
                        + " outside %.3f mm (%.2f s)%n",
                name,
                thickness,
                found.length / 2,
                truth.length / 2,
                error.mean(),
                error.p95(),
                error.largest(),
                board.uncertaintyMm(),
                error.outside(),
                took);
    }

    private static Object attempt(Photo photo, double thickness) {
        try {
            return BoardFinder.find(photo, thickness, 1).boards().getFirst();
        } catch (Refused no) {
            return no;
        }
    }
}
