package puzzleworkshop.sheets.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.ImpossibleOutline;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;

/**
 * An outline while it is drawn corner by corner: the outer ring first, then bad areas, each closed by its first corner.
 * Every step can be taken back.
 */
class DrawnOutline {

    private final List<List<Point>> rings = new ArrayList<>(List.of(new ArrayList<>()));
    private boolean closed;

    /** Adds a corner; the first corner again closes the ring. */
    void corner(Point spot) {
        if (closed) {
            rings.add(new ArrayList<>());
            closed = false;
        }
        List<Point> ring = rings.getLast();
        if (ring.size() >= 3 && ring.getFirst().equals(spot)) {
            closed = true;
        } else if (ring.isEmpty() || !ring.getLast().equals(spot)) {
            ring.add(spot);
        }
    }

    void close() {
        closed = rings.getLast().size() >= 3;
    }

    void undo() {
        if (closed) {
            closed = false;
        } else if (!rings.getLast().isEmpty()) {
            rings.getLast().removeLast();
        }
        if (rings.getLast().isEmpty() && rings.size() > 1) {
            rings.removeLast();
            closed = true;
        }
    }

    void clear() {
        rings.clear();
        rings.add(new ArrayList<>());
        closed = false;
    }

    /** The corner the next one is measured from. */
    Optional<Point> last() {
        return closed || rings.getLast().isEmpty()
                ? Optional.empty()
                : Optional.of(rings.getLast().getLast());
    }

    List<List<Point>> rings() {
        return rings;
    }

    boolean isOpen(int ring) {
        return ring == rings.size() - 1 && !closed;
    }

    boolean isClosed() {
        return closed;
    }

    boolean isEmpty() {
        return rings.getFirst().isEmpty();
    }

    /** @throws ImpossibleOutline with the spot */
    Outline outline() {
        return Outline.of(rings.getFirst(), rings.subList(1, rings.size()));
    }

    void start(Outline outline) {
        clear();
        rings.getFirst().addAll(outline.outer());
        outline.badAreas().forEach(bad -> rings.add(new ArrayList<>(bad)));
        closed = true;
    }
}
