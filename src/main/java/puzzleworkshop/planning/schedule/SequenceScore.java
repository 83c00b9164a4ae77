package puzzleworkshop.planning.schedule;

/**
 * What makes one plan better than another: what lateness costs, by {@link LatenessCost}; first that of orders that can
 * go on, then that of orders that wait. Of equal ones that with fewer set-ups, then that which is done earlier in sum.
 *
 * @param late how many are late, which decides nothing
 */
record SequenceScore(double cost, double waitingCost, int late, int setUps, long finishes)
        implements Comparable<SequenceScore> {

    /** Sums of the same costs in another order differ by less. */
    static final double SAME = 1e-9;

    @Override
    public int compareTo(SequenceScore other) {
        int byCost = compare(cost, other.cost);
        if (byCost != 0) {
            return byCost;
        }
        int byWaiting = compare(waitingCost, other.waitingCost);
        if (byWaiting != 0) {
            return byWaiting;
        }
        int bySetUps = Integer.compare(setUps, other.setUps);
        return bySetUps != 0 ? bySetUps : Long.compare(finishes, other.finishes);
    }

    private static int compare(double one, double other) {
        return Math.abs(one - other) <= SAME ? 0 : Double.compare(one, other);
    }
}
