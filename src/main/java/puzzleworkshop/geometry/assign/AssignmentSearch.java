package puzzleworkshop.geometry.assign;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.assign.BoardAssignment.Placed;
import puzzleworkshop.geometry.assign.BoardAssignment.Plan;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * Ruin and recreate (Schrimpf and others, Journal of Computational Physics 159, 2000): some blanks are taken off and put
 * back one by one where they add least; a little worse is kept with a chance that falls (simulated annealing), so that
 * the search leaves a first valley. What is taken off: blanks at random, those of a few boards, or those that could
 * stand on each other's boards.
 */
final class AssignmentSearch {

    /** One blank without a board weighs more than any new boards, one mm² of new board more than any value lost. */
    private static final double WITHOUT = 1e14;

    private static final double NEW_AREA = 1e3;
    private static final int MOST_LOOKED_AT = 14;
    private static final double OVERLOOKED = 0.02;

    private final CutBoards cut;
    private final List<Size> blanks;
    private final int stock;
    private final double[] blankArea;
    private final int[][] candidates;
    private final int[][] newKinds;

    /**
     * @param candidates for each blank the boards of the stock that hold it, those first that may lose least
     * @param newKinds for each blank the new boards that hold it, smallest first
     */
    AssignmentSearch(CutBoards cut, List<Size> blanks, int stock, int[][] candidates, int[][] newKinds) {
        this.cut = cut;
        this.blanks = blanks;
        this.stock = stock;
        this.blankArea = blanks.stream().mapToDouble(b -> b.area().mm2()).toArray();
        this.candidates = candidates;
        this.newKinds = newKinds;
    }

    /** Each in its turn on the board that loses least then; null when it had to stop. */
    Draft inOrder(List<Integer> order, BooleanSupplier stop) {
        Draft draft = new Draft();
        return draft.insertAll(order, Integer.MAX_VALUE, null, stop) ? draft : null;
    }

    List<Integer> largestFirst() {
        return IntStream.range(0, blanks.size())
                .boxed()
                .sorted(Comparator.comparing((Integer b) -> blankArea[b]).reversed())
                .toList();
    }

    /** The best found in so many rounds, or until it is time to stop. */
    Draft improve(Draft start, int rounds, long seed, BooleanSupplier stop) {
        Random random = new Random(seed);
        Draft best = start;
        Draft current = start;
        double hot = 0.01 * start.lost / blanks.size() + 1;
        for (int round = 0; round < rounds && !stop.getAsBoolean(); round++) {
            double heat = hot * Math.pow(0.002, (double) round / rounds);
            Draft next = current.copy();
            List<Integer> out = next.ruin(random);
            switch (random.nextInt(3)) {
                case 0 -> Collections.shuffle(out, random);
                case 1 -> out.sort(Comparator.comparing((Integer b) -> candidates[b].length));
                default ->
                    out.sort(Comparator.comparing((Integer b) -> blankArea[b]).reversed());
            }
            if (!next.insertAll(out, MOST_LOOKED_AT, random, stop)) {
                return best;
            }
            if (next.cost() < current.cost() - heat * Math.log(1 - random.nextDouble())) {
                current = next;
            }
            if (next.cost() < best.cost() - 1e-6) {
                best = next;
            }
        }
        return best;
    }

    /** Which blanks lie on which board, while it is being worked out. */
    final class Draft {

        private final List<List<Integer>> on = new ArrayList<>();
        private final List<Integer> kindOf = new ArrayList<>();
        private final List<Integer> used = new ArrayList<>();
        private final List<Integer> unplaced = new ArrayList<>();
        private double lost;
        private double newArea;

        private Draft() {
            for (int i = 0; i < stock; i++) {
                on.add(List.of());
                kindOf.add(i);
            }
        }

        private Draft copy() {
            Draft copy = new Draft();
            copy.on.clear();
            copy.on.addAll(on);
            copy.kindOf.clear();
            copy.kindOf.addAll(kindOf);
            copy.used.addAll(used);
            copy.unplaced.addAll(unplaced);
            copy.lost = lost;
            copy.newArea = newArea;
            return copy;
        }

        double cost() {
            return WITHOUT * unplaced.size() + NEW_AREA * newArea + lost;
        }

        /** False: it had to stop, and this draft is not to be used. */
        private boolean insertAll(List<Integer> order, int most, Random random, BooleanSupplier stop) {
            for (int blank : order) {
                insert(blank, most, random, stop);
                if (stop.getAsBoolean()) {
                    return false;
                }
            }
            return true;
        }

        /** Puts a blank where it adds least; with a random, some places are overlooked. */
        private void insert(int blank, int most, Random random, BooleanSupplier stop) {
            int bestBoard = -1;
            double bestAdded = Double.POSITIVE_INFINITY;
            int looked = 0;
            for (int board : candidates[blank]) {
                if (looked >= most || stop.getAsBoolean() || cut.leastLoss(board, blankArea[blank]) >= bestAdded) {
                    break;
                }
                if (on.get(board).isEmpty() && !(random != null && random.nextDouble() < OVERLOOKED)) {
                    looked++;
                    double added = added(board, blank, bestAdded);
                    if (added < bestAdded) {
                        bestAdded = added;
                        bestBoard = board;
                    }
                }
            }
            for (int board : used) {
                if (!(random != null && random.nextDouble() < OVERLOOKED) && !stop.getAsBoolean()) {
                    double added = added(board, blank, bestAdded);
                    if (added < bestAdded) {
                        bestAdded = added;
                        bestBoard = board;
                    }
                }
            }
            if (bestBoard < 0 && newKinds[blank].length > 0) {
                bestBoard = on.size();
                on.add(List.of());
                kindOf.add(newKinds[blank][0]);
                newArea += cut.area(newKinds[blank][0]);
                bestAdded = added(bestBoard, blank, Double.POSITIVE_INFINITY);
            }
            if (bestBoard < 0) {
                unplaced.add(blank);
            } else {
                put(bestBoard, with(on.get(bestBoard), blank));
                lost += bestAdded;
            }
        }

