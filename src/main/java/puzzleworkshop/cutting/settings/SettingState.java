package puzzleworkshop.cutting.settings;

/** How far a setting can be trusted; see {@link TrialEvidence} for the rules. */
public enum SettingState {
    /** No trial yet. */
    UNTRIED,
    /** Some trials, not enough good ones in a row. */
    TRYING,
    /** Enough good trials as it stands. */
    PROVEN,
    /** Was good, but failed lately: the wood, the lens or the gap has changed. */
    DOUBTFUL;

    /** The key of its name in the texts. */
    public String textKey() {
        return "cutting.state." + name();
    }
}
