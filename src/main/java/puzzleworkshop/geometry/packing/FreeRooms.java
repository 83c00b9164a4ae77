package puzzleworkshop.geometry.packing;

import java.util.ArrayList;
import java.util.List;

/**
 * The free room of one sheet as the list of all largest empty rectangles, which may overlap. Other than a skyline it
 * copes with pieces that stand anywhere.
 *
 * <p>Method: maximal rectangles, after Jylänki, A thousand ways to pack the bin (2010), with the lowest-top and the
 * best-short-side rules.
 */
final class FreeRooms {

    /** An empty rectangle. */
    record Room(int x, int y, int right, int top) {
        boolean covers(Room other) {
            return x <= other.x && y <= other.y && right >= other.right && top >= other.top;
        }
    }

    /** A place found for a piece; lower scores are better. */
    record Place(int x, int y, boolean turned, long score) {}

    private List<Room> rooms = new ArrayList<>();

    FreeRooms(int width, int height) {
        rooms.add(new Room(0, 0, width, height));
    }

    FreeRooms(FreeRooms other) {
        rooms = new ArrayList<>(other.rooms);
    }

    int size() {
        return rooms.size();
    }

    Place best(ItemShapes shapes, int piece, boolean lowest) {
        Place best = null;
        for (Room room : rooms) {
            for (int turn = 0; turn <= (shapes.turns(piece) ? 1 : 0); turn++) {
                int w = turn == 0 ? shapes.width[piece] : shapes.height[piece];
                int h = turn == 0 ? shapes.height[piece] : shapes.width[piece];
                int spareWidth = room.right - room.x - w;
                int spareHeight = room.top - room.y - h;
                if (spareWidth < 0 || spareHeight < 0) {
                    continue;
                }
                long score = lowest ? ((long) (room.y + h) << 31) + room.x : Math.min(spareWidth, spareHeight);
                if (best == null || score < best.score) {
                    best = new Place(room.x, room.y, turn == 1, score);
                }
            }
        }
        return best;
    }

    void take(int x, int y, int w, int h) {
        List<Room> next = new ArrayList<>();
        for (Room room : rooms) {
            if (x >= room.right || x + w <= room.x || y >= room.top || y + h <= room.y) {
                next.add(room);
                continue;
            }
            if (x > room.x) {
                next.add(new Room(room.x, room.y, x, room.top));
            }
            if (x + w < room.right) {
                next.add(new Room(x + w, room.y, room.right, room.top));
            }
            if (y > room.y) {
                next.add(new Room(room.x, room.y, room.right, y));
            }
            if (y + h < room.top) {
                next.add(new Room(room.x, y + h, room.right, room.top));
            }
        }
        List<Room> kept = new ArrayList<>();
        for (int i = 0; i < next.size(); i++) {
            boolean covered = false;
            for (int j = 0; j < next.size() && !covered; j++) {
                covered = i != j
                        && next.get(j).covers(next.get(i))
                        && (j < i || !next.get(i).covers(next.get(j)));
            }
            if (!covered) {
                kept.add(next.get(i));
            }
        }
        rooms = kept;
    }
}
