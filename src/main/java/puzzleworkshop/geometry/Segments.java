package puzzleworkshop.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * The border of a free area as bare line pieces, in arrays for speed. By the even-odd rule they also tell what is
 * inside. May be looked at from another angle, and a rectangle that is taken away may be added.
 */
public final class Segments {

    /** Pieces in a block. */
    public static final int BLOCK = 16;

    public final int count;
    public final double[] ax;
    public final double[] ay;
    public final double[] bx;
    public final double[] by;

    /** Made when first asked for, and the same whoever makes them. */
    private volatile Blocks blocks;

    /**
     * Boxes around some {@value #BLOCK} pieces that follow one another. A border runs on without leaps, so these boxes are small:
     * what does not come near a box does not come near its pieces.
     */
    public final class Blocks {

        public final int count;
        public final double[] x0;
        public final double[] y0;
        public final double[] x1;
        public final double[] y1;
        private final int apart;

        /** @param apart the last so many pieces have a block of their own */
        private Blocks(int apart) {
            this.apart = apart;
            count = (Segments.this.count - apart + BLOCK - 1) / BLOCK + (apart > 0 ? 1 : 0);
            x0 = new double[count];
            y0 = new double[count];
            x1 = new double[count];
            y1 = new double[count];
            for (int b = 0; b < count; b++) {
                measure(b);
            }
        }

        private void measure(int b) {
            double lowX = Double.POSITIVE_INFINITY;
            double lowY = Double.POSITIVE_INFINITY;
            double highX = Double.NEGATIVE_INFINITY;
            double highY = Double.NEGATIVE_INFINITY;
            for (int i = from(b); i < to(b); i++) {
                lowX = Math.min(lowX, Math.min(ax[i], bx[i]));
                lowY = Math.min(lowY, Math.min(ay[i], by[i]));
                highX = Math.max(highX, Math.max(ax[i], bx[i]));
                highY = Math.max(highY, Math.max(ay[i], by[i]));
            }
            x0[b] = lowX;
            y0[b] = lowY;
            x1[b] = highX;
            y1[b] = highY;
        }

        /** The first piece of a block. */
        public int from(int b) {
            return apart > 0 && b == count - 1 ? Segments.this.count - apart : b * BLOCK;
        }

        /** The piece after the last of a block. */
        public int to(int b) {
            return Math.min(b == count - 1 ? Segments.this.count : Segments.this.count - apart, from(b) + BLOCK);
        }

        /** Whether the inside of an upright box comes near the block's own box; else it meets none of its pieces. */
        public boolean mayMeet(int b, double left, double bottom, double right, double top) {
            return x1[b] > left && x0[b] < right && y1[b] > bottom && y0[b] < top;
        }

        /** Whether the block lies wholly inside an upright box. */
        public boolean isInside(int b, double left, double bottom, double right, double top) {
            return x0[b] > left && x1[b] < right && y0[b] > bottom && y1[b] < top;
        }

        /** The longer side of the block's box. */
        public double extent(int b) {
            return Math.max(x1[b] - x0[b], y1[b] - y0[b]);
        }
    }

    private Segments(int count) {
        this.count = count;
        ax = new double[count];
        ay = new double[count];
        bx = new double[count];
        by = new double[count];
    }

    public static Segments of(Geometry area) {
        int count = 0;
        for (Object line : LinearComponentExtracter.getLines(area)) {
            count += ((LineString) line).getNumPoints() - 1;
        }
        Segments segments = new Segments(count);
        int i = 0;
        for (Object line : LinearComponentExtracter.getLines(area)) {
            Coordinate[] ring = ((LineString) line).getCoordinates();
            for (int k = 1; k < ring.length; k++) {
                segments.set(i++, ring[k - 1].x, ring[k - 1].y, ring[k].x, ring[k].y);
            }
        }
        return segments;
    }

    private void set(int i, double x1, double y1, double x2, double y2) {
        ax[i] = x1;
        ay[i] = y1;
        bx[i] = x2;
        by[i] = y2;
    }

