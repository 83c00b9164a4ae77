package puzzleworkshop.sheets.find;

import puzzleworkshop.measure.Sentence;

/** Whether a part of what is left of a sheet is worth its room in the rack, and why. */
public record Keeping(boolean worthKeeping, Sentence why) {}
