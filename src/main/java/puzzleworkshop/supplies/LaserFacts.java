package puzzleworkshop.supplies;

import java.util.Optional;
import puzzleworkshop.measure.Sentence;

/**
 * What decides whether a sticker, film or tape may meet the laser. PVC gives off hydrogen chloride when heated (known
 * from safety data sheets); wet glue chars and stops a diode beam (common practice). What is not known counts as
 * forbidden until someone has read the data sheet.
 */
public record LaserFacts(Pvc pvc, Adhesive adhesive) {

    /** Whether it holds polyvinyl chloride. */
    public enum Pvc {
        FREE,
        PVC,
        UNKNOWN;

        public String textKey() {
            return "supplies.pvc." + name();
        }
    }

    /** How it holds on: none, dry (self-adhesive film), or wet glue. */
    public enum Adhesive {
        NONE,
        DRY,
        WET,
        UNKNOWN;

        public String textKey() {
            return "supplies.adhesive." + name();
        }
    }

    /** Why something with these facts must not be cut; empty when it may. */
    Optional<Sentence> forbidden(String name) {
        if (pvc != Pvc.FREE) {
            return Optional.of(Sentence.of("supplies.forbidden.pvc-" + pvc.name(), name));
        }
        if (adhesive == Adhesive.WET || adhesive == Adhesive.UNKNOWN) {
            return Optional.of(Sentence.of("supplies.forbidden.adhesive-" + adhesive.name(), name));
        }
        return Optional.empty();
    }
}
