package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import puzzleworkshop.wood.ahead.buying.Poisson;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * What a piece in the rack is expected to save in boards bought, by its size. The weeks to come are drawn from what is asked
 * for and played with the rack as it is, then with some pieces of one size more; the difference in what is paid, for a
 * mm² of the piece, is its worth (marginal value by simulation with common random numbers: Asmussen and Glynn, Stochastic
 * Simulation, 2007, chapter V.5; an approximate value function in the sense of Powell, Approximate Dynamic Programming, 2011).
 *
 * <p>A larger piece gives what a smaller one gives, so worths never fall from rung to rung: those that do by chance are
 * averaged (pool adjacent violators: Barlow and others 1972).
 */
public final class LearnedWorth {

    private static final int COURSES = 24;
    private static final int MORE_PIECES = 3;
    private static final Thrifty RULE = new Thrifty(0, PlaceRule.FULLEST_BOARD);

    /**
     * A size that is asked for.
     *
     * @param weeks how often in each of the weeks to come; the last one holds for all after it
     */
    public record Asked(Wanted size, List<Double> weeks) {

        public Asked {
            weeks = List.copyOf(weeks);
        }

        /** The same in every week. */
        public Asked(Wanted size, double perWeek) {
            this(size, List.of(perWeek));
        }

        /** In a week to come, 0: this one. */
        public double in(int week) {
            return weeks.get(Math.min(week, weeks.size() - 1));
        }
    }

    private LearnedWorth() {}

    /**
     * @param rungs sizes of pieces, smallest area first
     * @param pieces that lie in the rack
     * @param offers boards that can be bought in a week
     * @param room how many pieces the rack holds; 0: any number
     * @return for each rung what a mm² is worth, as a share of what a mm² of new board costs; 0 to 1, never falling
     */
    public static double[] of(
            List<Wanted> rungs,
            List<Wanted> pieces,
            List<Asked> asked,
            List<ForSale> offers,
            int weeks,
            int room,
            long seed) {
        List<Course> courses = courses(asked, offers, weeks, seed);
        double unit = unit(offers);
        List<OpenBoard> rack = rack(pieces);
        double[] paid = paid(courses, rack, unit, room);
        double[] worth = IntStream.range(0, rungs.size())
                .parallel()
                .mapToDouble(rung -> {
                    List<OpenBoard> more = new ArrayList<>(rack);
                    Wanted size = rungs.get(rung);
                    IntStream.range(0, MORE_PIECES)
                            .forEach(i -> more.add(new OpenBoard(1_000_000 + i, size.width(), size.height())));
                    double[] then = paid(courses, more, unit, room);
                    double saved = IntStream.range(0, then.length)
                            .mapToDouble(c -> paid[c] - then[c])
                            .average()
                            .orElse(0);
                    return Math.clamp(saved / (MORE_PIECES * size.area() * unit), 0, 1);
                })
                .toArray();
        return neverFalling(worth);
    }

    static double unit(List<ForSale> offers) {
        return offers.stream()
                .mapToDouble(offer -> (double) offer.cost() / offer.area())
                .min()
                .orElse(1);
    }

    static List<Course> courses(List<Asked> asked, List<ForSale> offers, int weeks, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        long dearest = offers.stream().mapToLong(ForSale::cost).max().orElse(1);
        return IntStream.range(0, COURSES)
                .mapToObj(c -> new Course(
                        IntStream.range(0, weeks)
                                .mapToObj(week -> new WoodPeriod(offers, week(asked, week, random)))
                                .toList(),
                        dearest))
                .toList();
    }

    static List<Wanted> week(List<Asked> asked, int week, SplittableRandom random) {
        List<Wanted> blanks = new ArrayList<>();
        for (Asked size : asked) {
            for (int i = Poisson.draw(size.in(week), random); i > 0; i--) {
                blanks.add(size.size());
            }
        }
        return blanks;
    }

    private static double[] paid(List<Course> courses, List<OpenBoard> rack, double unit, int room) {
        return courses.stream()
                .mapToDouble(course -> course.play(Laying.copy(rack), RULE, 0, 0, unit, true, room))
                .toArray();
    }

    static List<OpenBoard> rack(List<Wanted> pieces) {
        return IntStream.range(0, pieces.size())
                .mapToObj(i ->
                        new OpenBoard(i, pieces.get(i).width(), pieces.get(i).height()))
                .toList();
    }

    static double[] neverFalling(double[] values) {
        double[] sum = new double[values.length];
        int[] size = new int[values.length];
        int blocks = 0;
        for (double value : values) {
            sum[blocks] = value;
            size[blocks++] = 1;
            while (blocks > 1 && sum[blocks - 2] / size[blocks - 2] > sum[blocks - 1] / size[blocks - 1]) {
                sum[blocks - 2] += sum[blocks - 1];
                size[blocks - 2] += size[blocks - 1];
                blocks--;
            }
        }
        double[] rising = new double[values.length];
        int at = 0;
        for (int block = 0; block < blocks; block++) {
            for (int i = 0; i < size[block]; i++) {
                rising[at++] = sum[block] / size[block];
            }
        }
        return rising;
    }
}
