package puzzleworkshop.artwork.reading;

import java.util.Optional;

/**
 * How a file holds its colours.
 *
 * @param model the channels
 * @param bits of one channel: 1, 2, 4, 8 or 16
 * @param alpha whether it has see-through parts (they become white)
 * @param profile the name of the ICC profile that is embedded, if any
 */
public record ColourFacts(Model model, int bits, boolean alpha, Optional<String> profile) {

    public enum Model {
        GREY,
        RGB,
        CMYK
    }
}
