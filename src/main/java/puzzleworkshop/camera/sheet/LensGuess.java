package puzzleworkshop.camera.sheet;

import java.util.List;

/**
 * What is known of a lens before its photo is looked at. A phone has a main camera that sees about 65 to 75 degrees across, many
 * have a wide one of about 105 and one that brings things nearer (common practice: 24 to 28, 13 to 16, 48 to 77 mm in terms of 35 mm
 * film); nearly all photos are taken with the first.
 *
 * @param focal length by the longer side of the photo
 * @param scatter of its logarithm
 * @param seldom twice the negative logarithm of how often such a lens is used
 */
record LensGuess(double focal, double scatter, double seldom) {

    private static final List<LensGuess> PHONES =
            List.of(new LensGuess(0.78, 0.2, 0.2), new LensGuess(0.41, 0.12, 6), new LensGuess(1.7, 0.25, 6));

    /** What a camera says of its lens is rounded to a millimetre, and the photo may be cut a little by its stabiliser. */
    private static final double TOLD_SCATTER = 0.06;

    private static final double SHORTEST_TOLD = 0.3;
    private static final double LONGEST_TOLD = 4;

    /** @param told focal length over the longer side, as the camera says it; not a number where it says nothing */
    static List<LensGuess> of(double told) {
        return told > SHORTEST_TOLD && told < LONGEST_TOLD ? List.of(new LensGuess(told, TOLD_SCATTER, 0)) : PHONES;
    }
}
