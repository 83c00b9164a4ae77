package puzzleworkshop.pattern;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * Patterns made lately, kept at hand: lists and cards draw the same orders again and again, and the same spec always
 * gives the same pattern.
 */
@Component
public class PatternCache {

    /** About 100 kB each for an ordinary puzzle. */
    private static final int KEPT = 200;

    private static final int MOST_PIECES_KEPT = 40_000;

    private final Map<PatternSpec, CutPattern> kept = new LinkedHashMap<>(64, 0.75f, true);
    private int pieces;

    /**
     * The pattern of a spec, made now or taken from the shelf.
     *
     * @throws puzzleworkshop.measure.Refused as {@link PatternMaker#make}
     */
    public CutPattern of(PatternSpec spec) {
        synchronized (kept) {
            CutPattern known = kept.get(spec);
            if (known != null) {
                return known;
            }
        }
        CutPattern made = PatternMaker.make(spec); // outside the lock: others need not wait for it
        synchronized (kept) {
            if (kept.put(spec, made) == null) {
                pieces += made.pieces().size();
            }
            var oldest = kept.entrySet().iterator();
            while ((kept.size() > KEPT || pieces > MOST_PIECES_KEPT) && kept.size() > 1) {
                pieces -= oldest.next().getValue().pieces().size();
                oldest.remove();
            }
        }
        return made;
    }
}
