package puzzleworkshop.wood.play;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Plays a case with a policy, which sees each period only when it has come, and keeps the books. Every decision is
 * carried out on the boards here, so one that cuts what is not there, buys what is not offered or forgets a blank
 * that had a place does not pass.
 */
public final class WoodPlay {

    /**
     * How it went.
     *
     * @param cost of the boards bought
     * @param stranded blanks that no board could give; each is in the cost at the price of the dearest board seen
     * @param bought area of the boards bought
     * @param used area of the blanks cut
     * @param thrown area not kept for want of room
     * @param left area in the rack at the end
     * @param rack what is left at the end
     */
    public record Result(
            long cost,
            int stranded,
            long bought,
            long used,
            long thrown,
            long left,
            List<OpenBoard> rack,
            List<WoodDecision> decisions,
            List<Double> seconds) {}

    private final WoodCase woodCase;
    private List<OpenBoard> rack = new ArrayList<>();
    private int next;
    private long cost;
    private int stranded;
    private long bought;
    private long used;
    private long thrown;

    private WoodPlay(WoodCase woodCase) {
        this.woodCase = woodCase;
    }

    public static Result play(WoodCase woodCase, WoodPolicy policy) {
        return new WoodPlay(woodCase).all(policy);
    }

    private Result all(WoodPolicy policy) {
        List<WoodDecision> decisions = new ArrayList<>();
        List<Double> seconds = new ArrayList<>();
        List<WoodPeriod> periods = woodCase.periods();
        for (int t = 0; t < periods.size(); t++) {
            WoodState state = new WoodState(
                    periods.size(),
                    woodCase.turning(),
                    woodCase.room(),
                    woodCase.usual(),
                    periods.subList(0, t),
                    periods.get(t),
                    rack.stream().map(OpenBoard::copy).toList(),
                    next,
                    cost);
            long start = System.nanoTime();
            WoodDecision decision = policy.decide(state);
            seconds.add((System.nanoTime() - start) / 1e9);
            decisions.add(decision);
            carryOut(decision, periods.subList(0, t + 1));
        }
        long left = rack.stream().mapToLong(OpenBoard::freeArea).sum();
        return new Result(cost, stranded, bought, used, thrown, left, rack, decisions, seconds);
    }

    private void carryOut(WoodDecision decision, List<WoodPeriod> seen) {
        WoodPeriod now = seen.getLast();
        if (decision.bought().stream().distinct().count() != decision.bought().size()) {
            throw new IllegalStateException("A board is bought once");
        }
        for (int offer : decision.bought()) {
            ForSale board = now.offers().get(offer);
            rack.add(new OpenBoard(next++, board.width(), board.height()));
            cost += board.cost();
            bought += board.area();
        }
        boolean[] served = new boolean[now.blanks().size()];
        for (CutAt cut : decision.cuts()) {
            cut(cut, now.blanks().get(cut.blank()), served);
        }
        long dearest = seen.stream()
                .flatMap(period -> period.offers().stream())
                .mapToLong(ForSale::cost)
                .max()
                .orElse(0);
        for (boolean has : served) {
            if (!has) {
                stranded++;
                cost += dearest;
            }
        }
        rack.removeIf(board -> {
            boolean out = decision.thrown().contains(board.number());
            thrown += out ? board.freeArea() : 0;
            return out;
        });
        keepRoom();
    }

    private void cut(CutAt cut, Wanted blank, boolean[] served) {
        boolean asItIs = cut.width() == blank.width() && cut.height() == blank.height();
        boolean turned = woodCase.turning() && cut.width() == blank.height() && cut.height() == blank.width();
        OpenBoard board = rack.stream()
                .filter(one -> one.number() == cut.board())
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("No board " + cut.board()));
        if (served[cut.blank()] || !(asItIs || turned) || !isFree(board, cut)) {
            throw new IllegalStateException("No such cut: " + cut);
        }
        board.cut(cut.x(), cut.y(), cut.width(), cut.height());
        served[cut.blank()] = true;
        used += blank.area();
    }

    private static boolean isFree(OpenBoard board, CutAt cut) {
        for (int room = 0; room < board.rooms(); room++) {
            if (cut.x() >= board.x(room)
                    && cut.y() >= board.y(room)
                    && cut.x() + cut.width() <= board.x(room) + board.roomWidth(room)
                    && cut.y() + cut.height() <= board.y(room) + board.roomHeight(room)) {
                return true;
            }
        }
        return false;
    }

    /** The rack's room binds every policy: what is too much goes, smallest first. */
    private void keepRoom() {
        rack.removeIf(board -> board.freeArea() == 0);
        if (woodCase.room() == 0 || rack.size() <= woodCase.room()) {
            return;
        }
        List<OpenBoard> bySize = new ArrayList<>(rack);
        bySize.sort(Comparator.comparingLong(OpenBoard::freeArea).thenComparing(OpenBoard::number));
        for (OpenBoard board : bySize.subList(0, rack.size() - woodCase.room())) {
            thrown += board.freeArea();
            rack.remove(board);
        }
    }
}
