package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * Which boards give many blanks together, so that first the least new board is bought and then the least value lost.
 *
 * <p>Start: every blank in the order it came takes the board that loses least (what a person does). Then, until the time
 * is up, some blanks are taken off and put back one by one where they add least (ruin and recreate: Schrimpf and others,
 * Journal of Computational Physics 159, 2000); what is not worse is kept. So the answer is never worse than the start. A
 * board may give several blanks: the larger is placed first, the next in what remains.
 */
public final class BoardAssignment {

    /** One blank's answer: the board (from {@code boards.size()} on a new one) and the place on it. */
    public record Placed(int blank, int board, Placement place) {}

    /**
     * @param placed the blanks that have a board, in the order given
     * @param unplaced blanks that no board, not even a new one, can hold
     * @param newBoards for each new board its index among the kinds offered; board number {@code boards.size() + k} is
     *     the k-th of these
     */
    public record Plan(
            List<Placed> placed, List<Integer> unplaced, List<Integer> newBoards, Area newArea, Area valueLost) {

        boolean isBetterThan(Plan other) {
            int missing = Integer.compare(unplaced.size(), other.unplaced.size());
            int bought = Double.compare(newArea.mm2(), other.newArea.mm2());
            return missing != 0 ? missing < 0
                    : Math.abs(newArea.mm2() - other.newArea.mm2()) > 1e-6 ? bought < 0
                    : valueLost.mm2() < other.valueLost.mm2() - 1e-6;
        }
    }

    private final CutBoards cut;
    private final List<Size> blanks;
    private final double[][] leastLoss;
    private final int[][] candidates;
    private final int stock;

    /**
     * @param boards the stock
     * @param kinds new boards that can be bought, any number of each
     * @param angles for a blank and a board (a kind from {@code boards.size()} on): null for any angle, an empty array when
     *     the board may not be used for the blank, else the angles allowed
     */
    public BoardAssignment(
            List<Profile> boards, List<Profile> kinds, List<Size> blanks, UsefulSizes sizes,
            BiFunction<Integer, Integer, double[]> angles) {
        this.blanks = List.copyOf(blanks);
        this.stock = boards.size();
        List<Profile> all = new ArrayList<>(boards);
        all.addAll(kinds);
        this.cut = new CutBoards(all, blanks, sizes, angles);
        this.leastLoss = new double[blanks.size()][all.size()];
        this.candidates = new int[blanks.size()][];
        int[] distinct = IntStream.range(0, blanks.size()).filter(b -> cut.sameAs(b) == b).toArray();
        Arrays.stream(distinct).parallel().forEach(blank -> {
            for (int board = 0; board < all.size(); board++) {
                leastLoss[blank][board] = cut.leastLoss(blank, board);
            }
            candidates[blank] = IntStream.range(0, stock)
                    .filter(board -> leastLoss[blank][board] < Double.POSITIVE_INFINITY)
                    .boxed()
                    .sorted(Comparator.comparingDouble(board -> leastLoss[blank][board]))
                    .mapToInt(Integer::intValue)
                    .toArray();
        });
        for (int blank = 0; blank < blanks.size(); blank++) {
            leastLoss[blank] = leastLoss[cut.sameAs(blank)];
            candidates[blank] = candidates[cut.sameAs(blank)];
        }
    }

    /** First come, first served, each the board that loses least then. */
    public Plan firstCome() {
        Draft draft = new Draft();
        for (int blank = 0; blank < blanks.size(); blank++) {
            draft.insert(blank, Integer.MAX_VALUE);
        }
        return draft.plan();
    }

    /** Improves on {@link #firstCome()} for so long. */
    public Plan together(long millis, long seed) {
        long end = System.nanoTime() + millis * 1_000_000;
        Random random = new Random(seed);
        Draft draft = new Draft();
        for (int blank = 0; blank < blanks.size(); blank++) {
            draft.insert(blank, Integer.MAX_VALUE);
        }
        Plan best = draft.plan();
        Draft current = draft;
        for (int round = 0; System.nanoTime() < end && !blanks.isEmpty(); round++) {
            Draft next = current.copy();
            List<Integer> out = next.ruin(random);
            if (round % 2 == 0) {
                out.sort(Comparator.comparing((Integer b) -> blanks.get(b).area()).reversed());
            }
            for (int blank : out) {
                next.insert(blank, 14);
            }
            Plan plan = next.plan();
            if (!best.isBetterThan(plan)) {
                current = next;
                best = plan;
            }
        }
        return best;
    }

    /**
     * No plan loses less value: each blank costs at least its area at the worth per area of the cheapest board that
     * holds it, or the whole board where nothing else can be got from it beside the blank.
     */
    public Area leastValueLost() {
        double sum = 0;
        for (double[] row : leastLoss) {
            double least = Arrays.stream(row).min().orElse(Double.POSITIVE_INFINITY);
            sum += least < Double.POSITIVE_INFINITY ? least : 0;
        }
        return Area.mm2(sum);
    }

    /** Which blanks lie on which board, while it is being worked out. */
    private final class Draft {

