package puzzleworkshop.cutting.trials;

/** Published within the transaction that plans a trial or closes one: the day's work has changed. */
public record TrialsPlanned() {}
