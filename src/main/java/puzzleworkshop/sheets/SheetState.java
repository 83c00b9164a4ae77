package puzzleworkshop.sheets;

import java.util.EnumSet;
import java.util.Set;

/** Where a sheet stands in its life. */
public enum SheetState {
    /** In the rack, for anyone to take. */
    FREE,
    /** Held for an order. */
    RESERVED,
    /** Cut; its offcuts are sheets of their own. */
    USED,
    /** Thrown away, lost or spoiled. */
    SCRAPPED,
    /** Came from a cut that was undone: it never existed. */
    WITHDRAWN;

    Set<SheetState> next() {
        return switch (this) {
            case FREE -> EnumSet.of(RESERVED, USED, SCRAPPED, WITHDRAWN);
            case RESERVED -> EnumSet.of(FREE, USED);
            case USED -> EnumSet.of(FREE, RESERVED);
            case SCRAPPED -> EnumSet.of(FREE);
            case WITHDRAWN -> EnumSet.noneOf(SheetState.class);
        };
    }

    /** Whether it lies in the rack. */
    public boolean inRack() {
        return this == FREE || this == RESERVED;
    }
}
