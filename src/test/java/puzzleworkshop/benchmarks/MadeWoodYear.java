package puzzleworkshop.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * A made-up year of a workshop: 52 weeks with 20 orders each, blanks of the common sizes (22 mm larger than the finished
 * ones), more large ones before Christmas; three boards that a dealer always has; a rack of limited room.
 */
final class MadeWoodYear {

    private static final int WEEKS = 52;
    private static final int ORDERS = 20;
    private static final int ROOM = 12;
    private static final int[][] SIZES = {
        {170, 127}, {232, 170}, {222, 222}, {319, 232}, {372, 272}, {442, 319}, {522, 372}
    };
    private static final double[] SHARE = {3, 4, 3, 6, 2, 3, 1};
    private static final int[][] BOARDS = {{800, 600}, {1220, 610}, {600, 400}};
    private static final double[] PRICE = {1.00, 0.95, 1.05};
    private static final int OF_EACH = 5;

    private MadeWoodYear() {}

    static WoodCase of(int seed) {
        Random random = new Random(seed);
        List<ForSale> offers = new ArrayList<>();
        for (int kind = 0; kind < BOARDS.length; kind++) {
            for (int i = 0; i < OF_EACH; i++) {
                int[] board = BOARDS[kind];
                offers.add(new ForSale(board[0], board[1], Math.round(board[0] * board[1] * PRICE[kind] / 100)));
            }
        }
        List<WoodPeriod> weeks = new ArrayList<>();
        for (int week = 0; week < WEEKS; week++) {
            double christmas = week >= 44 && week < 51 ? 2 : 1;
            List<Wanted> blanks = new ArrayList<>();
            for (int i = 0; i < ORDERS; i++) {
                int[] size = SIZES[drawn(random, christmas)];
                blanks.add(new Wanted(size[0], size[1]));
            }
            weeks.add(new WoodPeriod(offers, blanks));
        }
        List<Wanted> usual = java.util.Arrays.stream(SIZES)
                .map(size -> new Wanted(size[0], size[1]))
                .toList();
        return new WoodCase("year " + seed, true, ROOM, usual, weeks);
    }

    private static int drawn(Random random, double christmas) {
        double all = 0;
        for (int i = 0; i < SHARE.length; i++) {
            all += SHARE[i] * (i > 3 ? christmas : 1);
        }
        double at = random.nextDouble() * all;
        int size = 0;
        while (size < SHARE.length - 1 && (at -= SHARE[size] * (size > 3 ? christmas : 1)) > 0) {
            size++;
        }
        return size;
    }
}
