package puzzleworkshop.printing;

import java.time.Instant;
import puzzleworkshop.measure.Sentence;

/** One line of a run's history. */
public record RunLine(Instant at, String who, Sentence what) {}
