package puzzleworkshop.planning.schedule;

/** What the plan says about one order's promise. */
public enum DueVerdict {
    ON_TIME,
    /** Still on time, but with less than the buffer left. */
    TIGHT,
    LATE,
    /** Cannot go on: waits for the customer, for money or for material. */
    WAITING
}
