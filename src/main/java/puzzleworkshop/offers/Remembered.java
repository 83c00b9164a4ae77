package puzzleworkshop.offers;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What was last worked out on one page, part by part, with everything each part was worked out from: a part whose grounds are
 * the same is not worked out again. The grounds hold a stamp of what others may change meanwhile, so nothing stale is told.
 */
public final class Remembered {

    /** A part of an offer that is worth remembering. */
    enum Part {
        SMALL_PARTS,
        BOARDS,
        OTHER_SHEETS
    }

    private record Answer(Object grounds, Object answer) {}

    private final Map<Part, Answer> last = new ConcurrentHashMap<>();

    @SuppressWarnings("unchecked")
    <T> T of(Part part, Object grounds, Supplier<T> work) {
        Answer known = last.get(part);
        if (known != null && known.grounds().equals(grounds)) {
            return (T) known.answer();
        }
        T answer = work.get();
        last.put(part, new Answer(grounds, answer));
        return answer;
    }
}
