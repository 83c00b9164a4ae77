package puzzleworkshop.cutting.jobs;

import java.util.EnumSet;
import java.util.Set;

/**
 * What is looked at before every cut. A diode cutter without a housing is a class 4 laser (IEC 60825-1; from memory of
 * the standard): its beam and its reflections hurt eyes and skin and set fire. These are the trade's usual cautions;
 * the machine maker's manual, local rules and qualified people come first.
 */
public enum CheckItem {
    FRAME_TRACED,
    BOARD_FLAT_AND_HELD,
    MASKED,
    GAP_SET,
    AIR_ON,
    EXTRACTION_ON,
    EYEWEAR,
    EXTINGUISHER,
    NEVER_ALONE;

    /** Answered for one gap and one setting of the air; dialling others in asks for them again. */
    static final Set<CheckItem> OF_WHAT_IS_DIALLED = EnumSet.of(GAP_SET, AIR_ON);

    /** Whether a written reason will do instead. A wrong position must never cut beside the board: the frame is always traced. */
    public boolean maySkip() {
        return this != FRAME_TRACED;
    }

    /** The key of what is to be true. */
    public String textKey() {
        return "cutting.check." + name();
    }

    /** The key of why. */
    public String whyKey() {
        return textKey() + ".why";
    }
}
