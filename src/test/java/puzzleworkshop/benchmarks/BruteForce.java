package puzzleworkshop.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;

/**
 * The stupid way, as a judge: every whole degree, every whole millimetre. A raster of 1 mm with sums over it says where a
 * rectangle may lie; JTS confirms a place before it counts. Shares nothing with the program but the shapes.
 */
final class BruteForce {

    private final Geometry area;
    private final PreparedGeometry judge;

    BruteForce(Geometry area) {
        this.area = area;
        this.judge = PreparedGeometryFactory.prepare(area);
    }

    /** JTS's word; the rectangle is taken smaller by this much on each side. */
    boolean confirms(Size size, Placement place, double inset) {
        return judge.covers(place.polygon(size, inset));
    }

    /** A raster of the free area, turned so that a rectangle at the angle is upright. */
    final class Turned {

        private final int degrees;
        private final double minX;
        private final double minY;
        private final int columns;
        private final int rows;
        private final int[] sums;

        Turned(int degrees) {
            this.degrees = degrees;
            Geometry turned = AffineTransformation.rotationInstance(-Math.toRadians(degrees))
                    .transform(area);
            Envelope box = turned.getEnvelopeInternal();
            minX = box.getMinX();
            minY = box.getMinY();
            columns = (int) Math.ceil(box.getWidth());
            rows = (int) Math.ceil(box.getHeight());
            sums = new int[(columns + 1) * (rows + 1)];
            fill(turned);
        }

        private void fill(Geometry turned) {
            List<List<Double>> cuts = new ArrayList<>();
            for (int r = 0; r < rows; r++) {
                cuts.add(new ArrayList<>());
            }
            for (Object line : LinearComponentExtracter.getLines(turned)) {
                Coordinate[] ring = ((LineString) line).getCoordinates();
                for (int i = 1; i < ring.length; i++) {
                    Coordinate a = ring[i - 1].y < ring[i].y ? ring[i - 1] : ring[i];
                    Coordinate b = a == ring[i] ? ring[i - 1] : ring[i];
                    int from = Math.max(0, (int) Math.ceil(a.y - minY - 0.5));
                    for (int r = from; r < rows && minY + r + 0.5 < b.y; r++) {
                        cuts.get(r).add(a.x + (minY + r + 0.5 - a.y) / (b.y - a.y) * (b.x - a.x));
                    }
                }
            }
            for (int r = 0; r < rows; r++) {
                List<Double> row = cuts.get(r);
                row.sort(null);
                int[] inside = new int[columns];
                for (int k = 0; k + 1 < row.size(); k += 2) {
                    int first = Math.max(0, (int) Math.ceil(row.get(k) - minX - 0.5));
                    int last = Math.min(columns, (int) Math.ceil(row.get(k + 1) - minX - 0.5));
                    for (int c = first; c < last; c++) {
                        inside[c] = 1;
                    }
                }
                int along = 0;
                for (int c = 0; c < columns; c++) {
                    along += inside[c];
                    sums[(r + 1) * (columns + 1) + c + 1] = sums[r * (columns + 1) + c + 1] + along;
                }
            }
        }

        /** All places of the raster where every cell under the rectangle is free: may be wrong by a millimetre. */
        List<Placement> places(Size size) {
            int w = (int) Math.floor(size.width().mm());
            int h = (int) Math.floor(size.height().mm());
            double cos = Math.cos(Math.toRadians(degrees));
            double sin = Math.sin(Math.toRadians(degrees));
            List<Placement> found = new ArrayList<>();
            for (int r = 0; r + h <= rows; r++) {
                for (int c = 0; c + w <= columns; c++) {
                    if (sum(c + w, r + h) - sum(c, r + h) - sum(c + w, r) + sum(c, r) == w * h) {
                        double x = minX + c;
                        double y = minY + r;
                        found.add(new Placement(x * cos - y * sin, x * sin + y * cos, degrees));
                    }
                }
            }
            return found;
        }

        private int sum(int c, int r) {
            return sums[r * (columns + 1) + c];
        }
    }

    /** Of the raster's places some that JTS confirms: the outermost ones and a few by chance. */
    List<Placement> confirmed(List<Placement> places, Size size, int most, Random random) {
        List<Placement> tried = new ArrayList<>();
        if (!places.isEmpty()) {
            tried.add(places.getFirst());
            tried.add(places.getLast());
        }
        for (int i = 0; i < most && !places.isEmpty(); i++) {
            tried.add(places.get(random.nextInt(places.size())));
        }
        return tried.stream().filter(place -> confirms(size, place, 0)).toList();
    }

    /** Any that JTS confirms, all of them tried. */
    boolean anyConfirmed(List<Placement> places, Size size) {
        return places.stream().anyMatch(place -> confirms(size, place, 0));
    }

    /** How long the plain way with JTS takes until its first place or the limit, in nanoseconds. */
    long plainNanos(Size size, long limitNanos) {
        long start = System.nanoTime();
        Point lowest = new Point(
                area.getEnvelopeInternal().getMinX(), area.getEnvelopeInternal().getMinY());
        double reach = Math.hypot(
                area.getEnvelopeInternal().getWidth(),
                area.getEnvelopeInternal().getHeight());
        if (size.area().mm2() > area.getArea()) {
            return System.nanoTime() - start;
        }
        for (int degrees = 0; degrees < 180; degrees++) {
            for (double y = lowest.yMm(); y < lowest.yMm() + reach; y++) {
                for (double x = lowest.xMm(); x < lowest.xMm() + reach; x++) {
                    if (confirms(size, new Placement(x, y, degrees), 0)) {
                        return System.nanoTime() - start;
                    }
                }
                if (System.nanoTime() - start > limitNanos) {
                    return System.nanoTime() - start;
                }
            }
        }
        return System.nanoTime() - start;
    }
}
