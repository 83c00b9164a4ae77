package puzzleworkshop.artwork;

/**
 * What was measured on the picture itself. Both are hints: a person who looks at the picture knows better.
 *
 * @param detail share (0 to 1] of the picture's pixels across that carry real detail: 1 where the finest pixels differ as
 *     those of a focused picture do, 0.25 where the picture could be made four times smaller without losing anything
 * @param darkShare share of pixels so dark that print closes them up (common practice: below 10 % lightness)
 * @param medianLight lightness L* (CIE 1976, 0 to 100) that half of the pixels stay below
 * @param contrast difference of L* between the 95th and the 5th hundredth of the pixels
 */
public record PictureLook(double detail, double darkShare, double medianLight, double contrast) {

    /** Below these a print tends to disappoint; common practice, to be judged by eye. */
    public boolean isDark() {
        return medianLight < 25 || darkShare > 0.6;
    }

    public boolean isFlat() {
        return contrast < 30;
    }
}
