package puzzleworkshop.pattern.smallparts;

import java.util.ArrayList;
import java.util.List;

/**
 * Orientations side by side: all turns are the surface of a cube of quaternions with four pairs of faces, opposite ones
 * saying the same, and this is a small cube on one of them.
 *
 * @param face which of w, i, j, k is 1 there
 * @param a middle of the next one after it, -1 to 1; {@code b} and {@code c} go on from there
 * @param half half of an edge
 * @param lacksMm by how much larger the cylinder would be that the solid is known to fit somewhere in the box this one is
 *     of, as far as it was asked
 */
record OrientationBox(int face, double a, double b, double c, double half, double lacksMm) {

    /** A face cut so many times along each edge. */
    static List<OrientationBox> wholeFace(int face, int cuts, double lacksMm) {
        List<OrientationBox> all = new ArrayList<>();
        double half = 1.0 / cuts;
        for (int i = 0; i < cuts * cuts * cuts; i++) {
            all.add(new OrientationBox(
                    face,
                    -1 + half * (1 + 2 * (i % cuts)),
                    -1 + half * (1 + 2 * (i / cuts % cuts)),
                    -1 + half * (1 + 2 * (i / cuts / cuts)),
                    half,
                    lacksMm));
        }
        return all;
    }

    /** Its eight parts. */
    List<OrientationBox> halved(double lacksMm) {
        List<OrientationBox> parts = new ArrayList<>();
        double quarter = half / 2;
        for (int corner = 0; corner < 8; corner++) {
            parts.add(new OrientationBox(
                    face,
                    a + ((corner & 1) == 0 ? quarter : -quarter),
                    b + ((corner & 2) == 0 ? quarter : -quarter),
                    c + ((corner & 4) == 0 ? quarter : -quarter),
                    quarter,
                    lacksMm));
        }
        return parts;
    }

    /** The turn in its middle, a quaternion w, i, j, k of some length. */
    double[] middle() {
        double[] q = new double[4];
        q[face] = 1;
        q[(face + 1) % 4] = a;
        q[(face + 2) % 4] = b;
        q[(face + 3) % 4] = c;
        return q;
    }

    /**
     * How far, in radians, a turn in it can be from that of its middle. Its points lie within half·√3 of the middle and at
     * least so far from the origin; drawing in to the unit sphere brings them nearer by that; a rotation turns by twice the
     * angle between quaternions.
     */
    double farthestTurn() {
        double chord = Math.min(2, half * Math.sqrt(3 / (1 + nearest(a) + nearest(b) + nearest(c))));
        return Math.min(Math.PI, 4 * Math.asin(chord / 2));
    }

    private double nearest(double middle) {
        double least = Math.max(0, Math.abs(middle) - half);
        return least * least;
    }
}
