package puzzleworkshop.runtime;

/**
 * Something that others keep answers of or show on open screens has changed, and is safe in the database. Told by
 * {@link AfterCommit}; equal changes in one transaction are told once, so a change is a record of what changed and not of
 * every step.
 */
public interface Change {}
