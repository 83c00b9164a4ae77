package puzzleworkshop.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;
import puzzleworkshop.access.DemoWorkshop;

/**
 * How long the demo workshop takes to be made in a program that was just started: by the clock, and the processor's time of
 * the whole program (compiling it included) and of the thread that makes it, which say more where the machine has other
 * work. The database's processes are not in it; what was waited for them is, with the statements that cost most.
 */
final class DemoBenchmark implements Benchmark {

    private static final double NANOS = 1e9;
    private static final double MILLIS = 1e3;
    private static final int DEAREST = 25;

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-demo");
        StatementTimes statements = new StatementTimes();
        try (ConfigurableApplicationContext program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .initializers(started -> started.getBeanFactory().addBeanPostProcessor(statements))
                .run("--server.port=0", "--puzzleworkshop.data=" + data)) {
            OpenWorkshop.in(program);
            OperatingSystemMXBean all = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
            ThreadMXBean own = ManagementFactory.getThreadMXBean();
            long allBefore = all.getProcessCpuTime();
            long ownBefore = own.getCurrentThreadCpuTime();
            long start = System.nanoTime();
            statements.forget();
            out.printf("%8s %8s %8s %8s %10s%n", "s", "cpu s", "own s", "db s", "statements");
            program.getBean(DemoWorkshop.class)
                    .fill((share, what) -> out.printf(
                            Locale.ROOT,
                            "%8.1f %8.1f %8.1f %8.1f %10d  %3.0f %% %s%n",
                            (System.nanoTime() - start) / NANOS,
                            (all.getProcessCpuTime() - allBefore) / NANOS,
                            (own.getCurrentThreadCpuTime() - ownBefore) / NANOS,
                            statements.ms() / MILLIS,
                            statements.statements(),
                            share * 100,
                            what.key()));
            double seconds = (System.nanoTime() - start) / NANOS;
            double cpu = (all.getProcessCpuTime() - allBefore) / NANOS;
            double thread = (own.getCurrentThreadCpuTime() - ownBefore) / NANOS;
            int asked = statements.statements();
            statements.print(out, DEAREST);
            int orders = program.getBean(JdbcClient.class)
                    .sql("select count(*) from customer_order")
                    .query(Integer.class)
                    .single();
            return String.format(
                    Locale.ROOT,
                    "orders=%d seconds=%.1f cpu_seconds=%.1f own_thread_seconds=%.1f statements=%d",
                    orders,
                    seconds,
                    cpu,
                    thread,
                    asked);
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }
}
