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
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Jpeg;
import puzzleworkshop.printing.LargeRun;

/**
 * The print file of a run of twelve pictures of 50 megapixels, once with pictures that go as they are and once with the
 * same drawn anew because their overhang shows the last row drawn on. Run it with {@code -Dbench.heap=64m} or so: what it
 * shows is that memory does not grow with the pictures. A folder may hold picture files of your own.
 */
public final class GangBenchmark implements Benchmark {

    private static final int PICTURES = 12;
    private static final int WIDTH = 8660;
    private static final int HEIGHT = 5774;

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path work = Files.createTempDirectory("gang-");
        List<Path> files = folder.isPresent() ? filesIn(folder.get()) : pictures(work);
        out.printf(
                Locale.ROOT,
                "heap at most %d MB, %d pictures%n%-12s %10s %8s %8s %10s%n",
                Runtime.getRuntime().maxMemory() >> 20,
                files.size(),
                "",
                "untouched",
                "s",
                "PDF MB",
                "peak MB");
        double asTheyAre = one("as they are", Crop.Edge.MIRRORED, files, work, out);
        long peakAsTheyAre = peakHeapMegabytes();
        double drawn = one("drawn anew", Crop.Edge.EXTENDED, files, work, out);
        long peakDrawn = peakHeapMegabytes();
        try (Stream<Path> left = Files.list(work)) {
            for (Path file : left.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(work);
        return String.format(
                Locale.ROOT,
                "pictures=%d seconds=%.1f peak_heap_mb=%d drawn_seconds=%.1f drawn_peak_heap_mb=%d",
                files.size(),
                asTheyAre,
                peakAsTheyAre,
                drawn,
                peakDrawn);
    }

    private static double one(String name, Crop.Edge edge, List<Path> files, Path work, PrintStream out)
            throws IOException {
        ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
        Path pdf = work.resolve("run.pdf");
        long start = System.nanoTime();
        int untouched = LargeRun.write(files, new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, Crop.WHITE, edge), pdf);
        double seconds = (System.nanoTime() - start) / 1e9;
        out.printf(
                Locale.ROOT,
                "%-12s %10d %8.1f %8d %10d%n",
                name,
                untouched,
                seconds,
                Files.size(pdf) >> 20,
                peakHeapMegabytes());
        return seconds;
    }

    private static List<Path> filesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new ArrayList<>(files.filter(Files::isRegularFile).sorted().toList());
        }
    }

    /** Waves with the noise of a sensor, each picture another; written row by row. */
    private static List<Path> pictures(Path work) throws IOException {
        List<Path> files = new ArrayList<>();
        byte[] row = new byte[WIDTH * 3];
        byte[] noise = new byte[WIDTH * 3 + 4096];
        for (int p = 0; p < PICTURES; p++) {
            Random random = new Random(p);
            random.nextBytes(noise);
            double wide = 90 + 20 * p;
            Path file = work.resolve("%02d.jpg".formatted(p));
            Jpeg.write(
                    WIDTH,
                    HEIGHT,
                    300,
                    0.9f,
                    y -> {
                        int shift = random.nextInt(4096);
                        double wave = 60 * Math.sin(y / 53.0);
                        for (int i = 0; i < row.length; i++) {
                            row[i] = (byte) (128 + wave * Math.sin(i / wide) + (noise[i + shift] & 15));
                        }
                        return row;
                    },
                    file);
            files.add(file);
        }
        return files;
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
