package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pattern.PatternSpec;

/**
 * Draws the edges of the outline, clockwise from the top left corner. A rounded corner is divided in its middle
 * between the two edges that meet there; a wave swings between the finished size and its depth inside it.
 */
final class OutlineArtist {

    /** Handle of an eighth of a circle: 4/3·tan(π/16), computed; largest radial error 4e-6 of the radius. */
    private static final double EIGHTH = 4.0 / 3 * StrictMath.tan(Math.PI / 16);

    private static final double HALF_ROOT = Math.sqrt(0.5);
    private static final double SWING = 0.4;
    private static final double DEEPEST_WAVE = 0.15;

    private final PatternSpec spec;
    private final double width;
    private final double height;
    private final double radius;
    private final double depth;

    /** @param side of the smallest piece at the edge */
    OutlineArtist(PatternSpec spec, double side) {
        this.spec = spec;
        this.width = spec.size().width().mm();
        this.height = spec.size().height().mm();
        double measure = spec.outline().measure().mm();
        switch (spec.outline().kind()) {
            // a curve is drawn by the mesh that lies inside it: here its frame
            case SQUARE, ROUND, HEART -> {
                radius = 0;
                depth = 0;
            }
            case ROUNDED -> {
                radius = measure;
                depth = 0;
                requireAtMost(
                        "pattern.outline.radius", side * 0.9 - spec.limits().closestLinesMm());
            }
            case WAVY -> {
                depth = measure;
                radius = Math.min(side / 3, depth * 2.5);
                requireAtMost("pattern.outline.depth", side * DEEPEST_WAVE);
            }
            default -> throw new IllegalStateException("An outline of a kind that is not drawn here");
        }
    }

    private void requireAtMost(String key, double most) {
        if (spec.outline().measure().mm() > most) {
            throw new Refused(key, spec.outline().measure(), Length.mm(Math.floor(most * 10) / 10));
        }
    }

    void draw(Mesh mesh) {
        int[] sides = {
            spec.grid().columns(),
            spec.grid().rows(),
            spec.grid().columns(),
            spec.grid().rows()
        };
        int next = 0;
        for (int side = 0; side < 4; side++) {
            for (int i = 0; i < sides[side]; i++) {
                Mesh.Edge edge = mesh.outline.get(next++).edge();
                edge.draw(
                        edge(side, i == 0, i == sides[side] - 1, mesh.points.get(edge.from), mesh.points.get(edge.to)));
            }
        }
        // the points of the mesh follow what was drawn: the middle of a corner's arc, and every last digit
        for (Mesh.Step step : mesh.outline) {
            mesh.points.set(step.edge().from, step.edge().path().start());
        }
    }

    /** One edge, drawn as if it lay on the top side and then turned into place. */
    private CurvePath edge(int side, boolean first, boolean last, Point from, Point to) {
        Turned turned = new Turned(side, width, height);
        double a = turned.along(from);
        double b = turned.along(to);
        double whole = side % 2 == 0 ? width : height;
        Pen pen = new Pen(turned);
        if (first && radius > 0) {
            double cut = radius * (1 - HALF_ROOT);
            pen.moveTo(cut, cut);
            pen.curveTo(
                    cut + radius * EIGHTH * HALF_ROOT,
                    cut - radius * EIGHTH * HALF_ROOT,
                    radius - radius * EIGHTH,
                    0,
                    radius,
                    0);
        } else {
            pen.moveTo(first ? 0 : a, first ? 0 : depth);
        }
        double end = last ? whole - radius : b;
        double endDown = last ? 0 : depth;
        if (depth == 0) {
            pen.lineTo(end, 0);
        } else if (first && last) {
            pen.lineTo(end, 0);
        } else if (first || last) {
            pen.swingTo(end, endDown);
        } else {
            pen.swingTo((a + b) / 2, 0);
            pen.swingTo(end, endDown);
        }
        if (last && radius > 0) {
            double cut = radius * (1 - HALF_ROOT);
            pen.curveTo(
                    whole - radius + radius * EIGHTH,
                    0,
                    whole - cut - radius * EIGHTH * HALF_ROOT,
                    cut - radius * EIGHTH * HALF_ROOT,
                    whole - cut,
                    cut);
        }
        return pen.path();
    }

    /** Places of one side as (along, down): along it clockwise, and into the puzzle. */
    private record Turned(int side, double width, double height) {

        double along(Point p) {
            return switch (side) {
                case 0 -> p.xMm();
                case 1 -> p.yMm();
                case 2 -> width - p.xMm();
                default -> height - p.yMm();
            };
        }

        Point point(double along, double down) {
            return switch (side) {
                case 0 -> Point.of(along, down);
                case 1 -> Point.of(width - down, along);
                case 2 -> Point.of(width - along, height - down);
                default -> Point.of(down, height - along);
            };
        }
    }

    private static final class Pen {
        private final Turned turned;
        private final List<Segment> segments = new ArrayList<>();
        private Point start;
        private double along;
        private double down;

        Pen(Turned turned) {
            this.turned = turned;
        }

        void moveTo(double toAlong, double toDown) {
            start = turned.point(toAlong, toDown);
            along = toAlong;
            down = toDown;
        }

        void lineTo(double toAlong, double toDown) {
            segments.add(new Segment.Line(turned.point(toAlong, toDown)));
            along = toAlong;
            down = toDown;
        }

        void curveTo(double x1, double y1, double x2, double y2, double toAlong, double toDown) {
            segments.add(new Segment.Cubic(turned.point(x1, y1), turned.point(x2, y2), turned.point(toAlong, toDown)));
            along = toAlong;
            down = toDown;
        }

        /** From one level to another, leaving and arriving along the side. */
        void swingTo(double toAlong, double toDown) {
            double reach = SWING * (toAlong - along);
            curveTo(along + reach, down, toAlong - reach, toDown, toAlong, toDown);
        }

        CurvePath path() {
            return new CurvePath(start, segments, false);
        }
    }
}
