package puzzleworkshop.sheets.find;

import java.util.Optional;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Sentence;

/**
 * Whether a part of what is left of a sheet is worth its room in the rack, and what it is best sawn to.
 *
 * @param part with its rectangles in the order in which they are best sawn
 * @param why it is kept or not
 * @param sawing what it is sawn to when it is, and why so; empty when there is nothing to saw
 */
public record Keeping(Remainder.Part part, boolean worthKeeping, Sentence why, Optional<Sentence> sawing) {}
