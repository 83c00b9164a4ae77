package puzzleworkshop.camera.traced;

/**
 * What light a surface throws back, place by place. Wood is sawn out of a trunk: rings about its heart, cut by the plane of the
 * board, with pores along the fibre and a knot here and there.
 *
 * @param kind how it looks
 * @param early light of early wood or of the plain colour, red, green, blue, linear
 * @param late of late wood, of a second colour
 * @param wall of the sides
 * @param seed of the pattern
 */
record Finish(Kind kind, double[] early, double[] late, double[] wall, int seed) {

    enum Kind {
        WOOD,
        PLAIN,
        TILES,
        CLOTH,
        PICTURE
    }

    void at(double x, double y, double[] out) {
        double share = switch (kind) {
            case WOOD -> rings(x, y);
            case PLAIN -> 0.3 * Hash.smooth(x * 0.7, y * 0.7, seed);
            case TILES -> tiles(x, y);
            case CLOTH -> 0.5 + 0.25 * Math.sin(x * 7.1) + 0.25 * Math.sin(y * 7.3);
            case PICTURE -> 0;
        };
        for (int c = 0; c < 3; c++) {
            out[c] = early[c] + share * (late[c] - early[c]);
        }
        if (kind == Kind.PICTURE) {
            for (int c = 0; c < 3; c++) {
                out[c] = 0.03
                        + 0.85
                                * Hash.smooth(x * 0.08, y * 0.08, seed + 7 * c)
                                * (0.6 + 0.4 * Hash.smooth(x * 0.5, y * 0.5, seed + 50));
            }
        }
    }

    /** Distance from the heart of a trunk that lies aslant under the board, in years; dark where a year ends. */
    private double rings(double x, double y) {
        double turn = 6.2832 * Hash.of(seed, 1, 3);
        double along = Math.cos(turn) * x + Math.sin(turn) * y;
        double across = -Math.sin(turn) * x + Math.cos(turn) * y;
        double bent = across + 9 * Hash.smooth(along * 0.008, across * 0.01, seed + 1);
        double deep = 25 + 0.03 * along + 5 * Hash.smooth(along * 0.01, 3, seed + 2);
        double years = Math.hypot(bent - 80 * Hash.of(seed, 2, 9), deep) / (1.5 + 3 * Hash.of(seed, 5, 5));
        double part = years - Math.floor(years);
        double late = part < 0.75 ? part * part * 0.8 : (1 - part) * 3.2 * 0.6;
        double pores = Hash.smooth(along * 0.12, across * 4, seed + 3) > 0.86 ? 0.35 : 0;
        double kx = along - 160 * Hash.of(seed, 8, 8);
        double ky = (across - 120 * Hash.of(seed, 9, 9)) * 1.4;
        double knot = Hash.of(seed, 4, 4) > 0.6 ? 0.9 * Math.exp(-(kx * kx + ky * ky) / 60) : 0;
        return Math.min(1, late + pores + knot);
    }

    private double tiles(double x, double y) {
        double u = x / 48 - Math.floor(x / 48);
        double v = y / 48 - Math.floor(y / 48);
        return u < 0.05 || v < 0.05 ? 1 : 0.25 * Hash.smooth(x * 0.3, y * 0.3, seed);
    }

    /** The side of the board; of plywood in layers, of cut wood darker here and there. */
    void side(double along, double height, double[] out) {
        double layer = kind == Kind.WOOD && seed % 2 == 0 ? Math.floor(height / 1.1) % 2 * 0.35 : 0;
        double burnt = 0.25 * Hash.smooth(along * 0.9, height * 2, seed + 20);
        for (int c = 0; c < 3; c++) {
            out[c] = wall[c] * (1 - layer) * (1 - burnt);
        }
    }
}
