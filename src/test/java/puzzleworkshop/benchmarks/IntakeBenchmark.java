package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import puzzleworkshop.artwork.pixels.Jpeg;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;

/**
 * From a large file to its proof picture of 1,600 pixels, with focus and light measured on the way. The peer is
 * ImageMagick's {@code convert} doing the same reduction in a process of its own, where there is one. Run it with
 * {@code -Dbench.heap=256m}. A folder may hold picture files of your own.
 */
public final class IntakeBenchmark implements Benchmark {

    private static final int SIDE = 10_000;
    private static final int ROUNDS = 3;

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        List<Path> files = folder.isPresent() ? filesIn(folder.get()) : List.of(hundredMegapixels());
        out.printf(
                Locale.ROOT,
                "heap at most %d MB%n%-28s %8s %9s %9s %7s%n",
                Runtime.getRuntime().maxMemory() >> 20,
                "file",
                "MP",
                "ours s",
                "convert s",
                "ratio");
        double megapixels = 0;
        double seconds = 0;
        for (Path file : files) {
            ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
            double size = (double) facts.storedWidth() * facts.storedHeight() / 1e6;
            double ours = best(
                    () -> Jpeg.write(Survey.of(file, facts, 1600, share -> {}).copy(), 0.86f));
            double peer = peer(file);
            out.printf(
                    Locale.ROOT,
                    "%-28s %8.1f %9.2f %9s %7s%n",
                    file.getFileName(),
                    size,
                    ours,
                    peer > 0 ? String.format(Locale.ROOT, "%.2f", peer) : "absent",
                    peer > 0 ? String.format(Locale.ROOT, "%.2f", ours / peer) : "-");
            megapixels += size;
            seconds += ours;
        }
        if (folder.isEmpty()) {
            Files.deleteIfExists(files.getFirst());
        }
        return String.format(
                Locale.ROOT,
                "megapixels=%d seconds=%.2f peak_heap_mb=%d",
                Math.round(megapixels),
                seconds,
                peakHeapMegabytes());
    }

    @FunctionalInterface
    private interface Work {
        void run() throws Exception;
    }

    private static double best(Work work) throws Exception {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            work.run();
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        return best;
    }

    private static double peer(Path file) throws Exception {
        Path result = Files.createTempFile("peer-", ".jpg");
        try {
            return best(() -> {
                Process process = new ProcessBuilder(
                                "convert", file.toString(), "-resize", "1600x1600", "-quality", "86", result.toString())
                        .redirectErrorStream(true)
                        .start();
                process.getInputStream().readAllBytes();
                if (process.waitFor() != 0) {
                    throw new IOException("convert failed");
                }
            });
        } catch (IOException absent) {
            return 0;
        } finally {
            Files.deleteIfExists(result);
        }
    }

    private static List<Path> filesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new ArrayList<>(files.filter(Files::isRegularFile).sorted().toList());
        }
    }

    /** Waves with noise, written row by row: the picture itself would not fit into the heap. */
    private static Path hundredMegapixels() throws IOException {
        Random random = new Random(1);
        byte[] row = new byte[SIDE * 3];
        byte[] noise = new byte[SIDE * 3 + 4096];
        random.nextBytes(noise);
        byte[] jpeg = Jpeg.write(SIDE, SIDE, 300, 0.9f, y -> {
            int shift = random.nextInt(4096);
            double wave = Math.sin(y / 53.0);
            for (int i = 0; i < row.length; i++) {
                double value = 128 + 60 * Math.sin(i / (111.0 + 15 * (i % 3))) * wave;
                row[i] = (byte) (value + (noise[i + shift] & 15));
            }
            return row;
        });
        return Files.write(Files.createTempFile("hundred-megapixels-", ".jpg"), jpeg);
    }

    private static long peakHeapMegabytes() {
        long peak = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            if (pool.getType() == MemoryType.HEAP) {
                peak += pool.getPeakUsage().getUsed();
            }
        }
        return peak >> 20;
    }
}
