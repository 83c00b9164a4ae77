package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Futures;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodState;

/**
 * Learns from the periods seen, this one included, and from the usual sizes; starts from next to nothing.
 *
 * <p>How much is asked for: the average of the periods seen and of two periods more, in which a quarter of a mean board is
 * asked for (a workshop buys boards that serve it for some periods; our own assumption). Around it each course has a level of
 * its own, the wider the fewer periods were seen, and each period its scatter (a gamma law). Half of the sizes are drawn from
 * those seen (bootstrap: Efron and Tibshirani, An Introduction to the Bootstrap, 1993), half evenly from the range that sides
 * were seen in. Boards offered likewise.
 */
public final class SeenFutures implements Futures {

    private static final double PRIOR_SHARE_OF_BOARD = 0.25;
    private static final double PRIOR_PERIODS = 2;
    private static final int SHAPE = 5;
    private static final double LEVEL_VARIES = 0.5;

    @Override
    public List<WoodPeriod> draw(WoodState state, int periods, RandomGenerator random) {
        Seen seen = new Seen(state);
        double spread = LEVEL_VARIES / Math.sqrt(seen.periods.size() + PRIOR_PERIODS);
        double level = Math.exp(spread * random.nextGaussian() - spread * spread / 2);
        List<WoodPeriod> course = new ArrayList<>(periods);
        for (int t = 0; t < periods; t++) {
            course.add(new WoodPeriod(seen.offers(random), seen.blanks(level, random)));
        }
        return course;
    }

    /** Area asked for in a period on average, by the same learning. */
    static double meanArea(WoodState state) {
        return new Seen(state).meanArea;
    }

    /** The range that sides were seen in, stretched by as much as the next one is expected to lie outside. */
    private record Range(double least, double most) {

        static Range of(IntStream sides, int kinds) {
            IntSummaryStatistics seen = sides.summaryStatistics();
            double stretch = (seen.getMax() - seen.getMin()) / (double) Math.max(kinds, 1);
            return new Range(Math.max(1, seen.getMin() - stretch / 2), seen.getMax() + stretch / 2);
        }

        int draw(RandomGenerator random) {
            return (int) Math.max(1, Math.round(least + (most - least) * random.nextDouble()));
        }
    }

    private static final class Seen {

        private final List<WoodPeriod> periods;
        private final List<Wanted> sizes = new ArrayList<>();
        private final List<ForSale> boards = new ArrayList<>();
        private final double meanArea;
        private final double meanBlank;
        private final Range sides;
        private final Range boardSides;
        private final double unit;

        Seen(WoodState state) {
            periods = new ArrayList<>(state.past());
            periods.add(state.now());
            periods.forEach(period -> {
                sizes.addAll(period.blanks());
                boards.addAll(period.offers());
            });
            double seenArea = sizes.stream().mapToLong(Wanted::area).sum();
            double boardArea = boards.stream().mapToLong(ForSale::area).sum();
            double meanBoard = boardArea / Math.max(1, boards.size());
            meanArea = (seenArea + PRIOR_PERIODS * PRIOR_SHARE_OF_BOARD * meanBoard) / (periods.size() + PRIOR_PERIODS);
            sizes.addAll(state.usual());
            meanBlank = sizes.stream().mapToLong(Wanted::area).average().orElse(1);
            int kinds = (int) sizes.stream().distinct().count();
            sides = Range.of(sizes.stream().flatMapToInt(s -> IntStream.of(s.width(), s.height())), kinds);
            boardSides =
                    Range.of(boards.stream().flatMapToInt(b -> IntStream.of(b.width(), b.height())), boards.size());
            unit = boards.stream().mapToLong(ForSale::cost).sum() / Math.max(1, boardArea);
        }

        List<Wanted> blanks(double level, RandomGenerator random) {
            double gamma = 0;
            for (int i = 0; i < SHAPE; i++) {
                gamma -= Math.log(1 - random.nextDouble());
            }
            double area = level * meanArea * gamma / SHAPE;
            List<Wanted> blanks = new ArrayList<>();
            while (!sizes.isEmpty()) {
                Wanted size = random.nextBoolean()
                        ? sizes.get(random.nextInt(sizes.size()))
                        : new Wanted(sides.draw(random), sides.draw(random));
                for (int copy = 1 + random.nextInt(3); copy > 0; copy--) {
                    if (size.area() > area && random.nextDouble() * size.area() > area) {
                        return blanks;
                    }
                    area -= size.area();
                    blanks.add(size);
                }
            }
            return blanks;
        }

        List<ForSale> offers(RandomGenerator random) {
            if (boards.isEmpty()) {
                return List.of();
            }
            int count = periods.get(random.nextInt(periods.size())).offers().size();
            if (periods.size() < 4) {
                count = Math.max(1, count + random.nextInt(3) - 1);
            }
            List<ForSale> offers = new ArrayList<>(count);
            for (int i = 0; i < count; i++) {
                ForSale like = boards.get(random.nextInt(boards.size()));
                if (random.nextBoolean()) {
                    offers.add(like);
                } else {
                    int w = boardSides.draw(random);
                    int h = boardSides.draw(random);
                    offers.add(new ForSale(w, h, Math.round((double) w * h * unit)));
                }
            }
            return offers;
        }
    }
}
