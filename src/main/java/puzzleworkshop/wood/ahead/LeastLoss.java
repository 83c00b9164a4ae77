package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.wood.play.CutAt;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/**
 * The rule of least loss as it stood before looking ahead: value of what is left by a fixed ladder of useful sizes
 * ({@link UsefulSizes#value}), each blank where the board loses least of it. Kept as a peer.
 */
final class LeastLoss {

    private final UsefulSizes ladder;
    private final boolean turning;

    LeastLoss(UsefulSizes ladder, boolean turning) {
        this.ladder = ladder;
        this.turning = turning;
    }

    List<CutAt> lay(List<OpenBoard> boards, List<Wanted> blanks, int[] order, boolean turned, List<Integer> without) {
        List<CutAt> cuts = new ArrayList<>();
        for (int blank : order) {
            CutAt cut = one(boards, blank, blanks.get(blank), turned);
            if (cut == null && without == null) {
                return null;
            }
            if (cut == null) {
                without.add(blank);
                continue;
            }
            boards.stream()
                    .filter(board -> board.number() == cut.board())
                    .findFirst()
                    .orElseThrow()
                    .cut(cut.x(), cut.y(), cut.width(), cut.height());
            cuts.add(cut);
        }
        return cuts;
    }

    private CutAt one(List<OpenBoard> boards, int blank, Wanted size, boolean mayTurn) {
        CutAt best = null;
        double leastLost = Double.POSITIVE_INFINITY;
        long smallestRest = Long.MAX_VALUE;
        for (OpenBoard board : boards) {
            if (board.freeArea() < size.area()) {
                continue;
            }
            double before = value(board);
            for (int room = 0; room < board.rooms(); room++) {
                for (Wanted way :
                        mayTurn && size.width() != size.height() ? List.of(size, size.turned()) : List.of(size)) {
                    if (!way.fits(board.roomWidth(room), board.roomHeight(room))) {
                        continue;
                    }
                    long rest = PlaceRule.SMALLEST_REST.score(board, room, way.width(), way.height());
                    int spareX = board.roomWidth(room) - way.width();
                    int spareY = board.roomHeight(room) - way.height();
                    for (int corner = 0; corner < 4; corner++) {
                        if (corner % 2 == 1 && spareX == 0 || corner > 1 && spareY == 0) {
                            continue;
                        }
                        CutAt cut = new CutAt(
                                blank,
                                board.number(),
                                board.x(room) + corner % 2 * spareX,
                                board.y(room) + corner / 2 * spareY,
                                way.width(),
                                way.height());
                        OpenBoard after = board.copy();
                        after.cut(cut.x(), cut.y(), cut.width(), cut.height());
                        double lost = before - value(after);
                        if (lost < leastLost - 1e-6 || lost < leastLost + 1e-6 && rest < smallestRest) {
                            leastLost = lost;
                            smallestRest = rest;
                            best = cut;
                        }
                    }
                }
            }
        }
        return best;
    }

    /** Sum over the connected parts of what is left. */
    double value(OpenBoard board) {
        int n = board.rooms();
        int[] part = new int[n];
        Arrays.setAll(part, i -> i);
        int parts = n;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                int one = root(part, i);
                int other = root(part, j);
                if (one != other && overlap(board, i, j)) {
                    part[one] = other;
                    parts--;
                }
            }
        }
        double value = 0;
        for (int root = 0; root < n; root++) {
            if (root(part, root) != root) {
                continue;
            }
            int rung = UsefulSizes.SCRAP;
            for (int i = 0; i < n; i++) {
                if (root(part, i) == root) {
                    rung = Math.max(rung, rung(board.roomWidth(i), board.roomHeight(i)));
                }
            }
            long area = parts == 1 ? board.freeArea() : area(board, part, root);
            value += ladder.value((double) area, rung);
        }
        return value;
    }

    private int rung(int w, int h) {
        for (int rung = ladder.top(); rung > UsefulSizes.SCRAP; rung--) {
            double rw = ladder.rung(rung).width().mm();
            double rh = ladder.rung(rung).height().mm();
            if (rw <= w && rh <= h || turning && rh <= w && rw <= h) {
                return rung;
            }
        }
        return UsefulSizes.SCRAP;
    }

    private static int root(int[] part, int i) {
        int at = i;
        while (part[at] != at) {
            at = part[at];
        }
        return at;
    }

    /** Rooms are maximal, so parts that touch along a line are joined by a room across it: sharing area is enough. */
    private static boolean overlap(OpenBoard board, int i, int j) {
        return board.x(i) < board.x(j) + board.roomWidth(j)
                && board.x(j) < board.x(i) + board.roomWidth(i)
                && board.y(i) < board.y(j) + board.roomHeight(j)
                && board.y(j) < board.y(i) + board.roomHeight(i);
    }

    private static long area(OpenBoard board, int[] part, int root) {
        int[] rooms = java.util.stream.IntStream.range(0, part.length)
                .filter(i -> root(part, i) == root)
                .toArray();
        int[] xs = Arrays.stream(rooms)
                .flatMap(i -> java.util.stream.IntStream.of(board.x(i), board.x(i) + board.roomWidth(i)))
                .sorted()
                .distinct()
                .toArray();
        long area = 0;
        for (int k = 0; k + 1 < xs.length; k++) {
            int left = xs[k];
            int[] here = Arrays.stream(rooms)
                    .filter(i -> board.x(i) <= left && left < board.x(i) + board.roomWidth(i))
                    .boxed()
                    .sorted(java.util.Comparator.comparingInt(board::y))
                    .mapToInt(Integer::intValue)
                    .toArray();
            int reached = Integer.MIN_VALUE;
            for (int i : here) {
                int from = Math.max(reached, board.y(i));
                int to = board.y(i) + board.roomHeight(i);
                area += (long) Math.max(0, to - from) * (xs[k + 1] - left);
                reached = Math.max(reached, to);
            }
        }
        return area;
    }
}
