package puzzleworkshop.artwork;

/**
 * From which resolution a print is how good, in pixels per inch of the finished puzzle.
 *
 * @param sharp from here on sharp
 * @param good from here on good
 * @param soft from here on soft, below refused unless the customer accepts it in writing
 */
public record PrintLimits(double sharp, double good, double soft) {

    /** Common practice for a picture looked at from arm's length. */
    public static final PrintLimits USUAL = new PrintLimits(300, 200, 150);

    public PrintLimits {
        if (!(soft > 0 && good >= soft && sharp >= good)) {
            throw new IllegalArgumentException("Limits rise from soft to sharp: " + soft + ", " + good + ", " + sharp);
        }
    }
}
