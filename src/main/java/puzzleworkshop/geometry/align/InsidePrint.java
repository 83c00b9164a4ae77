package puzzleworkshop.geometry.align;

import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Whether a cut made by measured marks lies inside the print, with everything that is not known taken the worst way: for
 * each point of the outline, what is left to the nearest edge of the print after half the kerf, the stretch that the cut
 * does not follow, the uncertainty of the place there and the machine's own repeatability.
 *
 * @param spare the least that is left anywhere, mm; negative when the cut may leave the print
 * @param tightest where that is, on the print as drawn
 * @param uncertainty of the place at that point, mm
 * @param cut where the lines as drawn are to be cut
 */
public record InsidePrint(double spare, Point tightest, double uncertainty, Similarity cut) {

    private static final double FLATTENING_MM = 0.01;

    public boolean inside() {
        return spare >= 0;
    }

    /**
     * What is asked.
     *
     * @param print the print's edges, drawn; upright
     * @param kerf width of the cut, mm
     * @param reading standard deviation of a reading along an axis, mm
     * @param probability with which the stated uncertainty holds, for example 0.999
     * @param repeatability how exactly the machine comes back to a place, mm
     * @param follow whether the cut is stretched as the print is
     */
    public record Question(
            Bounds print, double kerf, double reading, double probability, double repeatability, boolean follow) {}

    /** @param outline the outer cut, drawn, in the same coordinates as the print's edges */
    public static InsidePrint of(CurvePath outline, SimilarityFit fit, Question question) {
        Similarity cut = question.follow() ? fit.place() : fit.place().unstretched(fit.middle());
        double spare = Double.POSITIVE_INFINITY;
        Point tightest = outline.start();
        double uncertainty = 0;
        double stretch = fit.place().stretch();
        for (Point p : outline.flattened(FLATTENING_MM)) {
            // where on the print, as drawn, the beam comes when it is sent to the place of p
            Point hit = fit.place().backwards(cut.of(p));
            double unsure = fit.radiusAt(p, question.reading(), question.probability());
            double left = edge(question.print(), hit) * stretch
                    - question.kerf() / 2
                    - unsure
                    - question.repeatability()
                    - FLATTENING_MM;
            if (left < spare) {
                spare = left;
                tightest = p;
                uncertainty = unsure;
            }
        }
        return new InsidePrint(spare, tightest, uncertainty, cut);
    }

    /** To the nearest edge, negative outside. */
    private static double edge(Bounds print, Point p) {
        return Math.min(
                Math.min(p.xMm() - print.minX(), print.maxX() - p.xMm()),
                Math.min(p.yMm() - print.minY(), print.maxY() - p.yMm()));
    }
}
