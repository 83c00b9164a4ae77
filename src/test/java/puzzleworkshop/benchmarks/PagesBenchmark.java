package puzzleworkshop.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.FileSystemUtils;
import puzzleworkshop.PuzzleWorkshop;
import puzzleworkshop.access.DemoWorkshop;

/**
 * How long a page takes until its content is there, with years of orders in the house and several people at work at once.
 * Beside it in the same run the same frame around an empty view, so that what is over that is the page's own, and an
 * address that leads nowhere, which has not even the frame.
 */
final class PagesBenchmark implements Benchmark {

    private static final int ORDERS = Integer.getInteger("bench.orders", 2_000);
    private static final int OPEN = 60;
    private static final int USERS = Integer.getInteger("bench.users", 5);
    private static final int ROUNDS = Integer.getInteger("bench.rounds", 8);
    private static final int WARM_UP = 2;
    private static final int DEAREST = Integer.getInteger("bench.dearest", 6);
    /** An address that leads nowhere: what Vaadin, the sign-in and the sending take, without the program's frame. */
    private static final String EMPTY = "no/such/page";

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        Path data = Files.createTempDirectory("puzzle-workshop-pages");
        StatementTimes statements = new StatementTimes();
        try (ConfigurableApplicationContext program = new SpringApplicationBuilder(PuzzleWorkshop.class)
                .initializers(started -> started.getBeanFactory().addBeanPostProcessor(statements))
                .run("--server.port=0", "--puzzleworkshop.data=" + data)) {
            OpenWorkshop.in(program);
            EmptyFrameView.register(program);
            program.getBean(DemoWorkshop.class).fill((share, what) -> {});
            JdbcClient jdbc = program.getBean(JdbcClient.class);
            int orders = multiply(jdbc);
            String one = jdbc.sql("select number from customer_order where state = 'CONFIRMED' order by id limit 1")
                    .query(String.class)
                    .single();
            List<String> pages = List.of(
                    "",
                    "orders",
                    "orders/" + one,
                    "orders/new",
                    "bench",
                    "print-runs",
                    "sheets",
                    "supplies",
                    "machines",
                    "rates",
                    "figures",
                    "figures/work",
                    "hand-overs",
                    "set-up",
                    EmptyFrameView.ADDRESS,
                    EMPTY);
            String address = "http://localhost:" + program.getEnvironment().getProperty("local.server.port");
            Map<String, List<Double>> taken = visit(address, pages);
            Map<String, Alone> alone = alone(address, pages, statements, out);
            return report(taken, alone, orders, out);
        } finally {
            FileSystemUtils.deleteRecursively(data);
        }
    }

    /** Copies of the demo's orders, mostly closed ones, each with its history. */
    private static int multiply(JdbcClient jdbc) {
        String columns = columns(jdbc);
        int there = jdbc.sql("select count(*) from customer_order")
                .query(Integer.class)
                .single();
        int open = jdbc.sql("select count(*) from customer_order where state = 'CONFIRMED'")
                .query(Integer.class)
                .single();
        copies(jdbc, columns, "CONFIRMED", Math.max(0, OPEN - open));
        copies(jdbc, columns, "CLOSED", ORDERS - there - Math.max(0, OPEN - open));
        jdbc.sql("""
            insert into order_history (order_id, at, who, text_key, arguments)
            select o.id, h.at, h.who, h.text_key, h.arguments
            from customer_order o
            cross join (select * from order_history where order_id =
                (select max(id) from customer_order where state = 'CLOSED' and number not like 'B-%')) h
            where o.number like 'B-%'
            """).update();
        // an order is closed when it is paid
        jdbc.sql("""
            insert into order_payment (order_id, kind, way, amount, currency, paid_on, who, at)
            select id, 'PAYMENT', 'TRANSFER', price_gross, currency, closed_at::date, 'bench', closed_at
            from customer_order where number like 'B-%' and state = 'CLOSED' and price_gross > 0
            """).update();
        jdbc.sql("analyze").update();
        return jdbc.sql("select count(*) from customer_order")
                .query(Integer.class)
                .single();
    }

    /** Copies of the demo's open orders, until there are so many. */
    static int open(JdbcClient jdbc, int wanted) {
        int there = jdbc.sql("select count(*) from customer_order where state = 'CONFIRMED'")
                .query(Integer.class)
                .single();
        copies(jdbc, columns(jdbc), "CONFIRMED", Math.max(0, wanted - there));
        return Math.max(there, wanted);
    }

    private static String columns(JdbcClient jdbc) {
        return jdbc.sql("""
            select string_agg(column_name, ', ') from information_schema.columns
            where table_schema = current_schema() and table_name = 'customer_order'
              and column_name not in ('id', 'number', 'created_at', 'confirmed_at', 'handed_over_at', 'closed_at')
            """).query(String.class).single();
    }

    private static void copies(JdbcClient jdbc, String columns, String state, int count) {
        jdbc.sql("""
            insert into customer_order (number, created_at, confirmed_at, handed_over_at, closed_at, %1$s)
            select 'B-%2$s-' || n, created_at - ago, confirmed_at - ago, handed_over_at - ago, closed_at - ago, %1$s
            from generate_series(1, :count) n
            cross join lateral (select n * interval '11 hours' as ago) since
            cross join lateral (select * from customer_order where state = :state and number not like 'B-%%'
                order by id offset n %% (select count(*) from customer_order where state = :state and number not like 'B-%%')
                limit 1) o
            """.formatted(columns, state))
                .param("count", count)
                .param("state", state)
                .update();
    }

    private static Map<String, List<Double>> visit(String address, List<String> pages) throws Exception {
        Map<String, List<Double>> taken = new LinkedHashMap<>();
        pages.forEach(page -> taken.put(page, new ArrayList<>()));
        List<Visitor> visitors = new ArrayList<>();
        for (int user = 0; user < USERS; user++) {
            // One after the other: five at once with one name look like guessing, and are made to wait.
            Visitor visitor = new Visitor(address);
            visitor.signIn(OpenWorkshop.OWNER, OpenWorkshop.PASSWORD);
            visitors.add(visitor);
        }
        try (ExecutorService people = Executors.newFixedThreadPool(USERS)) {
            List<Future<Map<String, List<Double>>>> rounds = new ArrayList<>();
            for (int user = 0; user < USERS; user++) {
                int shift = user;
                rounds.add(people.submit(() -> round(visitors.get(shift), pages, shift)));
            }
            for (Future<Map<String, List<Double>>> one : rounds) {
                one.get().forEach((page, times) -> taken.get(page).addAll(times));
            }
        }
        return taken;
    }

    private static Map<String, List<Double>> round(Visitor visitor, List<String> pages, int shift) throws Exception {
        Map<String, List<Double>> taken =
                pages.stream().collect(Collectors.toMap(page -> page, page -> new ArrayList<>()));
        for (int i = 0; i < WARM_UP + ROUNDS; i++) {
            // everybody looks at another page at a time
            for (int k = 0; k < pages.size(); k++) {
                String page = pages.get((k + shift * 2) % pages.size());
                double ms = visitor.open(page).ms();
                if (i >= WARM_UP) {
                    taken.get(page).add(ms);
                }
            }
        }
        return taken;
    }

    /** What a page takes of the program when one person opens it: processor time of the whole program, and the database. */
    private record Alone(double cpuMs, double databaseMs, int queries, int parts, double kilobytes) {}

    private static Map<String, Alone> alone(
            String address, List<String> pages, StatementTimes statements, PrintStream out) throws Exception {
        Visitor visitor = new Visitor(address);
        visitor.signIn(OpenWorkshop.OWNER, OpenWorkshop.PASSWORD);
        OperatingSystemMXBean program = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        Map<String, Alone> alone = new LinkedHashMap<>();
        for (String page : pages) {
            long before = program.getProcessCpuTime();
            for (int i = 0; i < ROUNDS; i++) {
                visitor.open(page);
            }
            double cpu = (program.getProcessCpuTime() - before) / 1e6 / ROUNDS;
            statements.forget();
            Visitor.Opened opened = visitor.open(page);
            alone.put(
                    page, new Alone(cpu, statements.ms(), statements.statements(), opened.parts(), opened.kilobytes()));
            out.println("/" + page);
            statements.print(out, DEAREST);
        }
        return alone;
    }

    private static String report(
            Map<String, List<Double>> taken, Map<String, Alone> alone, int orders, PrintStream out) {
        out.printf(
                "%-24s %8s %8s %10s %9s %8s %7s %8s%n",
                "page", "p50 ms", "p95 ms", "cpu alone", "db alone", "queries", "parts", "kB");
        taken.forEach((page, times) -> out.printf(
                "/%-23s %8.1f %8.1f %10.1f %9.1f %8d %7d %8.1f%n",
                page,
                at(times, 0.5),
                at(times, 0.95),
                alone.get(page).cpuMs(),
                alone.get(page).databaseMs(),
                alone.get(page).queries(),
                alone.get(page).parts(),
                alone.get(page).kilobytes()));
        List<Double> real = taken.entrySet().stream()
                .filter(entry ->
                        !entry.getKey().equals(EMPTY) && !entry.getKey().equals(EmptyFrameView.ADDRESS))
                .flatMap(entry -> entry.getValue().stream())
                .toList();
        return "orders=%d users=%d p50_ms=%.1f p95_ms=%.1f empty_view_p95_ms=%.1f empty_frame_p95_ms=%.1f dearest_cpu_ratio=%.2f"
                .formatted(
                        orders,
                        USERS,
                        at(real, 0.5),
                        at(real, 0.95),
                        at(taken.get(EMPTY), 0.95),
                        at(taken.get(EmptyFrameView.ADDRESS), 0.95),
                        dearest(alone));
    }

    /** Processor time of the dearest page over that of the empty view. */
    private static double dearest(Map<String, Alone> alone) {
        double most = alone.values().stream().mapToDouble(Alone::cpuMs).max().orElse(0);
        return most / alone.get(EMPTY).cpuMs();
    }

    private static double at(List<Double> times, double share) {
        double[] sorted =
                times.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        return sorted[Math.min(sorted.length - 1, (int) Math.ceil(share * sorted.length) - 1)];
    }
}
