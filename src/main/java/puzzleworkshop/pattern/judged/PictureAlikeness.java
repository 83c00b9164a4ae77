package puzzleworkshop.pattern.judged;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/**
 * How alike neighbouring pieces look in the picture, by colour and texture: 0 where each differs clearly from its
 * neighbours, 1 where all look the same.
 *
 * <p>Of each piece the mean colour in CIELAB (IEC 61966-2-1 for the way from sRGB, CIE 15 for the way to L*a*b*, white D65)
 * and the scatter of its lightness (its texture). Two neighbours differ by the length of the difference of the four numbers
 * (for colour alone that is ΔE*ab of 1976); they count as alike by exp(−difference / {@value #FADES}), so that a hardly seen
 * difference of 2 counts as nearly the same and one of 30 as none. The mean over all neighbours is told.
 */
public final class PictureAlikeness {

    /** A picture of many clearly differing colours. */
    public static final double CLEAR = 0.3;
    /** What is taken while there is no picture. */
    public static final double USUAL = 0.41;

    private static final double FADES = 12;
    private static final int NEIGHBOURS = 4;

    private record Look(double l, double a, double b, double scatter) {
        double differenceTo(Look other) {
            return Math.sqrt((l - other.l) * (l - other.l)
                    + (a - other.a) * (a - other.a)
                    + (b - other.b) * (b - other.b)
                    + (scatter - other.scatter) * (scatter - other.scatter));
        }
    }

    private PictureAlikeness() {}

    /** @param face the picture as it lies on the finished puzzle, of any resolution */
    public static double of(CutPattern pattern, BufferedImage face) {
        double perMm = face.getWidth() / pattern.spec().size().width().mm();
        List<Piece> pieces = pattern.pieces();
        List<Look> looks = new ArrayList<>(pieces.size());
        for (Piece piece : pieces) {
            looks.add(look(piece, face, perMm));
        }
        double sum = 0;
        int count = 0;
        for (int i = 0; i < pieces.size(); i++) {
            int from = i;
            // in reading order neighbours lie at most two rows away
            int reach = 2 * pattern.spec().grid().columns() + 2;
            List<Integer> near = new ArrayList<>();
            for (int j = Math.max(0, i - reach); j <= Math.min(pieces.size() - 1, i + reach); j++) {
                if (j != i) {
                    near.add(j);
                }
            }
            near.sort(Comparator.comparingDouble(
                    j -> pieces.get(from).centre().distanceTo(pieces.get(j).centre())));
            for (int j : near.subList(0, Math.min(NEIGHBOURS, near.size()))) {
                sum += Math.exp(-looks.get(i).differenceTo(looks.get(j)) / FADES);
                count++;
            }
        }
        return count == 0 ? 1 : sum / count;
    }

    /** Within a square about the middle of the piece's area, of half of it: knobs are left out. */
    private static Look look(Piece piece, BufferedImage face, double perMm) {
        double half = Math.sqrt(piece.areaMm2() / 2) / 2;
        int fromX = clamp((piece.centre().xMm() - half) * perMm, face.getWidth());
        int toX = clamp((piece.centre().xMm() + half) * perMm, face.getWidth());
        int fromY = clamp((piece.centre().yMm() - half) * perMm, face.getHeight());
        int toY = clamp((piece.centre().yMm() + half) * perMm, face.getHeight());
        double l = 0;
        double a = 0;
        double b = 0;
        double squares = 0;
        int count = 0;
        for (int y = fromY; y <= toY; y++) {
            for (int x = fromX; x <= toX; x++) {
                double[] lab = lab(face.getRGB(x, y));
                l += lab[0];
                a += lab[1];
                b += lab[2];
                squares += lab[0] * lab[0];
                count++;
            }
        }
        double mean = l / count;
        return new Look(mean, a / count, b / count, Math.sqrt(Math.max(0, squares / count - mean * mean)));
    }

    private static int clamp(double at, int count) {
        return Math.clamp((long) Math.floor(at), 0, count - 1);
    }

    /** sRGB to CIELAB, white D65. */
    public static double[] lab(int rgb) {
        double r = linear(rgb >> 16 & 255);
        double g = linear(rgb >> 8 & 255);
        double b = linear(rgb & 255);
        double x = curve((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
        double y = curve(0.2126 * r + 0.7152 * g + 0.0722 * b);
        double z = curve((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.0890);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double linear(int value) {
        double v = value / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    private static double curve(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
