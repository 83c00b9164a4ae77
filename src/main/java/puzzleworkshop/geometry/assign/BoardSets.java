package puzzleworkshop.geometry.assign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.PairFit;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Size;

/**
 * All sets of blanks that one board could give by their area, each with the least that the board loses by it.
 *
 * <p>At first a set loses what its area says: what is left is worth at most its area on the highest rung that could still
 * lie there. Only sets that a bound asks for are looked at closer, once each: two blanks that do not lie on the board
 * together make every set with both impossible, and a rung that does not lie there beside one of the blanks is not reached
 * ({@link PairFit}, at any angle). From a rectangular board blanks are cut along its edges; then the whole set, and the set
 * with a rung, must pass {@link UprightFit}.
 */
final class BoardSets {

    private static final long MOST_WORK_PER_PAIR = 60_000;

    /** Kinds of blank, each as often as it is in the set, rising. */
    private static final class Set {

        private final int[] kinds;
        private final double area;
        private double loss;
        private boolean looked;

        private Set(int[] kinds, double area, double loss) {
            this.kinds = kinds;
            this.area = area;
            this.loss = loss;
        }
    }

    private final Profile board;
    private final UsefulSizes sizes;
    private final Size[] blanks;
    private final List<Set> sets = new ArrayList<>();
    private final Optional<Size> rectangle;
    private final int[] pairs;
    private final int[] rungs;
    private final WorkLeft work;

    /** What may still be spent on looking closer, for all boards together, so that the same question has the same bound. */
    static final class WorkLeft {

        private long left;

        WorkLeft(long left) {
            this.left = left;
        }
    }

    private BoardSets(Profile board, UsefulSizes sizes, Size[] blanks, WorkLeft work) {
        this.board = board;
        this.sizes = sizes;
        this.blanks = blanks;
        this.work = work;
        this.rectangle = Rectangular.of(board.outline());
        this.pairs = new int[blanks.length * blanks.length];
        this.rungs = new int[blanks.length * (sizes.top() + 1)];
    }

    /**
     * Empty when there are more sets than that.
     *
     * @param blanks the kinds of blank
     * @param demand how many of each are wanted
     * @param held the kinds that lie on the board by themselves
     */
    static Optional<BoardSets> of(
            Profile board, UsefulSizes sizes, Size[] blanks, int[] demand, int[] held, int most, WorkLeft work) {
        BoardSets made = new BoardSets(board, sizes, blanks, work);
        return made.enumerate(demand, held, 0, new int[0], 0, most) ? Optional.of(made) : Optional.empty();
    }

    private boolean enumerate(int[] demand, int[] held, int from, int[] kinds, double area, int most) {
        if (from == held.length) {
            if (kinds.length > 0) {
                double left = Math.max(0, board.area - area);
                int rung = Math.min(board.rung, sizes.highestFor(left));
                sets.add(new Set(kinds, area, board.value - sizes.value(left, rung)));
            }
            return sets.size() <= most;
        }
        int kind = held[from];
        double each = blanks[kind].area().mm2();
        int[] now = kinds;
        for (int n = 0; n <= demand[kind] && area + n * each <= board.area + 1; n++) {
            if (!enumerate(demand, held, from + 1, now, area + n * each, most)) {
                return false;
            }
            now = Arrays.copyOf(now, now.length + 1);
            now[now.length - 1] = kind;
        }
        return true;
    }

    int size() {
        return sets.size();
    }

    /**
     * The most that prices less what is lost come to, and which kinds are taken for that; zero and none when nothing pays.
     *
     * @param bought what the board costs beside; then nothing is lost by cutting it
     */
    double most(double[] prices, Optional<Double> bought, int[] taken) {
        while (true) {
            Set best = null;
            double most = 0;
            for (Set set : sets) {
                double earned = -bought.orElse(set.loss);
                for (int kind : set.kinds) {
                    earned += prices[kind];
                }
                if (earned > most + 1e-9) {
                    most = earned;
                    best = set;
                }
            }
            if (best == null) {
                return 0;
            }
            if (best.looked || work.left <= 0) {
                for (int kind : best.kinds) {
                    taken[kind]++;
                }
                return most;
            }
            look(best);
        }
    }

    private void look(Set set) {
        set.looked = true;
        int[] kinds = set.kinds;
        for (int i = 0; i < kinds.length; i++) {
            for (int j = i + 1; j < kinds.length; j++) {
                if (!pairMay(kinds[i], kinds[j])) {
                    int one = kinds[i];
                    int other = kinds[j];
                    sets.removeIf(that -> holdsBoth(that.kinds, one, other));
                    return;
                }
            }
        }
        boolean alongEdges = rectangle.isPresent() && Arrays.stream(kinds).allMatch(this::liesUpright);
        if (alongEdges && !liesUpright(kinds, Optional.empty())) {
            sets.removeIf(that -> isPartOf(kinds, that.kinds));
            return;
        }
        double left = Math.max(0, board.area - set.area);
        int rung = Math.min(board.rung, sizes.highestFor(left));
        while (rung > UsefulSizes.SCRAP && !rungMay(kinds, rung, alongEdges)) {
            rung--;
        }
        set.loss = Math.max(set.loss, board.value - sizes.value(left, rung));
    }

    private boolean rungMay(int[] kinds, int rung, boolean alongEdges) {
        for (int i = 0; i < kinds.length; i++) {
            if ((i == 0 || kinds[i] != kinds[i - 1]) && !rungMay(kinds[i], rung)) {
                return false;
            }
        }
        return !alongEdges || liesUpright(kinds, Optional.of(sizes.rung(rung)));
    }

    private boolean liesUpright(int kind) {
        return liesUpright(new int[] {kind}, Optional.empty());
    }

    private boolean liesUpright(int[] kinds, Optional<Size> beside) {
        List<Size> all = new ArrayList<>();
        for (int kind : kinds) {
            all.add(blanks[kind]);
        }
        beside.ifPresent(all::add);
        return UprightFit.mayHold(rectangle.orElseThrow(), all);
    }

    private boolean pairMay(int one, int other) {
        int at = one * blanks.length + other;
        if (pairs[at] == 0) {
            pairs[at] = may(blanks[one], blanks[other]) ? 1 : 2;
        }
        return pairs[at] == 1;
    }

    private boolean rungMay(int kind, int rung) {
        int at = rung * blanks.length + kind;
        if (rungs[at] == 0) {
            rungs[at] = may(blanks[kind], sizes.rung(rung)) ? 1 : 2;
        }
        return rungs[at] == 1;
    }

    private boolean may(Size one, Size other) {
        PairFit.Answer answer = PairFit.ask(board.border, one, other, Math.min(work.left, MOST_WORK_PER_PAIR));
        work.left -= answer.work();
        return answer.mayHold();
    }

    private static boolean holdsBoth(int[] kinds, int one, int other) {
        int first = -1;
        for (int i = 0; i < kinds.length; i++) {
            if (first < 0 && kinds[i] == one) {
                first = i;
            } else if (first >= 0 && kinds[i] == other) {
                return true;
            }
        }
        return false;
    }

    /** Both rising. */
    private static boolean isPartOf(int[] part, int[] all) {
        int next = 0;
        for (int kind : all) {
            next += next < part.length && part[next] == kind ? 1 : 0;
        }
        return next == part.length;
    }
}
