package puzzleworkshop.cutfiles.svg.values;

import java.awt.geom.AffineTransform;

/**
 * What a view box makes of its contents (SVG 2, 8.2 and 8.7).
 *
 * @param width of the viewport, in the px around it
 * @param height of the viewport, in the px around it
 * @param contents from the contents' user units to the viewport
 * @param innerWidth what 100 % means inside, user units
 * @param innerHeight what 100 % means inside, user units
 */
public record SvgViewport(
        double width, double height, AffineTransform contents, double innerWidth, double innerHeight) {

    /**
     * @param box x, y, width, height of the view box; null where there is none
     * @param ratio preserveAspectRatio
     */
    public static SvgViewport of(double width, double height, double[] box, String ratio) {
        return box == null
                ? new SvgViewport(width, height, new AffineTransform(), width, height)
                : new SvgViewport(width, height, fitted(box, width, height, ratio), box[2], box[3]);
    }

    /** What a share that is neither across nor down refers to (SVG 2, 8.9). */
    public double diagonal() {
        return Math.sqrt((innerWidth * innerWidth + innerHeight * innerHeight) / 2);
    }

    private static AffineTransform fitted(double[] box, double width, double height, String ratio) {
        double sx = width / box[2];
        double sy = height / box[3];
        double dx = 0;
        double dy = 0;
        if (!ratio.strip().startsWith("none")) {
            double scale = ratio.contains("slice") ? Math.max(sx, sy) : Math.min(sx, sy);
            sx = scale;
            sy = scale;
            double spareX = width - box[2] * scale;
            double spareY = height - box[3] * scale;
            dx = ratio.contains("xMin") ? 0 : ratio.contains("xMax") ? spareX : spareX / 2;
            dy = ratio.contains("YMin") ? 0 : ratio.contains("YMax") ? spareY : spareY / 2;
        }
        return new AffineTransform(sx, 0, 0, sy, dx - box[0] * sx, dy - box[1] * sy);
    }

    /** Four numbers; null where the attribute is missing or damaged, which is the same to the standard. */
    public static double[] box(String text) {
        if (text.isBlank()) {
            return null;
        }
        double[] box = new double[4];
        Scanner in = new Scanner(text);
        try {
            for (int i = 0; i < 4; i++) {
                in.skipComma();
                box[i] = in.number();
            }
        } catch (Unreadable damaged) {
            return null;
        }
        return box;
    }
}
