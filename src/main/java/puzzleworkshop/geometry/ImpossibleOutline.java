package puzzleworkshop.geometry;

import java.util.Optional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** An outline that no board can have, with the spot to mark on the drawing. */
public final class ImpossibleOutline extends Refused {

    private final transient Point spot;

    ImpossibleOutline(Point spot, String key, Object... arguments) {
        super(Sentence.of(key, arguments));
        this.spot = spot;
    }

    /** Where the fault is; empty when there is no single spot, as with too few corners. */
    public Optional<Point> spot() {
        return Optional.ofNullable(spot);
    }
}
