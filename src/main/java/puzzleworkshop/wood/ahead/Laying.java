package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.wood.play.CutAt;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/** Lays blanks on open boards, one after the other, each where the rule wants it; never takes one back. */
final class Laying {

    private Laying() {}

    /**
     * @param boards cut into
     * @param without receives the blanks that no board holds; null: stop at the first such and answer null
     */
    static List<CutAt> lay(
            List<OpenBoard> boards,
            List<Wanted> blanks,
            int[] order,
            PlaceRule rule,
            boolean turning,
            List<Integer> without) {
        List<CutAt> cuts = new ArrayList<>(order.length);
        for (int blank : order) {
            CutAt cut = one(boards, blank, blanks.get(blank), rule, turning);
            if (cut != null) {
                cuts.add(cut);
            } else if (without == null) {
                return null;
            } else {
                without.add(blank);
            }
        }
        return cuts;
    }

    private static CutAt one(List<OpenBoard> boards, int blank, Wanted size, PlaceRule rule, boolean turning) {
        OpenBoard on = null;
        int x = 0;
        int y = 0;
        boolean turned = false;
        long best = Long.MAX_VALUE;
        int ways = turning && size.width() != size.height() ? 2 : 1;
        for (OpenBoard board : boards) {
            if (board.freeArea() < size.area() || rule.least(board) >= best) {
                continue;
            }
            for (int room = 0; room < board.rooms(); room++) {
                for (int way = 0; way < ways; way++) {
                    int w = way == 0 ? size.width() : size.height();
                    int h = way == 0 ? size.height() : size.width();
                    if (w > board.roomWidth(room) || h > board.roomHeight(room)) {
                        continue;
                    }
                    long score = rule.score(board, room, w, h);
                    if (score < best) {
                        best = score;
                        on = board;
                        x = board.x(room);
                        y = board.y(room);
                        turned = way == 1;
                    }
                }
            }
        }
        if (on == null) {
            return null;
        }
        int w = turned ? size.height() : size.width();
        int h = turned ? size.width() : size.height();
        on.cut(x, y, w, h);
        return new CutAt(blank, on.number(), x, y, w, h);
    }

    static List<OpenBoard> copy(List<OpenBoard> boards) {
        List<OpenBoard> copies = new ArrayList<>(boards.size() + 4);
        for (OpenBoard board : boards) {
            copies.add(board.copy());
        }
        return copies;
    }
}
