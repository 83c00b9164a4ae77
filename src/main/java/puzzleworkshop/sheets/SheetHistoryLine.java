package puzzleworkshop.sheets;

import java.time.Instant;
import puzzleworkshop.measure.Sentence;

/** One thing that happened to a sheet. */
public record SheetHistoryLine(Instant at, String who, Sentence what) {}
