package puzzleworkshop.cutting.jobs;

/**
 * Published within the transaction that starts a cut or ends it.
 *
 * @param job as it stands now
 * @param by who did it
 */
public record CutMoved(CutJob job, String by) {}
