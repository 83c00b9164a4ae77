package puzzleworkshop.benchmarks;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.Stream;
import puzzleworkshop.wood.ahead.KnownAhead;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * Freshly made cases like the open instances of Birgin, Romão and Ronconi, because a rule must hold on cases that it was not chosen
 * on. Their ranges, and how often each number comes, were counted in the open files ({@code bromro}, {@code bromro2}); sides,
 * kinds and copies are drawn evenly and independently. A board costs its area. Usual sizes are the smallest blanks: those that
 * no other lies in. Nothing is turned, cuts have no width. A case whose blanks cannot be laid even on all its boards is drawn
 * anew.
 */
final class MadePeriods {

    /**
     * One kind of case.
     *
     * @param boards kinds of boards in a period, at least and at most
     * @param boardSides their sides
     * @param blanks kinds of blanks in a period
     * @param copies of each blank
     * @param sides of blanks
     * @param none share of the later periods in which no board is for sale
     */
    private record Family(int[] boards, int[] boardSides, int[] blanks, int[] copies, int[] sides, double none) {}

    private static final double SECOND_BOARD = 0.04;
    private static final int[] LARGE_PERIODS = {4, 8, 12};
    private static final int SMALL_PERIODS = 4;

    /** Files 1 to 10 of {@code bromro}, 11 to 20, 21 to 25. */
    private static final List<Family> SMALL = List.of(
            new Family(new int[] {1, 3}, new int[] {8, 20}, new int[] {1, 6}, new int[] {1, 1}, new int[] {1, 10}, 0.1),
            new Family(new int[] {1, 2}, new int[] {10, 40}, new int[] {1, 3}, new int[] {1, 2}, new int[] {1, 14}, 0),
            new Family(new int[] {1, 3}, new int[] {10, 30}, new int[] {1, 4}, new int[] {1, 2}, new int[] {1, 10}, 0));

    private static final double[] SMALL_SHARES = {0.4, 0.4, 0.2};

    private MadePeriods() {}

    /** As {@code bromro}: four periods with a few blanks each. */
    static WoodCase small(int seed) {
        Random random = new Random(seed);
        double at = random.nextDouble();
        int family = at < SMALL_SHARES[0] ? 0 : at < SMALL_SHARES[0] + SMALL_SHARES[1] ? 1 : 2;
        return possible("small " + seed, SMALL.get(family), SMALL_PERIODS, random);
    }

    /** As {@code bromro2}: four, eight or twelve periods. */
    static WoodCase large(int seed) {
        Random random = new Random(seed);
        int periods = LARGE_PERIODS[Math.floorMod(seed, LARGE_PERIODS.length)];
        int[] boards = {periods == SMALL_PERIODS ? 1 : 2, 3};
        Family family =
                new Family(boards, new int[] {30, 100}, new int[] {2, 5}, new int[] {1, 3}, new int[] {5, 20}, 0);
        return possible("large " + periods + " " + seed, family, periods, random);
    }

    private static WoodCase possible(String name, Family family, int count, Random random) {
        return Stream.generate(() -> drawn(name, family, count, random))
                .filter(one -> !KnownAhead.leastCost(one, List.of(), 0, 1).equals(OptionalLong.empty()))
                .findFirst()
                .orElseThrow();
    }

    private static WoodCase drawn(String name, Family family, int count, Random random) {
        List<WoodPeriod> periods = new ArrayList<>();
        for (int t = 0; t < count; t++) {
            List<ForSale> offers = new ArrayList<>();
            boolean none = t > 0 && random.nextDouble() < family.none();
            for (int kind = none ? 0 : in(family.boards(), random); kind > 0; kind--) {
                int w = in(family.boardSides(), random);
                int h = in(family.boardSides(), random);
                int copies = random.nextDouble() < SECOND_BOARD ? 2 : 1;
                offers.addAll(Collections.nCopies(copies, new ForSale(w, h, (long) w * h)));
            }
            List<Wanted> blanks = new ArrayList<>();
            for (int kind = in(family.blanks(), random); kind > 0; kind--) {
                Wanted blank = new Wanted(in(family.sides(), random), in(family.sides(), random));
                blanks.addAll(Collections.nCopies(in(family.copies(), random), blank));
            }
            periods.add(new WoodPeriod(offers, blanks));
        }
        return new WoodCase(name, false, 0, smallest(periods), periods);
    }

    private static List<Wanted> smallest(List<WoodPeriod> periods) {
        List<Wanted> kinds = periods.stream()
                .flatMap(period -> period.blanks().stream())
                .distinct()
                .toList();
        return kinds.stream()
                .filter(one ->
                        kinds.stream().noneMatch(other -> !other.equals(one) && other.fits(one.width(), one.height())))
                .toList();
    }

    private static int in(int[] range, Random random) {
        return range[0] + random.nextInt(range[1] - range[0] + 1);
    }
}
