package puzzleworkshop.geometry.packing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Whether a small number of pieces fits on a given number of sheets, complete unless the effort runs out: pieces, large
 * ones first, are dealt to the sheets in every way, and each hand is checked by area, by the bounds and at last by
 * {@link CornerSearch}.
 *
 * <p>Frame: Martello and Vigo, Exact solution of the two-dimensional finite bin packing problem, Management Science 44
 * (1998).
 */
final class SmallSheets {

    static final int MOST_PIECES = 16;
    private static final long LOOKS_PER_HAND = 3_000_000;

    private final ItemShapes shapes;
    private final int width;
    private final int height;
    private final int sheets;
    private final WorkBudget effort;
    private final int[] order;
    private final int[] hands;
    private final long[] areas;
    private final Map<Integer, Optional<Layout>> known = new HashMap<>();
    private boolean certain = true;

    SmallSheets(ItemShapes shapes, int width, int height, int sheets, WorkBudget effort) {
        this.shapes = shapes;
        this.width = width;
        this.height = height;
        this.sheets = sheets;
        this.effort = effort;
        order = ItemOrders.sorted(shapes).get(0);
        hands = new int[sheets];
        areas = new long[sheets];
    }

    /** A layout; or null, and then {@link #refuted()} tells whether there is certainly none. */
    Layout search() {
        return deal(0) ? together() : null;
    }

    boolean refuted() {
        return certain && !effort.spent();
    }

    private boolean deal(int k) {
        if (k == order.length) {
            return true;
        }
        int piece = order[k];
        for (int s = 0; s < sheets && !effort.spent(); s++) {
            if (areas[s] + shapes.area[piece] <= (long) width * height) {
                hands[s] |= 1 << piece;
                areas[s] += shapes.area[piece];
                if (fits(hands[s]) && deal(k + 1)) {
                    return true;
                }
                hands[s] &= ~(1 << piece);
                areas[s] -= shapes.area[piece];
            }
            if (hands[s] == 0) {
                break;
            }
        }
        return false;
    }

    private boolean fits(int hand) {
        return known.computeIfAbsent(hand, this::layOut).isPresent();
    }

    private Optional<Layout> layOut(int hand) {
        int[] which = new int[shapes.count];
        int size = 0;
        for (int i = 0; i < shapes.count; i++) {
            if ((hand >> i & 1) == 1) {
                which[size++] = i;
            }
        }
        ItemShapes some = shapes.subset(which, size);
        effort.spend(1000);
        if (LowerBounds.sheets(some, width, height) > 1) {
            return Optional.empty();
        }
        WorkBudget share = new WorkBudget(Math.min(LOOKS_PER_HAND, effort.left()));
        CornerSearch corners = new CornerSearch(some, width, height, share);
        CornerSearch.Answer answer = corners.search();
        effort.spend(share.used);
        if (answer != CornerSearch.Answer.YES) {
            certain &= answer == CornerSearch.Answer.NO;
            return Optional.empty();
        }
        Layout layout = new Layout(shapes.count);
        for (int k = 0; k < size; k++) {
            layout.put(which[k], 0, corners.layout.x[k], corners.layout.y[k], corners.layout.turned[k]);
        }
        return Optional.of(layout);
    }

    private Layout together() {
        Layout all = new Layout(shapes.count);
        for (int s = 0; s < sheets; s++) {
            if (hands[s] == 0) {
                continue;
            }
            Layout one = known.get(hands[s]).orElseThrow();
            for (int i = 0; i < shapes.count; i++) {
                if (one.sheet[i] == 0) {
                    all.put(i, s, one.x[i], one.y[i], one.turned[i]);
                }
            }
        }
        return all;
    }
}
