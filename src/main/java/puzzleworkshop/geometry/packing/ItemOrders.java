package puzzleworkshop.geometry.packing;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/** Orders in which pieces are offered to a sheet. */
final class ItemOrders {

    private ItemOrders() {}

    /** The usual sorted orders, large before small. */
    static List<int[]> sorted(ItemShapes s) {
        Comparator<Integer> area = Comparator.comparingLong(i -> -s.area[i]);
        Comparator<Integer> longer = Comparator.comparingInt(i -> -Math.max(s.width[i], s.height[i]));
        Comparator<Integer> shorter = Comparator.comparingInt(i -> -Math.min(s.width[i], s.height[i]));
        Comparator<Integer> outline = Comparator.comparingInt(i -> -s.width[i] - s.height[i]);
        return List.of(
                by(s, area.thenComparing(longer)),
                by(s, longer.thenComparing(shorter)),
                by(s, shorter.thenComparing(longer)),
                by(s, outline.thenComparing(area)));
    }

    private static int[] by(ItemShapes s, Comparator<Integer> comparator) {
        Integer[] boxed = new Integer[s.count];
        Arrays.setAll(boxed, i -> i);
        Arrays.sort(boxed, comparator);
        int[] order = new int[s.count];
        Arrays.setAll(order, i -> boxed[i]);
        return order;
    }

    static void shuffle(int[] order, int size, SplittableRandom random) {
        for (int k = size - 1; k > 0; k--) {
            swap(order, k, random.nextInt(k + 1));
        }
    }

    static void swap(int[] order, int a, int b) {
        int kept = order[a];
        order[a] = order[b];
        order[b] = kept;
    }

    /** Takes the piece at one place out and puts it in at another. */
    static void move(int[] order, int from, int to) {
        int kept = order[from];
        if (from < to) {
            System.arraycopy(order, from + 1, order, from, to - from);
        } else {
            System.arraycopy(order, to, order, to + 1, from - to);
        }
        order[to] = kept;
    }

    /** Large before small on the whole, with chance in it: sorted by area times a random factor. */
    static void roughlyByArea(
            int[] order, int size, ItemShapes s, double[] keys, double chance, SplittableRandom random) {
        for (int k = 0; k < size; k++) {
            keys[k] = s.area[order[k]] * (1 - chance * random.nextDouble());
        }
        for (int k = 1; k < size; k++) {
            double key = keys[k];
            int piece = order[k];
            int j = k - 1;
            while (j >= 0 && keys[j] < key) {
                keys[j + 1] = keys[j];
                order[j + 1] = order[j];
                j--;
            }
            keys[j + 1] = key;
            order[j + 1] = piece;
        }
    }
}
