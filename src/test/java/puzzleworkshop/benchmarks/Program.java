package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import puzzleworkshop.PuzzleWorkshop;

/** The whole program as a process of its own, as people start it. */
final class Program implements AutoCloseable {

    private static final Pattern ADDRESS = Pattern.compile("is open at\\s+(http://\\S+)");
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final Process process;
    private final String address;
    private final double seconds;

    private Program(Process process, String address, double seconds) {
        this.process = process;
        this.address = address;
        this.seconds = seconds;
    }

    /** Starts it and waits until its sign-in page (or first steps) answers. */
    static Program start(Path data, String... settings) throws IOException, InterruptedException {
        if (Program.class.getResource("/META-INF/VAADIN/webapp/index.html") == null) {
            throw new IllegalStateException(
                    "The bundle of the screens is not built: run ./mvnw -DskipTests package once.");
        }
        Path said = Files.createTempFile("puzzle-workshop-said", ".txt");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                PuzzleWorkshop.class.getName(),
                "--server.port=0",
                "--puzzleworkshop.data=" + data));
        command.addAll(List.of(settings));
        long begin = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        while (true) {
            Matcher found = ADDRESS.matcher(Files.readString(said));
            if (found.find()) {
                HttpResponse<String> answer = HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create(found.group(1) + "/sign-in"))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString());
                if (answer.statusCode() != 200) {
                    throw new IllegalStateException("The sign-in page answered " + answer.statusCode());
                }
                Program program = new Program(process, found.group(1), (System.nanoTime() - begin) / 1e9);
                Files.deleteIfExists(said);
                return program;
            }
            if (!process.isAlive() || System.nanoTime() - begin > PATIENCE.toNanos()) {
                process.destroy();
                throw new IllegalStateException("The program did not start; it said: " + Files.readString(said));
            }
            Thread.sleep(20);
        }
    }

    String address() {
        return address;
    }

    double seconds() {
        return seconds;
    }

    /** What is in use of the heap after a collection, in MB (2^20 bytes). */
    double heapInUse() throws IOException, InterruptedException {
        jcmd("GC.run");
        Matcher used = Pattern.compile("used (\\d+)K").matcher(jcmd("GC.heap_info"));
        double kilobytes = 0;
        // The first line is the heap, the others parts of it and the metaspace.
        if (used.find()) {
            kilobytes = Double.parseDouble(used.group(1));
        }
        return kilobytes / 1024;
    }

    private String jcmd(String what) throws IOException, InterruptedException {
        Process jcmd = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
                        Long.toString(process.pid()),
                        what)
                .redirectErrorStream(true)
                .start();
        String said = new String(jcmd.getInputStream().readAllBytes());
        jcmd.waitFor();
        return said;
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
