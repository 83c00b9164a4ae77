package puzzleworkshop.cutting.trials;

import puzzleworkshop.runtime.Change;

/** A trial was planned or closed: the day's work has changed. */
public record TrialsPlanned() implements Change {}
