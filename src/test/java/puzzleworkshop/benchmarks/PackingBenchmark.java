package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import puzzleworkshop.geometry.packing.LayoutJudge;
import puzzleworkshop.geometry.packing.Packed;
import puzzleworkshop.geometry.packing.PackingInstance;
import puzzleworkshop.geometry.packing.RectanglePacker;

/**
 * Packs every instance of a folder (format of the shared data) and compares with the known optimum (strips) or the
 * packer's own lower bound (sheets), and for groups with the best known totals of {@code groups.csv}. Every layout is
 * judged by JTS; a layout it refuses stops the run.
 */
public final class PackingBenchmark implements Benchmark {

    private int instances;
    private int optimal;
    private double gaps;
    private double worst;
    private double seconds;
    private final Map<String, Integer> totals = new TreeMap<>();

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws IOException {
        List<PackingInstance> all = folder.isPresent() ? read(folder.get()) : PackingInstance.builtIn();
        new Warmth().up(all);
        out.printf(
                "%-16s %6s %10s %10s %8s %8s %8s%n",
                "instance", "pieces", "ours", "best", "gap %", "seconds", "of work");
        for (PackingInstance instance : all) {
            one(instance, out);
        }
        String line = String.format(
                "instances=%d mean_gap_percent=%.3f max_gap_percent=%.3f optimal=%d seconds_per_instance=%.3f",
                instances,
                instances == 0 ? 0 : gaps / instances,
                worst,
                optimal,
                instances == 0 ? 0 : seconds / instances);
        return line + groups(folder, out);
    }

    private void one(PackingInstance instance, PrintStream out) {
        long start = System.nanoTime();
        long startOfWork = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        RectanglePacker packer = RectanglePacker.withGap(0);
        Packed packed = instance.strip()
                ? packer.onRoll(instance.pieces(), instance.width(), List.of())
                : packer.onSheets(instance.pieces(), instance.width(), instance.height(), List.of());
        double took = (System.nanoTime() - start) / 1e9;
        double worked = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - startOfWork) / 1e9;
        String fault = LayoutJudge.fault(
                instance.pieces(),
                packed.spots(),
                instance.width(),
                instance.strip() ? packed.length() : instance.height(),
                0);
        if (!fault.isEmpty()) {
            throw new IllegalStateException(instance.name() + ": " + fault);
        }
        double ours = instance.strip() ? packed.length() : packed.sheets();
        double best = instance.strip() ? instance.optimum().orElse(packed.leastLength()) : packed.fewestSheets();
        double gap = 100 * (ours - best) / best;
        instances++;
        seconds += took;
        gaps += gap;
        worst = Math.max(worst, gap);
        optimal += gap < 1e-9 ? 1 : 0;
        instance.group().ifPresent(group -> totals.merge(group, packed.sheets(), Integer::sum));
        out.printf(
                "%-16s %6d %10.2f %10.2f %8.3f %8.3f %8.3f%n",
                instance.name(), instance.pieces().size(), ours, best, gap, took, worked);
    }

    private String groups(Optional<Path> folder, PrintStream out) throws IOException {
        Path table = folder.orElse(Path.of("")).resolve("groups.csv");
        if (folder.isEmpty() || !Files.exists(table)) {
            return "";
        }
        int groups = 0;
        int total = 0;
        int reached = 0;
        for (String line : Files.readAllLines(table)) {
            String[] cells = line.split(",");
            Integer ours = totals.get(cells[0].trim());
            if (ours == null) {
                continue;
            }
            int known = Integer.parseInt(cells[2].trim());
            groups++;
            total += ours;
            reached += ours <= known ? 1 : 0;
            out.printf("group %-12s ours %4d  best known %4d%n", cells[0], ours, known);
        }
        return String.format(" groups=%d total=%d best_known=%d", groups, total, reached);
    }

    private static List<PackingInstance> read(Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> walk = Files.walk(folder)) {
            files = walk.filter(file -> file.toString().endsWith(".txt"))
                    .sorted()
                    .toList();
        }
        List<PackingInstance> all = new ArrayList<>();
        for (Path file : files) {
            PackingInstance.read(
                            Files.readAllLines(file),
                            file.getFileName().toString().replace(".txt", ""))
                    .ifPresent(all::add);
        }
        return all;
    }

    /** Runs the compiler warm on the first instance, so that times are those of a running workshop. */
    private static final class Warmth {
        void up(List<PackingInstance> all) {
            for (int k = 0; k < Math.min(all.size(), 3); k++) {
                PackingInstance first = all.get(k);
                RectanglePacker packer = RectanglePacker.withGap(0).effort(20_000_000);
                if (first.strip()) {
                    packer.onRoll(first.pieces(), first.width(), List.of());
                } else {
                    packer.onSheets(first.pieces(), first.width(), first.height(), List.of());
                }
            }
        }
    }
}
