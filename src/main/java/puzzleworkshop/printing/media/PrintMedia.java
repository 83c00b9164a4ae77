package puzzleworkshop.printing.media;

import java.util.List;
import java.util.Optional;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;

/** What can be printed on: sticker sheets and rolls. */
@Service
public class PrintMedia {

    /** Paper is cut to its size within a tolerance: ±2 mm up to 600 mm (ISO 216). */
    private static final double TOLERANCE_MM = 2;

    private final MediumStore store;
    private final Supplies supplies;

    PrintMedia(MediumStore store, Supplies supplies) {
        this.store = store;
        this.supplies = supplies;
    }

    /**
     * Those whose paper stands in Supplies, the usual one first: a sheet by its two sides, a roll by its width. As long as no
     * sticker paper of a known size stands there, nothing is known of what is owned, and all are offered.
     */
    @Transactional(readOnly = true)
    public List<PrintMedium> owned() {
        List<SupplyItem> papers = supplies.items().stream()
                .filter(item ->
                        item.kind() == SupplyKind.STICKER_PAPER && item.width().isPresent())
                .toList();
        List<PrintMedium> all = store.media();
        List<PrintMedium> owned = all.stream()
                .filter(medium -> papers.stream().anyMatch(paper -> isOf(medium, paper)))
                .toList();
        return owned.isEmpty() ? all : owned;
    }

    private static boolean isOf(PrintMedium medium, SupplyItem paper) {
        if (medium.sticker().isPresent()) {
            return medium.sticker().equals(paper.id());
        }
        double width = paper.width().orElseThrow().mm();
        Size size = medium.size();
        if (medium.kind() == PrintMedium.Kind.ROLL) {
            return paper.height().isEmpty() && isNear(width, size.width().mm());
        }
        return paper.height()
                .map(height -> isNear(
                                Math.min(width, height.mm()), size.shorterSide().mm())
                        && isNear(
                                Math.max(width, height.mm()), size.longerSide().mm()))
                .orElse(false);
    }

    private static boolean isNear(double one, double other) {
        return Math.abs(one - other) <= TOLERANCE_MM;
    }

    /** All in use, the usual one first. */
    public List<PrintMedium> all() {
        return store.media();
    }

    /** Also one that is no longer offered. */
    public Optional<PrintMedium> find(long id) {
        return store.find(id);
    }

    /** Keeps a new medium or changes a known one; runs made before stay as they were. */
    @Transactional
    public PrintMedium keep(PrintMedium medium) {
        if (medium.name().isBlank()) {
            throw new Refused("printing.medium.name-missing");
        }
        double shorter = medium.size().shorterSide().mm();
        if (medium.margin().mm() < 0
                || medium.gap().mm() < 3
                || 2 * medium.margin().mm() + 20 >= shorter
                || shorter < 50) {
            throw new Refused("printing.medium.measures");
        }
        try {
            if (medium.usual()) {
                store.noLongerUsual();
            }
            medium.id().ifPresent(id -> store.change(id, medium));
            long id = medium.id().orElseGet(() -> store.add(medium));
            return store.find(id).orElseThrow();
        } catch (DuplicateKeyException twice) {
            throw new Refused("printing.medium.name-twice", medium.name());
        }
    }

    /** It is no longer offered. */
    @Transactional
    public void retire(long id) {
        store.retire(id);
    }
}
