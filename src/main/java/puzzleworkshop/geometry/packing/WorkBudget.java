package puzzleworkshop.geometry.packing;

/**
 * How much work may still be done. Counted in looks at a piece, never in time, so that the same pieces get the same
 * answer on every machine.
 */
final class WorkBudget {

    private long left;
    long used;

    WorkBudget(long looks) {
        left = looks;
    }

    void spend(long looks) {
        left -= looks;
        used += looks;
    }

    boolean spent() {
        return left <= 0;
    }

    long left() {
        return Math.max(left, 0);
    }
}
