package puzzleworkshop.sheets;

import java.util.List;
import puzzleworkshop.measure.Size;

/** What the workshop's machines reach. The room that knows machines says so; none: the rack's own limit holds. */
public interface MachineBeds {

    /** The bed of every machine in use. */
    List<Size> beds();
}
