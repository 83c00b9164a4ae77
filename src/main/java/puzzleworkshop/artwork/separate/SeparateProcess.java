package puzzleworkshop.artwork.separate;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Runs one of our own classes in a Java process of its own, with a bound on its time and on its memory, and ends it when it
 * passes one. A thread that draws a stranger's page cannot be stopped, and what native decoders take lies outside any heap;
 * a process can be ended, and all it had is free.
 *
 * <p>The process gets a folder of its own for everything it writes; the folder is gone afterwards, however the process
 * ended. It ends by itself when this program does. Its memory is watched where the system tells it (Linux); elsewhere the
 * heap's bound and the bounds on what is decoded at all must do.
 */
final class SeparateProcess {

    /** Of the folder in which a file is read; with the number of this process: several programs share one temporary folder. */
    private static final String FOLDER =
            "puzzle-reading-" + ProcessHandle.current().pid() + "-";

    /** What the heap may take; a page of 24 megapixels and three transparent groups of its size fit. */
    private static final int HEAP_MEGABYTES = 448;

    /** Heap, native decoders and the machine itself. */
    private static final long MOST_BYTES = 600L << 20;

    /** By the clock it may take so many times as long as on the processor, which other work may keep busy. */
    private static final int MOST_TIMES = 6;

    private static final int LOOK_EVERY_MILLIS = 20;
    private static final int PAGE_BYTES = 4096;

    /** How it ended. */
    enum End {
        DONE,
        TOO_LONG,
        TOO_MUCH_MEMORY,
        /** It fell over: the machine itself broke, or could not start. */
        BROKEN
    }

    /** What is done in the folder before the process starts, and what is fetched from it after it has ended. */
    @FunctionalInterface
    interface Fetch<T> {
        T from(Path folder, End end) throws IOException;
    }

    private SeparateProcess() {}

    /**
     * @param main a class with a main method, on our own class path
     * @param arguments for it; its working folder is empty and its own
     * @param time on the processor, where the system tells that of a process, else by the clock; by the clock never more than six
     *     times as long
     * @param line told each line that it prints, from a thread of this call
     * @param fetch takes what it left in its folder
     */
    static <T> T run(Class<?> main, List<String> arguments, Duration time, Consumer<String> line, Fetch<T> fetch)
            throws IOException {
        Path folder = Files.createTempDirectory(FOLDER);
        try {
            Process process = new ProcessBuilder(command(main, arguments, folder))
                    .directory(folder.toFile())
                    .redirectError(folder.resolve("errors").toFile())
                    .start();
            End end;
            try {
                end = watch(process, time, line);
            } finally {
                process.destroyForcibly();
                waitUntilGone(process);
            }
            return fetch.from(folder, end);
        } finally {
            delete(folder);
        }
    }

    private static List<String> command(Class<?> main, List<String> arguments, Path folder) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", isWindows() ? "java.exe" : "java")
                        .toString(),
                "-Xmx" + HEAP_MEGABYTES + "m",
                "-Xms32m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:MaxMetaspaceSize=96m",
                "-XX:MaxDirectMemorySize=32m",
                "-XX:-UsePerfData",
                "-XX:-CreateCoredumpOnCrash",
                "-XX:ErrorFile=" + folder.resolve("broken.log"),
                "-Xshare:auto",
                "-Djava.awt.headless=true",
                "-Dslf4j.provider=org.slf4j.helpers.NOP_FallbackServiceProvider",
                "-Djava.io.tmpdir=" + folder,
                "-Dpdfbox.fontcache=" + fontCache(),
                "--enable-native-access=ALL-UNNAMED"));
        command.addAll(OwnClassPath.start(main));
        command.addAll(arguments);
        return command;
    }

    private static boolean isWindows() {
        return System.getProperty("os.name", "").startsWith("Windows");
    }

    /** Whether an earlier process has found out which fonts there are (the library's own file name). */
    static boolean knowsFonts() {
        return Files.exists(fontCache().resolve(".pdfbox.cache"));
    }

    /** Which fonts a computer has is found out once and kept between processes. */
    private static Path fontCache() {
        Path cache = Path.of(System.getProperty("java.io.tmpdir"), "puzzle-fonts-" + System.getProperty("user.name"));
        try {
            return Files.createDirectories(cache);
        } catch (IOException unwritable) {
            return cache.getParent();
        }
    }

    private static End watch(Process process, Duration time, Consumer<String> line) {
        long start = System.nanoTime();
        AtomicReference<RuntimeException> failed = new AtomicReference<>();
        Thread lines = Thread.ofVirtual().name("reading-lines").start(() -> {
            try (BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                for (String told = out.readLine(); told != null; told = out.readLine()) {
                    line.accept(told);
                }
            } catch (IOException ended) {
                // its end of the line is gone with it
            } catch (RuntimeException fault) {
                failed.set(fault);
            }
        });
        try {
            while (!process.waitFor(LOOK_EVERY_MILLIS, TimeUnit.MILLISECONDS)) {
                if (isUsedUp(time, Duration.ofNanos(System.nanoTime() - start), process)) {
                    return End.TOO_LONG;
                }
                if (residentBytes(process.pid()) > MOST_BYTES) {
                    return End.TOO_MUCH_MEMORY;
                }
            }
            lines.join(1000);
            if (failed.get() != null) {
                throw failed.get();
            }
            return process.exitValue() == 0 ? End.DONE : End.BROKEN;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return End.TOO_LONG;
        }
    }

    private static boolean isUsedUp(Duration time, Duration passed, Process process) {
        if (passed.compareTo(time) <= 0) {
            return false;
        }
        Duration worked = process.info().totalCpuDuration().orElse(passed);
        return worked.compareTo(time) > 0 || passed.compareTo(time.multipliedBy(MOST_TIMES)) > 0;
    }

    /** Second field of Linux's {@code /proc/PID/statm} (man 5 proc): pages in memory; 0 where it is not told. */
    private static long residentBytes(long pid) {
        try {
            String[] fields = Files.readString(Path.of("/proc", Long.toString(pid), "statm"))
                    .split(" ");
            return Long.parseLong(fields[1]) * PAGE_BYTES;
        } catch (IOException | RuntimeException untold) {
            return 0;
        }
    }

    private static void waitUntilGone(Process process) {
        boolean interrupted = Thread.interrupted();
        try {
            process.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException again) {
            interrupted = true;
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
        }
    }
}
