package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
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

    /** A size that is asked for so often in a week. */
    public record Asked(Wanted size, double perWeek) {}

    private LearnedWorth() {}

    /**
     * @param rungs sizes of pieces, smallest area first
     * @param pieces how many pieces of each the rack holds, none larger counted twice
     * @param offers boards that can be bought in a week
     * @return for each rung what a mm² is worth, as a share of what a mm² of new board costs; 0 to 1, never falling
     */
    public static double[] of(
            List<Wanted> rungs, int[] pieces, List<Asked> asked, List<ForSale> offers, int weeks, long seed) {
        List<Course> courses = courses(asked, offers, weeks, seed);
        double unit = offers.stream()
                .mapToDouble(offer -> (double) offer.cost() / offer.area())
                .min()
                .orElse(1);
        List<OpenBoard> rack = rack(rungs, pieces);
        double[] paid = paid(courses, rack, unit);
        double[] worth = IntStream.range(0, rungs.size())
                .parallel()
                .mapToDouble(rung -> {
                    List<OpenBoard> more = Laying.copy(rack);
                    Wanted size = rungs.get(rung);
                    IntStream.range(0, MORE_PIECES)
                            .forEach(i -> more.add(new OpenBoard(1_000_000 + i, size.width(), size.height())));
                    double[] then = paid(courses, more, unit);
                    double saved = IntStream.range(0, then.length)
                            .mapToDouble(c -> paid[c] - then[c])
                            .average()
                            .orElse(0);
                    return Math.clamp(saved / (MORE_PIECES * size.area() * unit), 0, 1);
                })
                .toArray();
        return neverFalling(worth);
    }

    private static List<Course> courses(List<Asked> asked, List<ForSale> offers, int weeks, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        long dearest = offers.stream().mapToLong(ForSale::cost).max().orElse(1);
        return IntStream.range(0, COURSES)
                .mapToObj(c -> new Course(
                        IntStream.range(0, weeks)
                                .mapToObj(week -> new WoodPeriod(offers, week(asked, random)))
                                .toList(),
                        dearest))
                .toList();
    }

    static List<Wanted> week(List<Asked> asked, SplittableRandom random) {
        List<Wanted> blanks = new ArrayList<>();
        for (Asked size : asked) {
            for (int i = Poisson.draw(size.perWeek(), random); i > 0; i--) {
                blanks.add(size.size());
            }
        }
        return blanks;
    }

    private static double[] paid(List<Course> courses, List<OpenBoard> rack, double unit) {
        return courses.stream()
                .mapToDouble(course -> course.play(rack, RULE, 0, 0, unit, true))
                .toArray();
    }

    static List<OpenBoard> rack(List<Wanted> rungs, int[] pieces) {
        List<OpenBoard> rack = new ArrayList<>();
        for (int rung = 0; rung < pieces.length; rung++) {
            for (int i = 0; i < pieces[rung]; i++) {
                rack.add(new OpenBoard(
                        rack.size(), rungs.get(rung).width(), rungs.get(rung).height()));
            }
        }
        return rack;
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
