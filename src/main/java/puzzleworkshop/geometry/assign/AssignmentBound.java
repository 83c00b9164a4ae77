package puzzleworkshop.geometry.assign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * What no assignment of blanks to boards can beat: a Lagrangian relaxation.
 *
 * <p>Each kind of blank is given a price. Freed from having to place every blank, each board by itself takes the set
 * that earns most: prices less the least it loses by that set ({@link BoardSets}). Sum of all prices less all those earnings
 * is a bound for every choice of prices (Geoffrion, Mathematical Programming Study 2, 1974; a set for each board as in Gilmore
 * and Gomory, Operations Research 9, 1961); the prices are bettered by subgradient steps (Polyak, USSR Computational
 * Mathematics 9, 1969). It holds for all places and angles, but that rectangular boards are cut along their edges.
 *
 * <p>A board that could give more than {@value #MOST_SETS} sets is taken by areas alone: a knapsack, solved on areas rounded in
 * the board's favour.
 */
final class AssignmentBound {

    private static final int STEPS = 300;
    private static final int CELLS = 400;
    private static final int MOST_SETS = 4_000;
    /** A mm² of board is worth about so much, to begin with. */
    private static final double USUAL_WORTH = 0.65;

    private static final int MOST_SETS_IN_ALL = 60_000;

    /** Border pieces that may be looked at, about half a second. */
    private static final long MOST_WORK = 100_000_000;

    private final CutBoards cut;
    private final int stock;
    private final double[] area;
    private final int[] demand;
    private final List<int[]> held = new ArrayList<>();
    private final List<Optional<BoardSets>> sets = new ArrayList<>();

    AssignmentBound(CutBoards cut, List<Size> blanks, int stock, boolean[][] holds) {
        this.cut = cut;
        this.stock = stock;
        int[] kinds = IntStream.range(0, blanks.size())
                .filter(b -> cut.sameAs(b) == b
                        && IntStream.range(0, holds[b].length).anyMatch(s -> holds[b][s]))
                .toArray();
        area = Arrays.stream(kinds).mapToDouble(b -> blanks.get(b).area().mm2()).toArray();
        demand = Arrays.stream(kinds)
                .map(kind -> (int) IntStream.range(0, blanks.size())
                        .filter(b -> cut.sameAs(b) == kind)
                        .count())
                .toArray();
        int boards = blanks.isEmpty() ? 0 : holds[0].length;
        for (int board = 0; board < boards; board++) {
            int here = board;
            held.add(IntStream.range(0, kinds.length)
                    .filter(t -> holds[kinds[t]][here])
                    .toArray());
        }
        Size[] sides = Arrays.stream(kinds).mapToObj(blanks::get).toArray(Size[]::new);
        BoardSets.WorkLeft work = new BoardSets.WorkLeft(MOST_WORK);
        int room = MOST_SETS_IN_ALL;
        for (int board = boards - 1; board >= 0; board--) {
            Optional<BoardSets> these =
                    cut.sets(board, sides, demand, held.get(board), Math.min(room, MOST_SETS), work);
            room -= these.map(BoardSets::size).orElse(0);
            sets.addFirst(these);
        }
    }

    /** @param plans the value that some plan loses, to step towards */
    Area leastValueLost(int mostNewBoards, Area plans) {
        return Area.mm2(highest(
                (board, prices, taken) -> {
                    if (sets.get(board).isPresent()) {
                        return sets.get(board).get().most(prices, Optional.empty(), taken);
                    }
                    double best = 0;
                    int[] bestTaken = new int[area.length];
                    for (CutBoards.Step step : cut.steps(board)) {
                        int[] these = new int[area.length];
                        double earned = knapsack(board, step.mostCut(), prices, step.worth(), these);
                        double total = earned + cut.area(board) * step.worth() - cut.value(board);
                        if (total > best) {
                            best = total;
                            bestTaken = these;
                        }
                    }
                    System.arraycopy(bestTaken, 0, taken, 0, taken.length);
                    return best;
                },
                mostNewBoards,
                plans.mm2()));
    }

    /** Rounded up to what whole boards can add up to. */
    Area leastNewArea() {
        int all = Arrays.stream(demand).sum();
        double least = highest(
                (board, prices, taken) -> {
                    if (sets.get(board).isPresent()) {
                        double costs = board < stock ? 0 : cut.area(board);
                        return sets.get(board).get().most(prices, Optional.of(costs), taken);
                    }
                    double earned =
                            knapsack(board, cut.area(board), prices, 0, taken) - (board < stock ? 0 : cut.area(board));
                    if (earned <= 0) {
                        Arrays.fill(taken, 0);
                    }
                    return Math.max(0, earned);
                },
                all,
                0);
        TreeSet<Double> sums = new TreeSet<>(List.of(0.0));
        while (!sums.isEmpty() && sums.first() < least - 1e-3) {
            double sum = sums.pollFirst();
            for (int kind = stock; kind < held.size(); kind++) {
                sums.add(sum + cut.area(kind));
            }
        }
        return Area.mm2(sums.isEmpty() ? 0 : sums.first());
    }

    /** The most a board can earn at these prices, and how many of each kind of blank it takes for that. */
    private interface Earning {
        double of(int board, double[] prices, int[] taken);
    }

    private double highest(Earning earning, int mostNewBoards, double aim) {
        double[] prices =
                Arrays.stream(area).map(mm2 -> aim == 0 ? 0 : mm2 * USUAL_WORTH).toArray();
        double[] bestPrices = prices.clone();
        double best = 0;
        double pace = 1;
        int since = 0;
        double board =
                IntStream.range(0, held.size()).mapToDouble(cut::area).max().orElse(0);
        for (int step = 0; step < STEPS; step++) {
            int[] wanted = demand.clone();
            double bound = worth(prices, earning, mostNewBoards, wanted);
            if (bound > best * (1 + 1e-6)) {
                best = bound;
                bestPrices = prices.clone();
                since = 0;
            } else if (++since >= 10) {
                pace *= 0.7;
                prices = bestPrices.clone();
                since = 0;
            }
            double square =
                    Arrays.stream(wanted).mapToDouble(g -> (double) g * g).sum();
            if (square == 0) {
                return best;
            }
            double length = pace * Math.max(1_000, (aim == 0 ? best + board : aim) - bound) / square;
            for (int t = 0; t < prices.length; t++) {
                prices[t] = Math.max(0, prices[t] + length * wanted[t]);
            }
        }
        return best;
    }

    /** The bound at these prices; of each kind is then wanted what no board takes. */
    private double worth(double[] prices, Earning earning, int mostNewBoards, int[] wanted) {
        double bound = IntStream.range(0, area.length)
                .mapToDouble(t -> demand[t] * prices[t])
                .sum();
        for (int board = 0; board < held.size(); board++) {
            int times = board < stock ? 1 : mostNewBoards;
            if (times > 0) {
                int[] taken = new int[area.length];
                bound -= times * earning.of(board, prices, taken);
                for (int t = 0; t < taken.length; t++) {
                    wanted[t] -= times * taken[t];
                }
            }
        }
        return bound;
    }

    /** Bounded knapsack: gains are prices less what the area would be worth; fills in how many of each are taken. */
    private double knapsack(int board, double room, double[] prices, double worth, int[] taken) {
        int[] kinds = Arrays.stream(held.get(board))
                .filter(t -> area[t] <= room + 1 && prices[t] - area[t] * worth > 0)
                .toArray();
        if (kinds.length == 0) {
            return 0;
        }
        double cell = room / CELLS;
        double[] gain = new double[CELLS + 1];
        int items = 0;
        int[] item = new int[Arrays.stream(demand).sum()];
        for (int t : kinds) {
            for (int copy = 0; copy < Math.min(demand[t], (int) (room / area[t] + 1e-9)); copy++) {
                item[items++] = t;
            }
        }
        boolean[][] used = new boolean[items][CELLS + 1];
        for (int i = 0; i < items; i++) {
            int weight = (int) Math.min(CELLS, Math.floor(area[item[i]] / cell));
            double each = prices[item[i]] - area[item[i]] * worth;
            for (int c = CELLS; c >= weight; c--) {
                if (gain[c - weight] + each > gain[c]) {
                    gain[c] = gain[c - weight] + each;
                    used[i][c] = true;
                }
            }
        }
        int c = CELLS;
        for (int i = items - 1; i >= 0; i--) {
            if (used[i][c]) {
                taken[item[i]]++;
                c -= (int) Math.min(CELLS, Math.floor(area[item[i]] / cell));
            }
        }
        return gain[CELLS];
    }
}
