package puzzleworkshop.geometry.packing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One published instance in the plain format of the shared data: a line is {@code key value…}.
 *
 * @param height of a sheet; 0 for a strip
 * @param optimum known least height of a strip
 * @param group of ten that a sheet instance belongs to
 */
public record PackingInstance(
        String name,
        boolean strip,
        double width,
        double height,
        List<PackItem> pieces,
        Optional<Double> optimum,
        Optional<String> group) {

    /** Empty when the lines hold no packing instance (outlines, other kinds). */
    public static Optional<PackingInstance> read(List<String> lines, String fallbackName) {
        String name = fallbackName;
        String kind = "";
        double width = 0;
        double height = 0;
        boolean turnable = true;
        Optional<Double> optimum = Optional.empty();
        Optional<String> group = Optional.empty();
        List<double[]> items = new ArrayList<>();
        for (String line : lines) {
            String[] part = line.trim().split("\\s+");
            switch (part[0]) {
                case "kind" -> kind = part[1];
                case "name" -> name = part[1];
                case "width" -> width = Double.parseDouble(part[1]);
                case "height" -> height = Double.parseDouble(part[1]);
                case "rotate" -> turnable = part[1].equals("yes");
                case "optimum-height" -> optimum = Optional.of(Double.parseDouble(part[1]));
                case "group" -> group = Optional.of(part[1]);
                case "item" -> {
                    int count = part.length > 3 ? Integer.parseInt(part[3]) : 1;
                    for (int k = 0; k < count; k++) {
                        items.add(new double[] {Double.parseDouble(part[1]), Double.parseDouble(part[2])});
                    }
                }
                default -> {}
            }
        }
        boolean turns = turnable;
        List<PackItem> pieces = items.stream()
                .map(item -> new PackItem(item[0], item[1], turns))
                .toList();
        return kind.equals("strip") || kind.equals("bins")
                ? Optional.of(new PackingInstance(name, kind.equals("strip"), width, height, pieces, optimum, group))
                : Optional.empty();
    }

    /** Zero-waste strips made here by cutting a rectangle again and again at seeded places: the optimum is its height. */
    public static List<PackingInstance> builtIn() {
        List<PackingInstance> all = new ArrayList<>();
        for (int pieces : new int[] {10, 16, 20, 25, 28, 50, 100}) {
            for (long seed = 1; seed <= 3; seed++) {
                all.add(cutFromOne(60, 60, pieces, seed));
            }
        }
        return all;
    }

    /** A strip instance cut from a width × height rectangle with whole sides, so nothing is wasted at the optimum. */
    static PackingInstance cutFromOne(int width, int height, int pieces, long seed) {
        java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
        List<int[]> parts = new ArrayList<>(List.of(new int[] {width, height}));
        while (parts.size() < pieces) {
            parts.sort((a, b) -> Integer.compare(b[0] * b[1], a[0] * a[1]));
            int[] part = parts.remove(random.nextInt(Math.min(3, parts.size())));
            boolean across = part[0] > 1 && (part[1] <= 1 || random.nextInt(part[0] + part[1]) < part[0]);
            int side = across ? part[0] : part[1];
            int cut = 1 + random.nextInt(side - 1);
            parts.add(across ? new int[] {cut, part[1]} : new int[] {part[0], cut});
            parts.add(across ? new int[] {side - cut, part[1]} : new int[] {part[0], side - cut});
        }
        List<PackItem> made = parts.stream().map(p -> PackItem.of(p[0], p[1])).toList();
        return new PackingInstance(
                "cut-" + pieces + "-" + seed, true, width, 0, made, Optional.of((double) height), Optional.empty());
    }
}