        private void put(int board, List<Integer> wanted) {
            if (on.get(board).isEmpty()) {
                used.add(board);
            }
            on.set(board, wanted);
        }

        /** What the board loses more; infinite when the blank does not fit beside the others or it is not below the limit. */
        private double added(int board, int blank, double limit) {
            int kind = kindOf.get(board);
            List<Integer> before = on.get(board);
            double had =
                    before.isEmpty() ? cut.value(kind) : cut.of(kind, before).value();
            double area = cut.area(before) + blankArea[blank];
            if (area > cut.area(kind) + 1 || cut.leastLoss(kind, area) - (cut.value(kind) - had) >= limit) {
                return Double.POSITIVE_INFINITY;
            }
            CutBoards.Cut then = cut.of(kind, with(before, blank));
            return then == null ? Double.POSITIVE_INFINITY : had - then.value();
        }

        private List<Integer> ruin(Random random) {
            List<Integer> out = new ArrayList<>();
            int wanted = 2 + random.nextInt(Math.min(8, blanks.size()) + 1);
            List<Integer> boards = new ArrayList<>(used);
            Collections.shuffle(boards, random);
            int way = random.nextInt(3);
            if (way == 0) {
                boards.sort(Comparator.comparing(board -> board < stock));
                Collections.shuffle(
                        boards.subList(
                                0, (int) boards.stream().filter(b -> b >= stock).count()),
                        random);
            } else if (way == 1) {
                int first = on.get(boards.getFirst()).getFirst();
                boards.sort(Comparator.comparingDouble(board -> unlike(first, board)));
            }
            for (int board : boards) {
                if (out.size() >= wanted) {
                    break;
                }
                List<Integer> blanksThere = on.get(board);
                if (blanksThere.size() > 1 && random.nextBoolean()) {
                    takeOff(board, List.of(blanksThere.get(random.nextInt(blanksThere.size()))), out);
                } else {
                    takeOff(board, blanksThere, out);
                }
            }
            out.addAll(unplaced);
            unplaced.clear();
            forgetEmptyNewBoards();
            return out;
        }

        /** How different the blanks on a board are from one. */
        private double unlike(int blank, int board) {
            return on.get(board).stream()
                    .mapToDouble(other -> Math.abs(blankArea[other] - blankArea[blank]))
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
        }

        private void takeOff(int board, List<Integer> off, List<Integer> out) {
            List<Integer> left = new ArrayList<>(on.get(board));
            int kind = kindOf.get(board);
            lost -= cut.value(kind) - cut.of(kind, on.get(board)).value();
            left.removeAll(off);
            out.addAll(off);
            CutBoards.Cut now = cut.of(kind, left);
            if (now == null) {
                out.addAll(left);
                left.clear();
            } else {
                lost += cut.value(kind) - now.value();
            }
            on.set(board, List.copyOf(left));
            if (left.isEmpty()) {
                used.remove((Integer) board);
            }
        }

        private void forgetEmptyNewBoards() {
            for (int board = on.size() - 1; board >= stock; board--) {
                if (on.get(board).isEmpty()) {
                    newArea -= cut.area(kindOf.get(board));
                    on.remove(board);
                    kindOf.remove(board);
                    int gone = board;
                    used.replaceAll(other -> other > gone ? other - 1 : other);
                }
            }
        }

        private List<Integer> with(List<Integer> before, int blank) {
            List<Integer> after = new ArrayList<>(before);
            after.add(blank);
            after.sort(Comparator.comparing((Integer b) -> blankArea[b])
                    .reversed()
                    .thenComparing(cut::sameAs)
                    .thenComparing(Comparator.naturalOrder()));
            return List.copyOf(after);
        }

        Plan plan() {
            List<Placed> placed = new ArrayList<>();
            double sum = 0;
            for (int board = 0; board < on.size(); board++) {
                if (!on.get(board).isEmpty()) {
                    CutBoards.Cut result = cut.of(kindOf.get(board), on.get(board));
                    sum += cut.value(kindOf.get(board)) - result.value();
                    List<Integer> waiting = new ArrayList<>(on.get(board));
                    for (int i = 0; i < result.kinds().size(); i++) {
                        int kind = result.kinds().get(i);
                        Integer blank = waiting.stream()
                                .filter(b -> cut.sameAs(b) == kind)
                                .findFirst()
                                .orElseThrow();
                        waiting.remove(blank);
                        placed.add(new Placed(blank, board, result.places().get(i)));
                    }
                }
            }
            placed.sort(Comparator.comparingInt(Placed::blank));
            List<Integer> bought = kindOf.subList(stock, kindOf.size()).stream()
                    .map(kind -> kind - stock)
                    .toList();
            double area = kindOf.subList(stock, kindOf.size()).stream()
                    .mapToDouble(cut::area)
                    .sum();
            return new Plan(placed, unplaced, bought, Area.mm2(area), Area.mm2(Math.max(0, sum)));
        }
    }
}
