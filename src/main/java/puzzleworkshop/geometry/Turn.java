package puzzleworkshop.geometry;

/** Sine and cosine of degrees, exact at the quarter turns, so that upright rectangles stay exactly upright. */
public final class Turn {

    private Turn() {}

    public static double cos(double degrees) {
        return sin(degrees + 90);
    }

    public static double sin(double degrees) {
        double turned = degrees % 360;
        if (turned % 90 == 0) {
            int quarter = (int) ((turned / 90 + 4) % 4);
            return quarter == 1 ? 1 : quarter == 3 ? -1 : 0;
        }
        return Math.sin(Math.toRadians(turned));
    }

    /** Brought into 0 ≤ degrees &lt; period. */
    public static double within(double degrees, double period) {
        double rest = degrees % period;
        rest = rest < 0 ? rest + period : rest;
        return rest > period - 1e-9 ? 0 : rest;
    }
}
