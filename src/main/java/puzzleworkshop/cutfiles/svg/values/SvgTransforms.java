package puzzleworkshop.cutfiles.svg.values;

import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Transforms as attributes and as CSS write them (CSS Transforms level 1; the attribute's grammar is section 7 there).
 *
 * @param units for lengths
 * @param fontPx size of the font
 */
public record SvgTransforms(SvgUnits units, double fontPx) {

    private record Amount(double value, String unit) {}

    /**
     * @param text list of functions, or 'none'
     * @param origin transform-origin, empty for the usual one
     * @param box what shares of it and the origin refer to
     * @throws Unreadable for anything else, and for turns out of the plane
     */
    public AffineTransform of(String text, String origin, Rectangle2D box) {
        AffineTransform all = new AffineTransform();
        if (text.strip().equals("none") || text.isBlank()) {
            return all;
        }
        double[] about = origin.isEmpty() ? new double[2] : origin(origin, box);
        all.translate(about[0], about[1]);
        Scanner in = new Scanner(text);
        in.skipComma();
        while (!in.atEnd()) {
            String function = in.word().toLowerCase(Locale.ROOT);
            in.skipBlanks();
            if (!in.skip('(')) {
                throw new Unreadable(text);
            }
            all.concatenate(function(function, amounts(in), box));
            in.skipComma();
        }
        all.translate(-about[0], -about[1]);
        return all;
    }

    private static List<Amount> amounts(Scanner in) {
        List<Amount> amounts = new ArrayList<>();
        in.skipBlanks();
        while (!in.skip(')')) {
            amounts.add(new Amount(in.number(), in.word().toLowerCase(Locale.ROOT)));
            if (amounts.size() > 6) {
                throw new Unreadable("too many numbers");
            }
            in.skipComma();
        }
        return amounts;
    }

    private AffineTransform function(String function, List<Amount> a, Rectangle2D box) {
        int count = a.size();
        String signature = function + count;
        return switch (signature) {
            case "matrix6" ->
                new AffineTransform(
                        plain(a.get(0)),
                        plain(a.get(1)),
                        plain(a.get(2)),
                        plain(a.get(3)),
                        plain(a.get(4)),
                        plain(a.get(5)));
            case "translate1", "translatex1" ->
                AffineTransform.getTranslateInstance(length(a.get(0), box.getWidth()), 0);
            case "translatey1" -> AffineTransform.getTranslateInstance(0, length(a.get(0), box.getHeight()));
            case "translate2" ->
                AffineTransform.getTranslateInstance(
                        length(a.get(0), box.getWidth()), length(a.get(1), box.getHeight()));
            case "scale1" -> AffineTransform.getScaleInstance(share(a.get(0)), share(a.get(0)));
            case "scale2" -> AffineTransform.getScaleInstance(share(a.get(0)), share(a.get(1)));
            case "scalex1" -> AffineTransform.getScaleInstance(share(a.get(0)), 1);
            case "scaley1" -> AffineTransform.getScaleInstance(1, share(a.get(0)));
            case "rotate1", "rotatez1" -> AffineTransform.getRotateInstance(angle(a.get(0)));
            case "rotate3" ->
                AffineTransform.getRotateInstance(
                        angle(a.get(0)), length(a.get(1), box.getWidth()), length(a.get(2), box.getHeight()));
            case "skewx1", "skew1" -> AffineTransform.getShearInstance(Math.tan(angle(a.get(0))), 0);
            case "skewy1" -> AffineTransform.getShearInstance(0, Math.tan(angle(a.get(0))));
            case "skew2" -> AffineTransform.getShearInstance(Math.tan(angle(a.get(0))), Math.tan(angle(a.get(1))));
            default -> throw new Unreadable(signature);
        };
    }

    private static double plain(Amount amount) {
        if (!amount.unit().isEmpty()) {
            throw new Unreadable(amount.unit());
        }
        return amount.value();
    }

    private static double share(Amount amount) {
        return amount.unit().equals("%") ? amount.value() / 100 : plain(amount);
    }

    private static double angle(Amount amount) {
        return switch (amount.unit()) {
            case "", "deg" -> Math.toRadians(amount.value());
            case "rad" -> amount.value();
            case "grad" -> amount.value() * Math.PI / 200;
            case "turn" -> amount.value() * 2 * Math.PI;
            default -> throw new Unreadable(amount.unit());
        };
    }

    private double length(Amount amount, double whole) {
        return amount.unit().isEmpty() ? amount.value() : units.px(amount.value() + amount.unit(), whole, fontPx);
    }

    private double[] origin(String text, Rectangle2D box) {
        String[] words = text.strip().toLowerCase(Locale.ROOT).split("[\\s,]+");
        String across = words[0];
        String down = words.length > 1 ? words[1] : "center";
        if (isVertical(across) || isHorizontal(down)) {
            String swapped = across;
            across = words.length > 1 ? down : "center";
            down = swapped;
        }
        return new double[] {box.getX() + place(across, box.getWidth()), box.getY() + place(down, box.getHeight())};
    }

    private static boolean isVertical(String word) {
        return word.equals("top") || word.equals("bottom");
    }

    private static boolean isHorizontal(String word) {
        return word.equals("left") || word.equals("right");
    }

    private double place(String word, double whole) {
        return switch (word) {
            case "left", "top" -> 0;
            case "center" -> whole / 2;
            case "right", "bottom" -> whole;
            default -> units.px(word, whole, fontPx);
        };
    }
}
