package puzzleworkshop.geometry.packing;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Lays pieces around others that stay where the user put them: maximal rectangles filled in an order that a search
 * improves by swaps. Fewest sheets count first, then how far the last sheet or the roll is used.
 */
final class PinnedSearch {

    private static final int ROUNDING = 2;

    private final IntegerScaling whole;
    private final ItemShapes shapes;
    private final WorkBudget effort;
    private final SplittableRandom random;
    private final Layout pinned;
    private final List<FreeRooms> start = new ArrayList<>();
    private final int[] loose;
    Layout best;
    int bestSheets = Integer.MAX_VALUE;
    private long bestLength = Long.MAX_VALUE;

    PinnedSearch(IntegerScaling whole, List<PackedAt> pins, WorkBudget effort, long seed) {
        this.whole = whole;
        this.shapes = whole.shapes;
        this.effort = effort;
        this.random = new SplittableRandom(seed);
        this.pinned = new Layout(shapes.count);
        for (PackedAt pin : pins) {
            pin(pin);
        }
        loose = java.util.Arrays.stream(ItemOrders.sorted(shapes).get(0))
                .filter(i -> pinned.sheet[i] < 0)
                .toArray();
    }

    private void pin(PackedAt pin) {
        int piece = pin.piece();
        int x = IntegerScaling.at(pin.x());
        int y = IntegerScaling.at(pin.y());
        int w = pin.turned() ? shapes.height[piece] : shapes.width[piece];
        int h = pin.turned() ? shapes.width[piece] : shapes.height[piece];
        if (pinned.sheet[piece] >= 0
                || pin.sheet() < 0
                || x < 0
                || y < 0
                || x + w > whole.width + ROUNDING
                || y + h > whole.height + ROUNDING
                || pin.turned() && !shapes.turnable[piece]) {
            throw new IllegalArgumentException("Pin of piece " + piece + " lies outside its sheet or twice");
        }
        for (int other = 0; other < shapes.count; other++) {
            if (pinned.sheet[other] == pin.sheet() && overlap(other, x, y, w, h)) {
                throw new IllegalArgumentException("Pins of pieces " + other + " and " + piece + " are too near");
            }
        }
        pinned.put(piece, pin.sheet(), x, y, pin.turned());
        while (start.size() <= pin.sheet()) {
            start.add(new FreeRooms(whole.width, whole.height));
        }
        start.get(pin.sheet()).take(x, y, w, h);
    }

    private boolean overlap(int other, int x, int y, int w, int h) {
        int ow = pinned.turned[other] ? shapes.height[other] : shapes.width[other];
        int oh = pinned.turned[other] ? shapes.width[other] : shapes.height[other];
        return Math.min(x + w, pinned.x[other] + ow) - Math.max(x, pinned.x[other]) > ROUNDING
                && Math.min(y + h, pinned.y[other] + oh) - Math.max(y, pinned.y[other]) > ROUNDING;
    }

    /** How many sheets the pins alone make necessary. */
    int pinnedSheets() {
        return pinned.sheets();
    }

    long pinnedLength() {
        return pinned.length(shapes, 0);
    }

    void search(int fewestSheets, long leastLength) {
        int[] order = loose.clone();
        layOut(order, false);
        layOut(order, true);
        int[] trial = order.clone();
        int goodSheets = bestSheets;
        long goodLength = bestLength;
        while (loose.length > 1
                && !effort.spent()
                && (bestSheets > fewestSheets || leastLength > 0 && bestLength > leastLength)) {
            System.arraycopy(order, 0, trial, 0, order.length);
            ItemOrders.move(trial, random.nextInt(order.length), random.nextInt(order.length));
            long length = layOut(trial, leastLength > 0 || random.nextBoolean());
            if (lastSheets < goodSheets || lastSheets == goodSheets && length <= goodLength) {
                goodSheets = lastSheets;
                goodLength = length;
                System.arraycopy(trial, 0, order, 0, order.length);
            }
        }
    }

    private int lastSheets;

    private long layOut(int[] order, boolean lowest) {
        Layout layout = pinned.copy();
        List<FreeRooms> rooms = new ArrayList<>();
        start.forEach(room -> rooms.add(new FreeRooms(room)));
        for (int piece : order) {
            FreeRooms.Place place = null;
            int sheet = 0;
            for (; place == null; sheet++) {
                if (sheet == rooms.size()) {
                    rooms.add(new FreeRooms(whole.width, whole.height));
                }
                effort.spend(rooms.get(sheet).size() * 4L);
                place = rooms.get(sheet).best(shapes, piece, lowest);
            }
            layout.put(piece, sheet - 1, place.x(), place.y(), place.turned());
            rooms.get(sheet - 1)
                    .take(
                            place.x(),
                            place.y(),
                            place.turned() ? shapes.height[piece] : shapes.width[piece],
                            place.turned() ? shapes.width[piece] : shapes.height[piece]);
        }
        lastSheets = layout.sheets();
        long length = layout.length(shapes, lastSheets - 1);
        if (lastSheets < bestSheets || lastSheets == bestSheets && length < bestLength) {
            bestSheets = lastSheets;
            bestLength = length;
            best = layout;
        }
        return length;
    }
}
