package puzzleworkshop.orders.history;

import java.time.Instant;
import puzzleworkshop.measure.Sentence;

/** One line of an order's history: what happened, when, by whom. Lines are added, never changed. */
public record HistoryLine(Instant at, String who, Sentence what) {}
