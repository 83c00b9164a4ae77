package puzzleworkshop.wood.ahead.buying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;

/** The ways to buy in a period, cheapest first. Boards alike count as one kind, so that no way comes up twice. */
public final class Purchases {

    /** So many ways at most are looked at: more than a small workshop has boards to choose from. */
    private static final int MOST = 600;

    /** One way to buy: places in the list of offers. */
    public record Purchase(List<Integer> offers, long cost, long area) {

        public List<OpenBoard> boards(List<ForSale> from, int firstNumber) {
            List<OpenBoard> boards = new ArrayList<>(offers.size());
            for (int i = 0; i < offers.size(); i++) {
                ForSale board = from.get(offers.get(i));
                boards.add(new OpenBoard(firstNumber + i, board.width(), board.height()));
            }
            return boards;
        }
    }

    private final List<ForSale> offers;
    private final List<Purchase> ways;

    public Purchases(List<ForSale> offers) {
        this.offers = offers;
        Map<ForSale, List<Integer>> kinds = new LinkedHashMap<>();
        for (int i = 0; i < offers.size(); i++) {
            kinds.computeIfAbsent(offers.get(i), kind -> new ArrayList<>()).add(i);
        }
        List<Purchase> all = List.of(new Purchase(List.of(), 0, 0));
        for (Map.Entry<ForSale, List<Integer>> kind : kinds.entrySet()) {
            List<Purchase> more = new ArrayList<>(all);
            List<Purchase> last = all;
            for (int offer : kind.getValue()) {
                last = last.stream().map(way -> with(way, offer, kind.getKey())).toList();
                more.addAll(last);
            }
            more.sort(Comparator.comparingLong(Purchase::cost)
                    .thenComparing(way -> way.offers().size()));
            all = more.subList(0, Math.min(MOST, more.size()));
        }
        ways = List.copyOf(all);
    }

    private static Purchase with(Purchase way, int offer, ForSale board) {
        List<Integer> offers = new ArrayList<>(way.offers());
        offers.add(offer);
        return new Purchase(List.copyOf(offers), way.cost() + board.cost(), way.area() + board.area());
    }

    public List<ForSale> offers() {
        return offers;
    }

    public List<Purchase> ways() {
        return ways;
    }
}