        private final List<List<Integer>> on = new ArrayList<>();
        private final List<Integer> kindOf = new ArrayList<>();
        private final List<Integer> unplaced = new ArrayList<>();

        Draft() {
            for (int i = 0; i < stock; i++) {
                on.add(List.of());
                kindOf.add(i);
            }
        }

        Draft copy() {
            Draft copy = new Draft();
            copy.on.clear();
            copy.on.addAll(on);
            copy.kindOf.clear();
            copy.kindOf.addAll(kindOf);
            copy.unplaced.addAll(unplaced);
            return copy;
        }

        /** Puts a blank where it adds least; looks at so many boards of the stock at most. */
        void insert(int blank, int most) {
            int bestBoard = -1;
            double bestAdded = Double.POSITIVE_INFINITY;
            int looked = 0;
            for (int board : candidates[blank]) {
                if (leastLoss[blank][board] >= bestAdded || looked >= most) {
                    break;
                }
                looked++;
                double added = added(board, blank);
                if (added < bestAdded) {
                    bestAdded = added;
                    bestBoard = board;
                }
            }
            for (int board = 0; board < on.size(); board++) {
                boolean inUse = !on.get(board).isEmpty();
                if (inUse && leastLoss[blank][kindOf.get(board)] < bestAdded) {
                    double added = added(board, blank);
                    if (added < bestAdded) {
                        bestAdded = added;
                        bestBoard = board;
                    }
                }
            }
            if (bestBoard < 0) {
                bestBoard = openNew(blank);
            }
            if (bestBoard < 0) {
                unplaced.add(blank);
            } else {
                on.set(bestBoard, with(on.get(bestBoard), blank));
            }
        }

        private double added(int board, int blank) {
            List<Integer> before = on.get(board);
            CutBoards.Cut now = cut.of(kindOf.get(board), before);
            CutBoards.Cut then = cut.of(kindOf.get(board), with(before, blank));
            return then == null ? Double.POSITIVE_INFINITY : now.value() - then.value();
        }

        /** The kind of new board with the least area that holds it. */
        private int openNew(int blank) {
            int found = -1;
            for (int kind = stock; kind < leastLoss[blank].length; kind++) {
                boolean holds = leastLoss[blank][kind] < Double.POSITIVE_INFINITY
                        && cut.of(kind, List.of(blank)) != null;
                if (holds && (found < 0 || cut.area(kind) < cut.area(found))) {
                    found = kind;
                }
            }
            if (found < 0) {
                return -1;
            }
            on.add(List.of());
            kindOf.add(found);
            return on.size() - 1;
        }

        /** Takes a few blanks off, those of a few boards and some at random; returns them in random order. */
        List<Integer> ruin(Random random) {
            List<Integer> out = new ArrayList<>();
            int wanted = 2 + random.nextInt(Math.min(7, blanks.size()) + 1);
            List<Integer> used = new ArrayList<>(
                    IntStream.range(0, on.size()).filter(b -> !on.get(b).isEmpty()).boxed().toList());
            java.util.Collections.shuffle(used, random);
            for (int board : used) {
                if (out.size() >= wanted) {
                    break;
                }
                out.addAll(on.get(board));
                on.set(board, List.of());
            }
            out.addAll(unplaced);
            unplaced.clear();
            for (int board = on.size() - 1; board >= stock; board--) {
                if (on.get(board).isEmpty()) {
                    on.remove(board);
                    kindOf.remove(board);
                }
            }
            java.util.Collections.shuffle(out, random);
            return out;
        }

        private List<Integer> with(List<Integer> before, int blank) {
            List<Integer> after = new ArrayList<>(before);
            after.add(blank);
            after.sort(Comparator.comparing((Integer b) -> blanks.get(b).area())
                    .reversed()
                    .thenComparing(Comparator.naturalOrder()));
            return List.copyOf(after);
        }

        Plan plan() {
            List<Placed> placed = new ArrayList<>();
            double newArea = 0;
            double lost = 0;
            for (int board = 0; board < on.size(); board++) {
                if (!on.get(board).isEmpty()) {
                    CutBoards.Cut result = cut.of(kindOf.get(board), on.get(board));
                    lost += cut.of(kindOf.get(board), List.of()).value() - result.value();
                    for (int i = 0; i < on.get(board).size(); i++) {
                        placed.add(new Placed(on.get(board).get(i), board, result.places().get(i)));
                    }
                    newArea += board >= stock ? cut.area(kindOf.get(board)) : 0;
                }
            }
            placed.sort(Comparator.comparingInt(Placed::blank));
            List<Integer> bought =
                    kindOf.subList(stock, kindOf.size()).stream().map(kind -> kind - stock).toList();
            return new Plan(
                    List.copyOf(placed), List.copyOf(unplaced), bought, Area.mm2(newArea), Area.mm2(Math.max(0, lost)));
        }
    }

    static List<Geometry> parts(Geometry rest) {
        List<Geometry> parts = new ArrayList<>();
        for (int i = 0; i < rest.getNumGeometries(); i++) {
            if (rest.getGeometryN(i).getArea() >= Outline.SMALLEST_AREA) {
                parts.add(rest.getGeometryN(i));
            }
        }
        return parts;
    }
}
