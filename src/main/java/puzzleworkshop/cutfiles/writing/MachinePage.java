package puzzleworkshop.cutfiles.writing;

import java.util.Optional;
import puzzleworkshop.measure.Size;

/**
 * What a cut file for one machine says beside its lines: the setting stands where the format has a place for words. For one
 * place on the machine its page is the bed as seen from the front; else it is the frame of the lines.
 *
 * @param bed the page; x from its left edge, y from its back edge (SVG), or from its front edge upwards (DXF, PDF)
 * @param setting in words and in the machine's own unit, for titles
 * @param layer the same as short as a layer's name must be: at most {@value #LONGEST_LAYER} of A to Z, 0 to 9, _ and -
 */
public record MachinePage(Optional<Size> bed, String setting, String layer) {

    /** Names of DXF release 12 have 31 letters (AutoCAD DXF reference, AC1009); INNER_LINES_ takes twelve. */
    public static final int LONGEST_LAYER = 19;

    public MachinePage {
        if (!layer.matches("[A-Z0-9_-]{1," + LONGEST_LAYER + "}")) {
            throw new IllegalArgumentException("Not the name of a layer: " + layer);
        }
    }

    /** For lines that are laid by eye, wherever they come to lie. */
    public static MachinePage anywhere(String setting, String layer) {
        return new MachinePage(Optional.empty(), setting, layer);
    }
}
