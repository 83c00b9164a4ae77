package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.springframework.util.FileSystemUtils;

/**
 * How long one waits for the first page: on an empty folder (unpacking PostgreSQL, making its cluster, all migrations)
 * and on a folder in use, and what the program holds in memory at rest afterwards.
 */
final class StartBenchmark implements Benchmark {

    private static final int WARM_STARTS = 3;

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-start");
        try {
            double cold;
            try (Program program = Program.start(data)) {
                cold = program.seconds();
            }
            out.printf("cold start  %6.2f s%n", cold);
            double[] warm = new double[WARM_STARTS];
            double heap = 0;
            for (int i = 0; i < WARM_STARTS; i++) {
                try (Program program = Program.start(data)) {
                    warm[i] = program.seconds();
                    heap = program.heapInUse();
                }
                out.printf("warm start  %6.2f s, heap in use %.0f MB%n", warm[i], heap);
            }
            Arrays.sort(warm);
            return "cold_s=%.2f warm_s=%.2f idle_heap_mb=%.0f".formatted(cold, warm[WARM_STARTS / 2], heap);
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }
}
