package puzzleworkshop.pattern;

import java.util.Optional;
import puzzleworkshop.measure.Size;

/** The bed that a cut file is usually meant for. The room that knows machines says so. */
@FunctionalInterface
public interface UsualBed {

    /** Of the machine used by default; empty while none is entered. */
    Optional<Size> bed();
}
