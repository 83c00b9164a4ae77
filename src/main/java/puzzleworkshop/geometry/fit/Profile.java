package puzzleworkshop.geometry.fit;

import java.util.Arrays;
import java.util.Optional;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * What is worth knowing about an outline before a rectangle is tried in it: computed once when the outline enters the
 * stock, so that most outlines are refused by a few comparisons.
 *
 * <p>Necessary for w × h (w ≥ h): area of the largest part ≥ w·h; narrowest width of the convex hull ≥ h; its
 * diameter ≥ √(w²+h²); largest inscribed circle ≥ h/2 in radius. Sufficient: it is no larger than the highest rung
 * that fits.
 */
public final class Profile {

    private static final double CIRCLE_SHARPNESS = 0.5;
    private static final int DIRECTIONS = 12;
    private static final double COARSENESS = 0.5;
    private static final double LOOSENESS = 0.6;
    private static final int FEW_PIECES = 40;
    private static final int MAIN_DIRECTIONS = 4;

    public final Outline outline;
    public final Segments border;
    public final double area;
    public final int rung;
    public final double value;
    public final double[] directions;
    public final double[] mainDirections;
    private final double largestPart;
    private final double narrowest;
    private final double diameter;
    private final double inscribed;
    private final Size rungSize;
    /** An angle at which the rung fits, modulo 90°. */
    private double rungDegrees;

    /** Both made when they are first asked for. */
    private Segments coarseBorder;

    private Segments looseBorder;

    private Profile(Outline outline, UsefulSizes sizes, boolean stays) {
        this.outline = outline;
        Geometry free = outline.freeShape();
        border = outline.segments();
        area = free.getArea();
        double largest = 0;
        for (int i = 0; i < free.getNumGeometries(); i++) {
            largest = Math.max(largest, free.getGeometryN(i).getArea());
        }
        largestPart = largest;
        Geometry hull = free.convexHull();
        narrowest = new MinimumDiameter(hull, true).getLength();
        diameter = diameter(hull.getCoordinates());
        inscribed = stays
                ? new MaximumInscribedCircle(free, CIRCLE_SHARPNESS)
                                .getRadiusLine()
                                .getLength()
                        + CIRCLE_SHARPNESS
                : narrowest / 2;
        directions = Directions.of(border, DIRECTIONS);
        mainDirections = Directions.of(border, MAIN_DIRECTIONS);
        rung = highestRung(sizes);
        rungSize = rung == UsefulSizes.SCRAP ? null : sizes.rung(rung);
        value = sizes.value(area, rung);
    }

    private Profile(Profile other, UsefulSizes sizes) {
        outline = other.outline;
        border = other.border;
        area = other.area;
        rung = other.rung;
        value = sizes.value(area, rung);
        directions = other.directions;
        mainDirections = other.mainDirections;
        largestPart = other.largestPart;
        narrowest = other.narrowest;
        diameter = other.diameter;
        inscribed = other.inscribed;
        rungSize = other.rungSize;
        rungDegrees = other.rungDegrees;
        coarseBorder = other.coarseBorder;
        looseBorder = other.looseBorder;
    }

    /** The same shape valued otherwise; the rungs must be the same. */
    public Profile valued(UsefulSizes sizes) {
        double now = sizes.value(area, rung);
        return Math.abs(now - value) < 1e-9 ? this : new Profile(this, sizes);
    }

    public static Profile of(Outline outline, UsefulSizes sizes) {
        return new Profile(outline, sizes, true);
    }

    /** For an outline that is looked at a few times only: without the inscribed circle, which takes longest to find. */
    public static Profile passing(Outline outline, UsefulSizes sizes) {
        return new Profile(outline, sizes, false);
    }

    public Outline outline() {
        return outline;
    }

    /**
     * The border with few pieces, up to {@value #COARSENESS} mm off: good enough to tell which of two remainders is
     * larger, and on a curved board a hundred times faster.
     */
    public Segments coarseBorder() {
        if (coarseBorder == null) {
            Geometry free = outline.freeShape();
            coarseBorder = free.getNumPoints() <= FEW_PIECES
                    ? border
                    : Segments.of(TopologyPreservingSimplifier.simplify(free, COARSENESS));
        }
        return coarseBorder;
    }

    /** The highest rung of the ladder whose rectangle fits at any angle. */
    public int rung() {
        return rung;
    }

    public Area value() {
        return Area.mm2(value);
    }

    /**
     * A border with few pieces around a little more than the board (up to {@value #LOOSENESS} mm, holes as much smaller): what
     * does not fit here does not fit on the board. Most questions have that answer, and a curved board asks thousands of
     * them.
     */
    Segments looseBorder() {
        if (looseBorder == null) {
            Geometry free = outline.freeShape();
            looseBorder = free.getNumPoints() <= FEW_PIECES ? border : Segments.of(loosened(free));
        }
        return looseBorder;
    }

    /** The simplified line stays within its tolerance of the wider one, so a hair more width keeps the board inside it. */
    static Geometry loosened(Geometry free) {
        Geometry wider = free.buffer(LOOSENESS / 2 + 0.02);
        return TopologyPreservingSimplifier.simplify(wider, LOOSENESS / 2 - 0.02);
    }

    private int highestRung(UsefulSizes sizes) {
        RectangleFit fit = new RectangleFit();
        for (int k = sizes.highestFor(largestPart); k > UsefulSizes.SCRAP; k--) {
            double w = sizes.rung(k).longerSide().mm();
            double h = sizes.rung(k).shorterSide().mm();
            Optional<Placement> place = mayHold(w, h) ? fit.place(border, w, h, directions) : Optional.empty();
            if (place.isPresent()) {
                rungDegrees = place.get().degrees() % 90;
                return k;
            }
        }
        return UsefulSizes.SCRAP;
    }

    /** False: it certainly does not fit, at no angle. */
    public boolean mayHold(double w, double h) {
        double shorter = Math.min(w, h) - 2 * Outline.TOLERANCE;
        return w * h <= largestPart + Outline.TOLERANCE * 4 * (w + h)
                && shorter <= narrowest
                && shorter / 2 <= inscribed
                && Math.sqrt(w * w + h * h) - 4 * Outline.TOLERANCE <= diameter;
    }

    /** Angles, modulo 90°, at which a rectangle fits most likely: those of the edges, and that of the rung. */
    public double[] likely() {
        double[] likely = Arrays.copyOf(directions, directions.length + 1);
        likely[directions.length] = rungDegrees;
        return likely;
    }

    /** True: it certainly fits at some angle. */
    public boolean surelyHolds(double w, double h) {
        return rungSize != null
                && Math.max(w, h) <= rungSize.longerSide().mm()
                && Math.min(w, h) <= rungSize.shorterSide().mm();
    }

    private static double diameter(Coordinate[] hull) {
        double most = 0;
        for (int i = 0; i < hull.length; i++) {
            for (int j = i + 1; j < hull.length; j++) {
                most = Math.max(most, hull[i].distance(hull[j]));
            }
        }
        return most;
    }
}
