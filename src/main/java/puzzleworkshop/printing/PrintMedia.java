package puzzleworkshop.printing;

import java.util.List;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;

/** What can be printed on: sticker sheets and rolls. */
@Service
public class PrintMedia {

    private final MediumStore store;

    PrintMedia(MediumStore store) {
        this.store = store;
    }

    /** All in use, the usual one first. */
    public List<PrintMedium> all() {
        return store.media();
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
