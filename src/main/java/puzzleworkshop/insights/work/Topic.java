package puzzleworkshop.insights.work;

/** What a table of figures is about. */
public enum Topic {
    /** By ISO week: promised against handed over. */
    ON_TIME(true),
    /** By stage: from when it could begin until it was done. */
    LEAD_TIME(false),
    /** By stage: by the clock; beside it the laser and what was worked in vain. */
    HOURS(false),
    /** By stage and cause. */
    REJECTS(false),
    /** What complaints have in common: stage, board, setting. */
    COMPLAINTS(false),
    /** By month: wood of blanks from boards and from offcuts. */
    OFFCUTS(true),
    /** By month: bought, saved and wasted. */
    WOOD(true),
    /** What lay in rack and shelf at the end of each month. */
    STOCK(true),
    CUSTOMERS(false),
    /** The same months of several years. */
    MONTHS(true);

    private final boolean time;

    Topic(boolean time) {
        this.time = time;
    }

    /** Whether its rows follow each other in time. */
    public boolean isOverTime() {
        return time;
    }

    public String textKey() {
        return "insights.work." + name();
    }
}
