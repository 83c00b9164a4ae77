package puzzleworkshop.cutfiles.dxf;

import java.awt.geom.AffineTransform;

/**
 * Planes that things are drawn in (DXF reference, 'object coordinate system' and 'arbitrary axis algorithm'), seen from
 * above.
 */
final class DxfPlanes {

    private static final double NEARLY_UP = 1.0 / 64;
    private static final double FLAT = 1e-9;

    private DxfPlanes() {}

    /** Whether the thing lies flat, seen from above or from below. */
    static boolean isFlat(DxfThing thing) {
        double length = Math.hypot(Math.hypot(thing.number(210, 0), thing.number(220, 0)), thing.number(230, 1));
        return length > 0 && Math.hypot(thing.number(210, 0), thing.number(220, 0)) <= FLAT * length;
    }

    /** From the thing's own plane to the drawing, its elevation counted. */
    static AffineTransform toDrawing(DxfThing thing) {
        double x = thing.number(210, 0);
        double y = thing.number(220, 0);
        double z = thing.number(230, 1);
        double length = Math.sqrt(x * x + y * y + z * z);
        if (length == 0) {
            return new AffineTransform();
        }
        x /= length;
        y /= length;
        z /= length;
        double[] across = Math.abs(x) < NEARLY_UP && Math.abs(y) < NEARLY_UP
                ? new double[] {z, 0, -x} // the world's y times the normal
                : new double[] {-y, x, 0}; // the world's z times the normal
        double size = Math.sqrt(across[0] * across[0] + across[1] * across[1] + across[2] * across[2]);
        for (int i = 0; i < 3; i++) {
            across[i] /= size;
        }
        double upX = y * across[2] - z * across[1];
        double upY = z * across[0] - x * across[2];
        double elevation = thing.number(38, thing.number(30, 0));
        return new AffineTransform(across[0], across[1], upX, upY, elevation * x, elevation * y);
    }
}
