package puzzleworkshop.printing;

import java.util.Map;
import puzzleworkshop.measure.Sentence;

/** Orders that had better not be printed yet, such as one whose payment comes first. Kept by the plan; printing asks. */
public interface PrintHolds {

    /** Why, as words that follow the order's number. */
    Map<Long, Sentence> heldBack();
}
