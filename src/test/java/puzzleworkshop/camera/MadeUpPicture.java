package puzzleworkshop.camera;

/** A landscape for a puzzle's face: sky that grows pale to the horizon, clouds, hills, a field, dark trees. Light is linear. */
public final class MadeUpPicture {

    private MadeUpPicture() {}

    /**
     * @param width of the picture in mm, its place (0, 0) at the top left
     * @param clouds 0 for none, 1 for clouds as white as the paper below the pieces
     */
    public static Scene.Face landscape(double width, double height, double clouds, int seed) {
        return (x, y) -> {
            double hills = height * (0.42 + 0.12 * RenderedPhoto.noise(x * 7 / width, 0, seed));
            return y < hills ? sky(x, y / hills, y, clouds, seed) : land(x, y, (y - hills) / height, seed);
        };
    }

    private static double[] sky(double x, double down, double y, double clouds, int seed) {
        double[] sky = {0.22 + 0.33 * down, 0.42 + 0.26 * down, 0.78 + 0.02 * down};
        double cloud = clouds * Math.clamp(3 * RenderedPhoto.noise(x * 0.03, y * 0.07, seed + 1) - 1.3, 0, 1);
        double[] white = {0.85, 0.86, 0.87};
        return mixed(sky, white, cloud);
    }

    private static double[] land(double x, double y, double down, int seed) {
        double rough = RenderedPhoto.noise(x * 0.4, y * 0.4, seed + 2);
        double[] green = {0.10 + 0.08 * rough, 0.22 + 0.12 * rough, 0.05};
        double[] field = {0.55 + 0.15 * rough, 0.42 + 0.1 * rough, 0.10};
        double[] tree = {0.03 + 0.03 * rough, 0.06 + 0.05 * rough, 0.025};
        double[] land =
                mixed(green, field, Math.clamp(8 * RenderedPhoto.noise(x * 0.02, y * 0.03, seed + 3) - 3.5, 0, 1));
        double wood = RenderedPhoto.noise(x * 0.08, y * 0.08, seed + 4) - down;
        return mixed(land, tree, Math.clamp(10 * wood - 3, 0, 1));
    }

    private static double[] mixed(double[] a, double[] b, double share) {
        double[] mixed = new double[3];
        for (int c = 0; c < 3; c++) {
            mixed[c] = a[c] + share * (b[c] - a[c]);
        }
        return mixed;
    }
}
