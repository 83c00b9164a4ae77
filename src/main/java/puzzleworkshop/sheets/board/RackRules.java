package puzzleworkshop.sheets.board;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;

/**
 * How the rack counts.
 *
 * @param largest board that may be entered
 * @param kerf width of the cut that frees a blank, lost around it
 * @param mostBow the bow from which a board is not offered by default
 * @param thicknessSlack how far the thickness may be off the wanted one
 * @param offcutCost what an offcut carries of its parent's cost
 * @param sawnFirst whether boards beyond every machine's bed may be entered, since they are sawn to size before the laser
 * @param share of its cost by area that an offcut carries under {@link OffcutCost#SHARE}
 */
public record RackRules(
        Size largest,
        Length kerf,
        Length mostBow,
        Length thicknessSlack,
        OffcutCost offcutCost,
        Percent share,
        boolean sawnFirst) {}