    /** As seen with the head turned by the angle: a rectangle at that angle is upright here. */
    public Segments seenFrom(double degrees) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        Segments turned = new Segments(count);
        for (int i = 0; i < count; i++) {
            turned.set(
                    i,
                    ax[i] * cos + ay[i] * sin,
                    ay[i] * cos - ax[i] * sin,
                    bx[i] * cos + by[i] * sin,
                    by[i] * cos - bx[i] * sin);
        }
        return turned;
    }

    /** With the border of a rectangle that lies inside, so that its inside counts as outside. */
    public Segments without(Placement placement, double width, double height) {
        Segments more = new Segments(count + 4);
        System.arraycopy(ax, 0, more.ax, 0, count);
        System.arraycopy(ay, 0, more.ay, 0, count);
        System.arraycopy(bx, 0, more.bx, 0, count);
        System.arraycopy(by, 0, more.by, 0, count);
        var corners = placement.corners(width, height);
        for (int i = 0; i < 4; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % 4);
            more.set(count + i, from.xMm(), from.yMm(), to.xMm(), to.yMm());
        }
        return more;
    }

    /**
     * This border with room for a rectangle that is put in its place again and again, see {@link #put}: for who tries many.
     * Not for more than one thread.
     */
    public Segments withRoom() {
        Segments more = new Segments(count + 4);
        System.arraycopy(ax, 0, more.ax, 0, count);
        System.arraycopy(ay, 0, more.ay, 0, count);
        System.arraycopy(bx, 0, more.bx, 0, count);
        System.arraycopy(by, 0, more.by, 0, count);
        more.blocks = more.new Blocks(4);
        return more;
    }

    /** Puts the rectangle there, in a border made {@link #withRoom()} and seen from the angle; its inside counts as outside. */
    public void put(Placement placement, double width, double height, double seenFromDegrees) {
        double cos = Turn.cos(seenFromDegrees);
        double sin = Turn.sin(seenFromDegrees);
        var corners = placement.corners(width, height);
        for (int i = 0; i < 4; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % 4);
            set(
                    count - 4 + i,
                    from.xMm() * cos + from.yMm() * sin,
                    from.yMm() * cos - from.xMm() * sin,
                    to.xMm() * cos + to.yMm() * sin,
                    to.yMm() * cos - to.xMm() * sin);
        }
        blocks.measure(blocks.count - 1);
    }

    public Blocks blocks() {
        Blocks made = blocks;
        if (made == null) {
            made = new Blocks(0);
            blocks = made;
        }
        return made;
    }

    public boolean contains(double x, double y) {
        Blocks boxes = blocks();
        boolean inside = false;
        for (int b = 0; b < boxes.count; b++) {
            if (boxes.y0[b] <= y && boxes.y1[b] > y && boxes.x1[b] > x) {
                inside ^= isLeftOfAnOddNumber(b, x, y);
            }
        }
        return inside;
    }

    private boolean isLeftOfAnOddNumber(int block, double x, double y) {
        boolean odd = false;
        for (int i = blocks.from(block); i < blocks.to(block); i++) {
            if ((ay[i] > y) != (by[i] > y) && x < ax[i] + (y - ay[i]) / (by[i] - ay[i]) * (bx[i] - ax[i])) {
                odd = !odd;
            }
        }
        return odd;
    }

    /**
     * Whether piece i meets the inside of an upright box. Separating axes of a line piece and a box: x, y and the
     * normal of the piece; they meet unless one of the three separates them.
     */
    public boolean meets(int i, double x0, double y0, double x1, double y1) {
        double px = ax[i];
        double py = ay[i];
        double qx = bx[i];
        double qy = by[i];
        if (px <= x0 && qx <= x0 || px >= x1 && qx >= x1 || py <= y0 && qy <= y0 || py >= y1 && qy >= y1) {
            return false;
        }
        double dx = qx - px;
        double dy = qy - py;
        double middle = dx * ((y0 + y1) / 2 - py) - dy * ((x0 + x1) / 2 - px);
        return Math.abs(middle) < (Math.abs(dx) * (y1 - y0) + Math.abs(dy) * (x1 - x0)) / 2;
    }
}
