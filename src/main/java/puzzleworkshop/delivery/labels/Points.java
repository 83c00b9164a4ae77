package puzzleworkshop.delivery.labels;

import puzzleworkshop.measure.Length;

/** Millimetres on paper as a PDF counts: 72 points to the inch (ISO 32000-1, 8.3.2.3). */
final class Points {

    private static final double PER_INCH = 72;

    private Points() {}

    static float of(double mm) {
        return (float) (mm / Length.MM_PER_INCH * PER_INCH);
    }
}
