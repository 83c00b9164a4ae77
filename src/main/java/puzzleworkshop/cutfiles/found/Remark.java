package puzzleworkshop.cutfiles.found;

import puzzleworkshop.measure.Sentence;

/**
 * What a reader has to say about a file.
 *
 * @param kind how much it matters
 * @param sentence in words
 */
public record Remark(Kind kind, Sentence sentence) {

    /** How much a remark matters, the most first. */
    public enum Kind {
        /** Something was not interpreted: the lines, the size or the length may be others. */
        UNSURE,
        /** The file leaves something open (its unit, say) and the usual answer was taken. */
        ASSUMED,
        /** Left out with good reason: a fill, a hidden layer. */
        NOTE
    }
}
