package puzzleworkshop.orders;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternMaker;
import puzzleworkshop.pattern.PatternSpec;

/**
 * Keeps the patterns drawn last, since the same one is asked for by screens, pictures and papers one after another. A
 * pattern follows from its spec alone, so nothing on the shelf can go stale.
 */
@Component
public class PatternShelf {

    private static final int PLACES = 60;

    private final Map<PatternSpec, CutPattern> drawn = new LinkedHashMap<>(PLACES, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<PatternSpec, CutPattern> eldest) {
            return size() > PLACES;
        }
    };

    /** @throws puzzleworkshop.measure.Refused when there is no such pattern, see {@link PatternMaker#make} */
    public CutPattern pattern(PatternSpec spec) {
        synchronized (drawn) {
            CutPattern known = drawn.get(spec);
            if (known != null) {
                return known;
            }
        }
        CutPattern fresh = PatternMaker.make(spec);
        synchronized (drawn) {
            drawn.put(spec, fresh);
        }
        return fresh;
    }
}
