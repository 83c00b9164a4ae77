package puzzleworkshop.planning.schedule;

/**
 * What it costs, in points, to hand an order over late. The week's sequence is the one that costs least in sum.
 *
 * <p>With D working days late (a fraction counts as such) and the weight w of the order:
 * <pre>cost = w · (atAll + perDay · D + growth · D²), and 0 when it is on time.</pre>
 *
 * The square is what keeps one order from being put off without end so that others are on time: with the usual numbers
 * one order ten days late (121 points) costs as much as thirty orders one day late. Only counting late orders would
 * never do the first one at all. The numbers are the owner's; the usual ones are common practice.
 *
 * @param atAll for being late at all: the customer has to be told
 * @param perDay for each working day
 * @param growth times the square of the days
 * @param started weight of an order whose work has begun: board and print are spent already
 * @param paid weight of an order for which money has come
 */
public record LatenessCost(double atAll, double perDay, double growth, double started, double paid) {

    public static final LatenessCost USUAL = new LatenessCost(1, 2, 1, 2, 1.5);

    /** What never gets done counts as so many days late. */
    static final double NEVER_DAYS = 400;

    private static final double MOST = 1000;

    public LatenessCost {
        within(0, atAll);
        within(0, perDay);
        within(0.01, growth);
        within(1, started);
        within(1, paid);
    }

    private static void within(double least, double value) {
        if (!(value >= least && value <= MOST)) {
            throw new IllegalArgumentException("A weight of lateness must lie between " + least + " and " + MOST);
        }
    }

    /** How much an order weighs; 1 for one not begun and not paid. */
    public double weight(boolean isStarted, boolean isPaid) {
        return (isStarted ? started : 1) * (isPaid ? paid : 1);
    }

    /** For an order of weight 1 that is so many working days late; on time from 0 down. */
    public double of(double daysLate) {
        return daysLate <= 0 ? 0 : atAll + perDay * daysLate + growth * daysLate * daysLate;
    }
}
