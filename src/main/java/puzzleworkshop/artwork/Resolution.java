package puzzleworkshop.artwork;

import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * How sharp a crop of a picture prints at a finished size: pixels inside the frame over inches (25.4 mm exactly), the
 * worse of the two directions. The overhang is printed at the same scale, so it changes nothing about the pixels per
 * inch; what it needs is more picture around the frame, and {@code overhangCovered} says whether there is any.
 *
 * @param verdict by {@code ppi} rounded to a whole number, so that 2480 pixels on 210 mm count as 300
 * @param ppi effective pixels per inch of the finished puzzle
 * @param sharpUpTo the largest finished size of the same shape that would be sharp, in whole millimetres downwards
 * @param overhangCovered whether the overhang shows real picture (or border) all round, with nothing mirrored or extended
 */
public record Resolution(Verdict verdict, double ppi, Size sharpUpTo, boolean overhangCovered) {

    public enum Verdict {
        SHARP,
        GOOD,
        SOFT,
        REFUSE;

        /** The key of its word in the texts. */
        public String textKey() {
            return "artwork.verdict." + name();
        }
    }

    /** Judges a crop; sizes as the finished puzzle is looked at. */
    public static Resolution judge(Picture picture, Crop crop, Size finished, Length overhang, PrintLimits limits) {
        double across = crop.width() * crop.turnedWidth(picture);
        double down = crop.height() * crop.turnedHeight(picture);
        double ppi = Math.min(
                across / finished.width().toInches(), down / finished.height().toInches());
        // The verdict rounds to whole pixels per inch, so half of one less is still sharp.
        double scale = ppi / (limits.sharp() - 0.5);
        Size sharp = Size.mm(
                wholeMillimetres(finished.width().mm() * scale),
                wholeMillimetres(finished.height().mm() * scale));
        return new Resolution(verdict(Math.round(ppi), limits), ppi, sharp, covered(crop, finished, overhang));
    }

    private static Verdict verdict(long ppi, PrintLimits limits) {
        if (ppi >= limits.sharp()) {
            return Verdict.SHARP;
        }
        if (ppi >= limits.good()) {
            return Verdict.GOOD;
        }
        return ppi >= limits.soft() ? Verdict.SOFT : Verdict.REFUSE;
    }

    private static boolean covered(Crop crop, Size finished, Length overhang) {
        if (crop.fit() == Crop.Fit.FIT) {
            return true;
        }
        double across = overhang.mm() / finished.width().mm() * crop.width();
        double down = overhang.mm() / finished.height().mm() * crop.height();
        double slip = 1e-9;
        return crop.left() >= across - slip
                && crop.top() >= down - slip
                && crop.left() + crop.width() <= 1 - across + slip
                && crop.top() + crop.height() <= 1 - down + slip;
    }

    /** A size of less than a millimetre is said as one: nothing smaller is ever asked for. */
    private static double wholeMillimetres(double mm) {
        return Math.max(1, Math.floor(mm + 1e-6));
    }
}
