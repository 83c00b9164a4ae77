package puzzleworkshop.printing.crosses;

import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;

/** Whether and where crosses are printed, and which an order's print carries. */
@Service
public class PrintedCrosses {

    private final CrossStore store;

    PrintedCrosses(CrossStore store) {
        this.store = store;
    }

    /**
     * What the workshop wants.
     *
     * @param printed whether at all
     */
    public record Setting(boolean printed, Crosses crosses) {

        public Optional<Crosses> wanted() {
            return printed ? Optional.of(crosses) : Optional.empty();
        }
    }

    @Transactional(readOnly = true)
    public Setting setting() {
        return store.setting();
    }

    /**
     * From now on; runs that are proposed already keep theirs.
     *
     * @param overhang the workshop's own
     * @throws Refused when they do not fit it
     */
    @Transactional
    public void keep(Setting setting, Length overhang) {
        if (setting.printed() && !setting.crosses().fit(overhang)) {
            throw new Refused(
                    "printing.crosses.no-room", overhang, setting.crosses().leastOverhang());
        }
        store.keep(setting);
    }

    /** The print of an order as it was made, or else as it is planned; none when it is in no run. */
    @Transactional(readOnly = true)
    public Optional<PrintedSticker> stickerOf(OrderId order) {
        return store.stickerOf(order);
    }
}
