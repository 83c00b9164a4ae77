package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.shell.Findings;

/** Search by anything, as somebody types it: many years' orders and customers, words that are common, rare and nowhere. */
final class FindBenchmark implements Benchmark {

    private static final int ORDERS = Integer.getInteger("bench.orders", 10_000);
    private static final int CUSTOMERS = 4_000;
    private static final int ROUNDS = 30;
    private static final List<String> TYPED = List.of(
            "b-confirmed-77", "lind", "li", "name 1234", "quay street 7", "sheet", "confirmed 99", "nowhere at all");

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-find");
        try (ConfigurableApplicationContext program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .run("--server.port=0", "--puzzleworkshop.data=" + data)) {
            OpenWorkshop.in(program);
            new BenchOrders(program)
                    .confirmed(
                            "Ida Lind", program.getBean(WeekPlan.class).today().plusDays(20), 25);
            JdbcClient jdbc = program.getBean(JdbcClient.class);
            PagesBenchmark.open(jdbc, ORDERS);
            jdbc.sql("""
                insert into customer (name, contact, address)
                select 'Name ' || n, n || '@example.org', 'Quay Street ' || n % 90 from generate_series(1, :count) n
                """).param("count", CUSTOMERS).update();
            jdbc.sql("analyze").update();
            Findings findings = program.getBean(Findings.class);
            double[] all = new double[TYPED.size() * ROUNDS];
            out.printf(Locale.ROOT, "%-20s %8s %10s%n", "typed", "found", "median ms");
            for (int t = 0; t < TYPED.size(); t++) {
                double[] taken = new double[ROUNDS];
                int found = 0;
                for (int round = -3; round < ROUNDS; round++) {
                    long begin = System.nanoTime();
                    found = findings.of(TYPED.get(t)).size();
                    if (round >= 0) {
                        taken[round] = (System.nanoTime() - begin) / 1e6;
                        all[t * ROUNDS + round] = taken[round];
                    }
                }
                Arrays.sort(taken);
                out.printf(Locale.ROOT, "%-20s %8d %10.1f%n", TYPED.get(t), found, taken[ROUNDS / 2]);
            }
            Arrays.sort(all);
            return String.format(
                    Locale.ROOT,
                    "orders=%d customers=%d p50_ms=%.1f p95_ms=%.1f",
                    ORDERS,
                    CUSTOMERS + 1,
                    all[all.length / 2],
                    all[(int) Math.ceil(all.length * 0.95) - 1]);
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }
}
