package puzzleworkshop.machines;

import puzzleworkshop.measure.Speed;

/** In what a machine's own program asks for the speed; a factor of 60 between two of them spoils a board. */
public enum FeedUnit {
    MM_PER_MINUTE("mm/min", 60),
    MM_PER_SECOND("mm/s", 1),
    INCH_PER_MINUTE("in/min", 60 / 25.4);

    private final String words;
    private final double factor;

    FeedUnit(String words, double factor) {
        this.words = words;
        this.factor = factor;
    }

    /** {@code mm/min} */
    public String words() {
        return words;
    }

    public double of(Speed speed) {
        return speed.mmPerSecond() * factor;
    }
}
