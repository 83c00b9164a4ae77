package puzzleworkshop.wood;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
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
 * used from the second year on: this month of the year against the whole, drawn towards one as if twelve more blanks had been
 * spread evenly.
 */
public final class Demand {

    /** Older orders say little about next month. */
    static final int MOST_WEEKS = 104;

    /** A first busy week is no rate yet: orders count as if they had come over four weeks (common practice). */
    private static final double LEAST_WEEKS = 4;

    private static final double MIDDLE_80 = 1.2816;
    private static final double SEASON_NEEDS_WEEKS = 52;
    private static final double EVENLY = 12;

    /** A blank that was asked for. */
    public record Blank(LocalDate day, Size size) {}

    /**
     * One size.
     *
     * @param seen how many blanks
     * @param perWeek expected in a week now, season and trend included
     * @param low with 80 % between low and high
     * @param trend the later half alone counts
     */
    public record Learned(Size size, int seen, double perWeek, double low, double high, boolean trend) {}

    private Demand() {}

    /** @param usual sizes that a new workshop starts from: each once in eight weeks until something else is learned */
    public static List<Learned> learn(List<Blank> blanks, List<Size> usual, LocalDate today) {
        LocalDate from = today.minusWeeks(MOST_WEEKS);
        List<Blank> recent = blanks.stream()
                .filter(blank -> !blank.day().isBefore(from) && !blank.day().isAfter(today))
                .toList();
        if (recent.isEmpty()) {
            return usual.stream()
                    .map(size -> new Learned(upright(size), 0, 0.125, 0, 0.5, false))
                    .toList();
        }
        LocalDate first =
                recent.stream().map(Blank::day).min(Comparator.naturalOrder()).orElseThrow();
        double weeks = Math.max(LEAST_WEEKS, (ChronoUnit.DAYS.between(first, today) + 1) / 7.0);
        double season = season(recent, weeks, today);
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

    private static Learned one(List<Blank> same, double weeks, double season, LocalDate today) {
        LocalDate middle = today.minusDays(Math.round(weeks * 7 / 2));
        long later = same.stream().filter(blank -> blank.day().isAfter(middle)).count();
        long earlier = same.size() - later;
        boolean trend = weeks >= 16 && Math.abs(later - earlier) > 2 * Math.sqrt(later + earlier);
        double n = trend ? later : same.size();
        double time = trend ? weeks / 2 : weeks;
        return new Learned(
                same.getFirst().size(),
                same.size(),
                season * (n + 0.5) / time,
                season * quantile(n + 0.5, time, -MIDDLE_80),
                season * quantile(n + 0.5, time, MIDDLE_80),
                trend);
    }

    /** This month of the year against the average one; 1 in the first year. */
    private static double season(List<Blank> recent, double weeks, LocalDate today) {
        if (weeks <= SEASON_NEEDS_WEEKS) {
            return 1;
        }
        double years = weeks / SEASON_NEEDS_WEEKS;
        long inMonth = recent.stream()
                .filter(blank -> Math.abs(apart(blank.day(), today)) <= 15)
                .count();
        double expected = recent.size() * (31.0 / 365.25);
        return (inMonth + EVENLY * years / 12) / (expected + EVENLY * years / 12);
    }

    /** Days between two days of the year, the shorter way round. */
    private static int apart(LocalDate one, LocalDate other) {
        int days = Math.abs(one.getDayOfYear() - other.getDayOfYear());
        return Math.min(days, 365 - days);
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
