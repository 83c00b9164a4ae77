package puzzleworkshop.cutfiles.svg.values;

import java.util.Locale;

/**
 * Lengths of SVG in px. Absolute units are those of CSS (Values and Units level 3, 5.2: 1in = 2.54cm = 96px, 1pt = 1/72
 * in, 1pc = 12 pt, 1Q = 1/40 cm); a file drawn at another density of pixels is read with that.
 */
public final class SvgUnits {

    public static final double USUAL_FONT_PX = 16;

    private final double pxPerInch;
    private double rootFontPx = USUAL_FONT_PX;

    /** @param pxPerInch 96 by the standard; older drawing programs used 90 or 72 */
    public SvgUnits(double pxPerInch) {
        this.pxPerInch = pxPerInch;
    }

    public double pxPerInch() {
        return pxPerInch;
    }

    /** What 'rem' means from here on: the size of the font at the root. */
    public void rootFont(double px) {
        rootFontPx = px;
    }

    public double mmPerPx() {
        return 25.4 / pxPerInch;
    }

    /**
     * @param text number with or without a unit
     * @param whole what 100 % would be, px
     * @param fontPx size of the font
     * @throws Unreadable for calculations and for units that hang on a window
     */
    public double px(String text, double whole, double fontPx) {
        Scanner in = new Scanner(text.strip());
        double value = in.number();
        in.skipBlanks();
        String unit = in.word().toLowerCase(Locale.ROOT);
        if (!in.atEnd()) {
            throw new Unreadable(text);
        }
        return switch (unit) {
            case "", "px" -> value;
            case "mm" -> value / 25.4 * pxPerInch;
            case "cm" -> value / 2.54 * pxPerInch;
            case "q" -> value / 101.6 * pxPerInch;
            case "in" -> value * pxPerInch;
            case "pt" -> value / 72 * pxPerInch;
            case "pc" -> value / 6 * pxPerInch;
            case "em" -> value * fontPx;
            case "ex", "ch" -> value * fontPx / 2; // where nothing is known of the face, CSS Values 5.1.1
            case "rem" -> value * rootFontPx;
            case "%" -> shareOf(value, whole);
            default -> throw new Unreadable(text);
        };
    }

    private static double shareOf(double percent, double whole) {
        if (Double.isNaN(whole)) {
            throw new Unreadable("a share of an unknown size");
        }
        return percent / 100 * whole;
    }

    /** Whether a size is stated in a unit that can be measured with a rule. */
    public static boolean isReal(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        for (String unit : new String[] {"mm", "cm", "in", "pt", "pc", "q"}) {
            if (plain.endsWith(unit)) {
                return true;
            }
        }
        return false;
    }

    /** A number, or one of a hundred. */
    public static double share(String text) {
        Scanner in = new Scanner(text.strip());
        double value = in.number();
        if (in.skip('%')) {
            value /= 100;
        }
        if (!in.atEnd()) {
            throw new Unreadable(text);
        }
        return value;
    }
}
