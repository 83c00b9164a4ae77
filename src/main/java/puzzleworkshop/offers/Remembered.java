package puzzleworkshop.offers;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.pricing.KeptPrice;

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

    /** What a wish costs, whole, whoever asked: it is kept with the order, and not told to everybody. */
    private record Priced(Wish wish, KeptPrice price) {}

    private final Optional<OrderId> changed;
    private volatile Optional<Priced> priced = Optional.empty();
    private final Map<Part, Answer> last = new ConcurrentHashMap<>();

    /** Of a page on which a new order is made. */
    public Remembered() {
        this.changed = Optional.empty();
    }

    /** Of a page on which this order is changed. */
    public Remembered(OrderId changed) {
        this.changed = Optional.of(changed);
    }

    Optional<OrderId> changed() {
        return changed;
    }

    void priced(Wish wish, Optional<KeptPrice> price) {
        priced = price.map(whole -> new Priced(wish, whole));
    }

    /** The whole price of this wish, when it was the last one worked out. */
    Optional<KeptPrice> priceOf(Wish wish) {
        return priced.filter(one -> one.wish().equals(wish)).map(Priced::price);
    }

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
