package puzzleworkshop.wood.asked;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import puzzleworkshop.wood.asked.Demand.Blank;

/**
 * How weeks of the year differ from each other. A week is judged by the days of past years that lie within 15 days of its
 * middle: the blanks asked for on them against those that so many days would have had if all days were alike. It counts only
 * where it differs by more than two standard deviations of a Poisson count, and is drawn towards the average as if twelve more
 * blanks a year had been spread evenly (our own choice). Each size is judged against the season of all blanks, in the same way.
 */
final class Season {

    private static final int NEEDS_DAYS = 52 * 7;
    private static final int HALF_WINDOW = 15;
    private static final int YEAR = 365;
    private static final double EVENLY_A_YEAR = 12;
    private static final double CARRIED = 2;

    private final LocalDate today;
    private final double days;
    private final int[] daysOf = new int[YEAR];
    private final int[] all;
    private final int count;

    /** @param first day of the time that is looked at, today its last */
    Season(List<Blank> blanks, LocalDate first, LocalDate today) {
        this.today = today;
        this.days = ChronoUnit.DAYS.between(first, today) + 1.0;
        first.datesUntil(today.plusDays(1)).forEach(day -> daysOf[ofYear(day)]++);
        this.all = byDay(blanks);
        this.count = blanks.size();
    }

    /** For each week to come, this one first, what the average week is multiplied by; 1 in the first year. */
    double[] factors(List<Blank> same, int weeks) {
        int[] own = byDay(same);
        double[] factors = new double[weeks];
        for (int week = 0; week < weeks; week++) {
            int middle = ofYear(today.plusDays(7L * week + 3));
            double share = window(daysOf, middle) / days;
            double common = factor(window(all, middle), count * share, 1, share);
            factors[week] = factor(window(own, middle), same.size() * share, common, share);
        }
        return factors;
    }

    private double factor(int seen, double evenly, double otherwise, double share) {
        double expected = evenly * otherwise;
        if (days <= NEEDS_DAYS || Math.abs(seen - expected) <= CARRIED * Math.sqrt(expected)) {
            return otherwise;
        }
        double more = EVENLY_A_YEAR * share * days / YEAR;
        return (seen + more * otherwise) / (evenly + more);
    }

    private static int[] byDay(List<Blank> blanks) {
        int[] counts = new int[YEAR];
        blanks.forEach(blank -> counts[ofYear(blank.day())]++);
        return counts;
    }

    private static int window(int[] counts, int middle) {
        int sum = 0;
        for (int day = middle - HALF_WINDOW; day <= middle + HALF_WINDOW; day++) {
            sum += counts[Math.floorMod(day, YEAR)];
        }
        return sum;
    }

    private static int ofYear(LocalDate day) {
        return Math.min(day.getDayOfYear(), YEAR) - 1;
    }
}
