package puzzleworkshop.workshop.ui;

import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;

/** What lies in the overhang and needs its room; rooms above tell what is lost in a smaller one. Beans of this type. */
public interface OverhangUse {

    /** What no longer fits into an overhang; none when all does. */
    Optional<Sentence> lostIn(Length overhang);
}
