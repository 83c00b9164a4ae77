package puzzleworkshop.cutfiles.svg;

import java.awt.Shape;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.WorkLimit;

/**
 * What a clip leaves of lines, in millimetres: the parts within every one of its regions. A line that lies wholly within
 * stays the curve it was; of others chords within {@value #FLAT_MM} mm are cut where they meet the regions' edges. A
 * line along an edge counts as inside: half of its stroke shows.
 */
final class SvgClip {

    /** Nothing is clipped. */
    static final SvgClip NONE = new SvgClip(List.of());

    static final double FLAT_MM = 0.002;
    private static final double ON_THE_EDGE_MM = 0.02;
    private static final int MOST_EDGES = 4_000;

    /** Shapes together, and the ends of all their edges: x, y, x, y. */
    private record Region(List<Path2D> shapes, double[] edges) {

        boolean holds(double x, double y) {
            for (Path2D shape : shapes) {
                if (shape.contains(x, y)) {
                    return true;
                }
            }
            return false;
        }

        boolean holds(double x, double y, double width, double height) {
            for (Path2D shape : shapes) {
                if (shape.contains(x, y, width, height)) {
                    return true;
                }
            }
            return false;
        }
    }

    private final List<Region> regions;

    private SvgClip(List<Region> regions) {
        this.regions = regions;
    }

    /**
     * @param shape in millimetres, with its own winding rule
     * @throws Unreadable when it has so many corners that it cannot be worked out in time
     */
    SvgClip and(List<? extends Shape> shapes, WorkLimit limit) {
        List<Path2D> flats = new ArrayList<>();
        double[] edges = new double[256];
        int count = 0;
        for (Shape shape : shapes) {
            Path2D.Double flat = new Path2D.Double(shape.getPathIterator(null).getWindingRule());
            for (PathIterator it = new FlatteningPathIterator(shape.getPathIterator(null), FLAT_MM, 12);
                    !it.isDone();
                    it.next()) {
                limit.steps(1);
                append(flat, it);
            }
            flats.add(flat);
            double[] more = edges(flat);
            if (count + more.length > 4 * MOST_EDGES) {
                throw new Unreadable("a clip of many corners");
            }
            edges = Arrays.copyOf(edges, Math.max(edges.length, count + more.length));
            System.arraycopy(more, 0, edges, count, more.length);
            count += more.length;
        }
        List<Region> more = new ArrayList<>(regions);
        more.add(new Region(flats, Arrays.copyOf(edges, count)));
        return new SvgClip(more);
    }

    private static void append(Path2D path, PathIterator it) {
        double[] c = new double[6];
        switch (it.currentSegment(c)) {
            case PathIterator.SEG_MOVETO -> path.moveTo(c[0], c[1]);
            case PathIterator.SEG_LINETO -> path.lineTo(c[0], c[1]);
            default -> path.closePath();
        }
    }

    private static double[] edges(Path2D path) {
        double[] edges = new double[256];
        int count = 0;
        double[] c = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (PathIterator it = path.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            if (kind == PathIterator.SEG_MOVETO) {
                startX = c[0];
                startY = c[1];
            } else {
                double toX = kind == PathIterator.SEG_CLOSE ? startX : c[0];
                double toY = kind == PathIterator.SEG_CLOSE ? startY : c[1];
                if (count + 4 > edges.length) {
                    edges = Arrays.copyOf(edges, count * 2);
                }
                edges[count++] = x;
                edges[count++] = y;
                edges[count++] = toX;
                edges[count++] = toY;
            }
            x = kind == PathIterator.SEG_CLOSE ? startX : c[0];
            y = kind == PathIterator.SEG_CLOSE ? startY : c[1];
        }
        return Arrays.copyOf(edges, count);
    }

    /** The very same lines where nothing is taken away. */
    List<CurvePath> of(List<CurvePath> lines, WorkLimit limit) {
        if (regions.isEmpty()) {
            return lines;
        }
        List<CurvePath> left = new ArrayList<>();
        for (CurvePath line : lines) {
            limit.steps(1 + work());
            if (isWithin(line.bounds())) {
                left.add(line);
            } else {
                left.addAll(parts(line, limit));
            }
        }
        return left;
    }

