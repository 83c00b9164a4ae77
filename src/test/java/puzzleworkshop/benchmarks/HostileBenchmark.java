package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import puzzleworkshop.artwork.OutsidePictures;
import puzzleworkshop.cutfiles.CutInspector;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.database.OutsideBackups;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.TestServer;
import puzzleworkshop.support.hostile.HostileBackups;
import puzzleworkshop.support.hostile.HostileCutFiles;
import puzzleworkshop.support.hostile.HostilePictures;

/**
 * Files made to do harm, each through the reader that the program uses: {@code FOLDER/pictures}, {@code FOLDER/cutfiles},
 * {@code FOLDER/backups}; without a folder its own four hundred. A file may be taken or refused in a sentence; anything else
 * is a fault, and more than five seconds are a hang. Run it with {@code -Dbench.heap=512m}. The memory is the largest sum of
 * what this process and the processes it started held at one time; the database, which is another server's, is not in it.
 */
public final class HostileBenchmark implements Benchmark {

    private static final long SEED = 20261129;
    private static final double HANG_SECONDS = 5;
    private static final long GIVEN_UP_SECONDS = 60;
    private static final int PAGE_BYTES = 4096;

    private int taken;
    private int refused;
    private int faults;
    private int hangs;
    private int files;

    @FunctionalInterface
    private interface Reader {
        void read(Path file) throws Exception;
    }

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path own = Files.createTempDirectory("hostile-");
        Path all = folder.orElse(own);
        if (folder.isEmpty()) {
            write(own.resolve("pictures"), HostilePictures.all(SEED));
            write(own.resolve("cutfiles"), HostileCutFiles.all(SEED));
            write(own.resolve("backups"), HostileBackups.all(SEED));
        }
        System.gc();
        AtomicLong peak = new AtomicLong();
        Thread watch = Thread.ofPlatform().daemon().start(() -> watch(peak));
        OutsidePictures pictures = new OutsidePictures();
        out.printf(Locale.ROOT, "%-46s %9s %7s  %s%n", "file", "bytes", "s", "what became of it");
        readAll(all.resolve("pictures"), pictures::look, () -> {}, out);
        readAll(
                all.resolve("cutfiles"),
                file -> CutInspector.inspect(DrawnFile.read(file.getFileName().toString(), Files.readAllBytes(file))),
                () -> {},
                out);
        if (Files.isDirectory(all.resolve("backups"))) {
            TestServer server = TestServer.shared();
            OutsideBackups backups = new OutsideBackups(server.url(), server.user(), server.password());
            backups.makeEmpty();
            readAll(all.resolve("backups"), backups::read, backups::makeEmpty, out);
        }
        watch.interrupt();
        watch.join();
        if (folder.isEmpty()) {
            delete(own);
        }
        return String.format(
                Locale.ROOT,
                "files=%d taken=%d refused=%d faults=%d hangs=%d peak_rss_mb=%d",
                files,
                taken,
                refused,
                faults,
                hangs,
                peak.get() >> 20);
    }

    /** @param afterTaken makes ready for the next, not counted */
    private void readAll(Path folder, Reader reader, Runnable afterTaken, PrintStream out) throws Exception {
        if (!Files.isDirectory(folder)) {
            return;
        }
        for (Path file : filesIn(folder)) {
            long start = System.nanoTime();
            CompletableFuture<String> answer = new CompletableFuture<>();
            Thread.ofVirtual().start(() -> answer.complete(outcome(reader, file)));
            String outcome;
            try {
                outcome = answer.get(GIVEN_UP_SECONDS, TimeUnit.SECONDS);
            } catch (TimeoutException endless) {
                outcome = "hang, given up";
            } catch (ExecutionException impossible) {
                throw new IllegalStateException(impossible);
            }
            double seconds = (System.nanoTime() - start) / 1e9;
            files++;
            hangs += seconds > HANG_SECONDS ? 1 : 0;
            taken += outcome.equals("taken") ? 1 : 0;
            refused += outcome.startsWith("refused") ? 1 : 0;
            faults += outcome.startsWith("fault") ? 1 : 0;
            out.printf(
                    Locale.ROOT,
                    "%-46s %9d %7.2f  %s%s%n",
                    folder.getFileName() + "/" + file.getFileName(),
                    Files.size(file),
                    seconds,
                    outcome,
                    seconds > HANG_SECONDS ? "  HANG" : "");
            if (outcome.equals("taken")) {
                afterTaken.run();
            }
        }
    }

    private static String outcome(Reader reader, Path file) {
        try {
            reader.read(file);
            return "taken";
        } catch (Refused said) {
            return "refused: " + said.sentence().key();
        } catch (Throwable fault) {
            return "fault: " + fault;
        }
    }

    private static void watch(AtomicLong peak) {
        ProcessHandle self = ProcessHandle.current();
        while (!Thread.currentThread().isInterrupted()) {
            long sum = resident(self.pid());
            for (ProcessHandle child : self.descendants().toList()) {
                sum += resident(child.pid());
            }
            peak.accumulateAndGet(sum, Math::max);
            try {
                Thread.sleep(20);
            } catch (InterruptedException done) {
                return;
            }
        }
    }

    /** Second field of {@code /proc/PID/statm} (man 5 proc): pages in memory. */
    private static long resident(long pid) {
        try {
            return Long.parseLong(Files.readString(Path.of("/proc", Long.toString(pid), "statm"))
                            .split(" ")[1])
                    * PAGE_BYTES;
        } catch (IOException | RuntimeException gone) {
            return 0;
        }
    }

    private static List<Path> filesIn(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return new ArrayList<>(all.filter(Files::isRegularFile).sorted().toList());
        }
    }

    private static void write(Path folder, Map<String, byte[]> files) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
    }

    private static void delete(Path folder) throws IOException {
        for (Path file : filesIn(folder)) {
            Files.delete(file);
        }
    }
}
