package puzzleworkshop.machines;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Speed;

/**
 * How fast a head can be moved.
 *
 * @param maxTravel with the beam off
 * @param maxCut with the beam on
 * @param acceleration along the path and across it, mm/s², above zero
 * @param cornerDeviation how far, in mm, the head may be thought to cut a corner: the larger, the faster it takes
 *     corners. Zero: it stops at every corner.
 */
public record Motion(Speed maxTravel, Speed maxCut, double acceleration, Length cornerDeviation) {

    public Motion {
        if (!(acceleration > 0) || !Double.isFinite(acceleration)) {
            throw new IllegalArgumentException("Acceleration is above zero mm/s², not " + acceleration);
        }
        if (cornerDeviation.mm() < 0) {
            throw new IllegalArgumentException("The corner deviation is not negative");
        }
    }

    /** Speed at which a bend of the given radius presses sideways with the machine's acceleration: √(a·R), mechanics. */
    public double bendSpeed(double radiusMm) {
        return Math.sqrt(acceleration * radiusMm);
    }

    /**
     * Speed in mm/s at which the head may pass a corner. The corner is thought of as a small arc that touches both
     * legs and comes within the corner deviation δ of the corner point; its radius is
     * R = δ · sin(θ/2) / (1 − sin(θ/2)) for the angle θ between the legs, and the speed is the bend speed on it.
     * Source: plane geometry of the arc; a usual model of motion controllers (common practice).
     *
     * @param turn change of direction in radians: 0 straight on, π straight back
     */
    public double cornerSpeed(double turn) {
        double half = Math.sin((Math.PI - Math.abs(turn)) / 2);
        if (half >= 1 - 1e-12) {
            return Double.POSITIVE_INFINITY;
        }
        return bendSpeed(Math.max(0, cornerDeviation.mm() * half / (1 - half)));
    }
}