    private int work() {
        int edges = 0;
        for (Region region : regions) {
            edges += region.edges().length / 32;
        }
        return edges;
    }

    private boolean isWithin(Bounds b) {
        for (Region region : regions) {
            double in = Math.min(ON_THE_EDGE_MM, 0.4 * Math.max(b.width(), b.height()));
            double width = Math.max(1e-9, b.width() - 2 * in);
            double height = Math.max(1e-9, b.height() - 2 * in);
            double x = b.minX() + (b.width() - width) / 2;
            double y = b.minY() + (b.height() - height) / 2;
            if (!region.holds(x, y, width, height)) {
                return false;
            }
        }
        return true;
    }

    private List<CurvePath> parts(CurvePath line, WorkLimit limit) {
        List<CurvePath> parts = new ArrayList<>();
        List<Point> run = new ArrayList<>();
        List<Point> points = line.flattened(FLAT_MM);
        boolean all = true;
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            double[] cuts = cuts(a, b, limit);
            for (int k = 1; k < cuts.length; k++) {
                if (cuts[k] - cuts[k - 1] < 1e-9) {
                    continue;
                }
                boolean inside = holds(a.towards(b, (cuts[k] + cuts[k - 1]) / 2), limit);
                all &= inside;
                if (inside) {
                    if (run.isEmpty()) {
                        run.add(a.towards(b, cuts[k - 1]));
                    }
                    run.add(cuts[k] == 1 ? b : a.towards(b, cuts[k]));
                } else {
                    finish(run, parts);
                }
            }
        }
        finish(run, parts);
        if (all && parts.size() == 1) {
            return List.of(line);
        }
        return parts;
    }

    private static void finish(List<Point> run, List<CurvePath> parts) {
        if (run.size() > 1) {
            parts.add(CurvePath.through(run, false));
        }
        run.clear();
    }

    /** Parameters where the stretch meets an edge, with 0 and 1, in order. */
    private double[] cuts(Point a, Point b, WorkLimit limit) {
        double[] cuts = new double[8];
        cuts[0] = 0;
        cuts[1] = 1;
        int count = 2;
        double dx = b.xMm() - a.xMm();
        double dy = b.yMm() - a.yMm();
        for (Region region : regions) {
            double[] e = region.edges();
            limit.steps(1 + e.length / 64);
            for (int i = 0; i < e.length; i += 4) {
                double ex = e[i + 2] - e[i];
                double ey = e[i + 3] - e[i + 1];
                double across = dx * ey - dy * ex;
                double px = e[i] - a.xMm();
                double py = e[i + 1] - a.yMm();
                double t = (px * ey - py * ex) / across;
                double s = (px * dy - py * dx) / across;
                if (t > 0 && t < 1 && s >= -1e-9 && s <= 1 + 1e-9) {
                    if (count == cuts.length) {
                        cuts = Arrays.copyOf(cuts, count * 2);
                    }
                    cuts[count++] = t;
                }
            }
        }
        double[] sorted = Arrays.copyOf(cuts, count);
        Arrays.sort(sorted);
        return sorted;
    }

    private boolean holds(Point p, WorkLimit limit) {
        for (Region region : regions) {
            limit.steps(1 + region.edges().length / 32);
            if (!region.holds(p.xMm(), p.yMm()) && !isOnEdge(region, p)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isOnEdge(Region region, Point p) {
        double[] e = region.edges();
        for (int i = 0; i < e.length; i += 4) {
            if (java.awt.geom.Line2D.ptSegDistSq(e[i], e[i + 1], e[i + 2], e[i + 3], p.xMm(), p.yMm())
                    <= ON_THE_EDGE_MM * ON_THE_EDGE_MM) {
                return true;
            }
        }
        return false;
    }
}
