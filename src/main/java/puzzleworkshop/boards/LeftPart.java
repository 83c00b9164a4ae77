package puzzleworkshop.boards;

import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Sentence;

/**
 * A part of what is left when the blank is cut from a held sheet.
 *
 * @param keep proposed; who cuts decides
 * @param why in words
 */
public record LeftPart(Remainder.Part part, boolean keep, Sentence why) {}
