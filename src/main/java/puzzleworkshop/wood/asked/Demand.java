package puzzleworkshop.wood.asked;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import puzzleworkshop.measure.Size;

/**
 * How often each size of blank is asked for, learned from the workshop's own orders.
 *
 * <p>Counts of a size are taken as Poisson, its rate as a gamma law (Jeffreys' prior, half a blank in no time): after n blanks in T
 * weeks the rate is gamma(n + ½, T); shown are mean and the middle 80 % (Gelman and others, Bayesian Data Analysis, 3rd
 * edition, 2.6; quantiles after Wilson and Hilferty 1931). A trend is followed only where the data carry it: when the later
 * half of the time differs from the earlier one by more than two standard deviations, the later half alone counts. A season is
 * used from the second year on, for each week to come by itself: see {@link Season}.
 */
public final class Demand {

    /** Older orders say little about next month. */
    static final int MOST_WEEKS = 104;

    /** A first busy week is no rate yet: orders count as if they had come over four weeks (common practice). */
    private static final double LEAST_WEEKS = 4;

    private static final double MIDDLE_80 = 1.2816;

    /** So far the weeks to come are told one by one. */
    public static final int WEEKS_TO_COME = 26;

    /** A blank that was asked for. */
    public record Blank(LocalDate day, Size size) {}

    /**
     * One size.
     *
     * @param seen how many blanks
     * @param toCome expected in each of the weeks to come, this one first, season and trend included
     * @param low of this week's, with 80 % between low and high
     * @param trend the later half alone counts
     */
    public record Learned(Size size, int seen, List<Double> toCome, double low, double high, boolean trend) {

        public Learned {
            toCome = List.copyOf(toCome);
        }

        /** Expected in a week now. */
        public double perWeek() {
            return toCome.getFirst();
        }

        static Learned evenly(Size size, int seen, double perWeek, double low, double high) {
            return new Learned(size, seen, Collections.nCopies(WEEKS_TO_COME, perWeek), low, high, false);
        }
    }

    private Demand() {}

    /** @param usual sizes that a new workshop starts from: each once in eight weeks until something else is learned */
    public static List<Learned> learn(List<Blank> blanks, List<Size> usual, LocalDate today) {
        LocalDate from = today.minusWeeks(MOST_WEEKS);
        List<Blank> recent = blanks.stream()
                .filter(blank -> !blank.day().isBefore(from) && !blank.day().isAfter(today))
                .toList();
        if (recent.isEmpty()) {
            return usual.stream()
                    .map(size -> Learned.evenly(upright(size), 0, 0.125, 0, 0.5))
                    .toList();
        }
        LocalDate first =
                recent.stream().map(Blank::day).min(Comparator.naturalOrder()).orElseThrow();
        double weeks = Math.max(LEAST_WEEKS, (ChronoUnit.DAYS.between(first, today) + 1) / 7.0);
        Season season = new Season(recent, first, today);
        Map<String, List<Blank>> sizes = new TreeMap<>();
        for (Blank blank : recent) {
            Size size = upright(blank.size());
            sizes.computeIfAbsent(size.width().mm() + "x" + size.height().mm(), key -> new ArrayList<>())
                    .add(new Blank(blank.day(), size));
        }
        return sizes.values().stream()
                .map(same -> one(same, weeks, season, today))
                .sorted(Comparator.comparingDouble(Learned::perWeek).reversed())
                .toList();
    }

    private static Learned one(List<Blank> same, double weeks, Season season, LocalDate today) {
        LocalDate middle = today.minusDays(Math.round(weeks * 7 / 2));
        long later = same.stream().filter(blank -> blank.day().isAfter(middle)).count();
        long earlier = same.size() - later;
        boolean trend = weeks >= 16 && Math.abs(later - earlier) > 2 * Math.sqrt(later + earlier);
        double n = trend ? later : same.size();
        double time = trend ? weeks / 2 : weeks;
        double[] factors = season.factors(same, WEEKS_TO_COME);
        return new Learned(
                same.getFirst().size(),
                same.size(),
                Arrays.stream(factors)
                        .mapToObj(factor -> factor * (n + 0.5) / time)
                        .toList(),
                factors[0] * quantile(n + 0.5, time, -MIDDLE_80),
                factors[0] * quantile(n + 0.5, time, MIDDLE_80),
                trend);
    }

    /** Of gamma(shape, rate). */
    static double quantile(double shape, double rate, double normal) {
        double c = 1 / (9 * shape);
        return Math.max(0, shape * Math.pow(Math.max(0, 1 - c + normal * Math.sqrt(c)), 3) / rate);
    }

    static Size upright(Size size) {
        return Size.mm(size.longerSide().mm(), size.shorterSide().mm());
    }
}
