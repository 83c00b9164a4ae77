package puzzleworkshop.boards;

import java.util.Optional;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Sentence;

/**
 * A part of what is left when the blank is cut from a held sheet.
 *
 * @param keep proposed; who cuts decides
 * @param why in words
 * @param sawing what it is best sawn to, and why so; empty when there is nothing to saw
 */
public record LeftPart(Remainder.Part part, boolean keep, Sentence why, Optional<Sentence> sawing) {}
