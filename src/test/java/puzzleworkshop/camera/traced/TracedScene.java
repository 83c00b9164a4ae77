package puzzleworkshop.camera.traced;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.camera.RandomScenes;
import puzzleworkshop.camera.sheet.MeasuringSheet;

/** What lies before a traced camera, and how that camera is; drawn by chance. Lengths in mm, z grows upwards, light linear. */
public final class TracedScene {

    /** Light and dark woods, by eye: early wood, late wood. */
    private static final double[][] WOODS = {
        {0.78, 0.66, 0.47, 0.66, 0.50, 0.30},
        {0.80, 0.71, 0.56, 0.72, 0.60, 0.42},
        {0.66, 0.47, 0.27, 0.50, 0.31, 0.15},
        {0.56, 0.40, 0.22, 0.42, 0.27, 0.13},
        {0.27, 0.155, 0.08, 0.15, 0.08, 0.042},
        {0.45, 0.22, 0.12, 0.33, 0.14, 0.075},
        {0.50, 0.36, 0.22, 0.48, 0.34, 0.20},
        {0.72, 0.55, 0.33, 0.60, 0.42, 0.22}
    };

    private static final double[] BEYOND_RED = {1, 1, 1};

    public final MeasuringSheet sheet;
    public final int width;
    public final int height;
    public final List<double[]> outlines = new ArrayList<>();
    public double thickness;

    /** Of the lens: ideal distance = seen distance ÷ (1 + lambda · seen distance²), distances over the focal length. */
    double lambda;

    double focal;
    double centreU;
    double centreV;
    /** Where the camera stands, and its axes right, down, forward. */
    double[] eye;

    double[][] axes;
    double[] lamp;
    double lampRadius;
    double lampShare;
    double[] lampColour;
    double[] skyColour;
    double paper;
    boolean picture;
    Finish board;
    Finish table;
    double exposure;
    double blur;
    double photonNoise;
    double readNoise;
    double vignette;
    double sharpen;
    double sharpenRadius;
    double contrast;
    double[] balance;
    boolean bayer;
    float quality;
    /** Pixels of brightness for one of colour, across and down. */
    int chromaAcross;

    int chromaDown;
    int seed;

    private TracedScene(MeasuringSheet sheet, int width, int height) {
        this.sheet = sheet;
        this.width = width;
        this.height = height;
    }

    /** One offcut on a sheet. */
    public static TracedScene next(Random random, MeasuringSheet sheet, double megapixels) {
        TracedScene scene = of(random, sheet, megapixels);
        double room = random.nextInt(3) == 0 ? 4 : 19;
        double[] outline = RandomScenes.outline(random, sheet.width() - 2 * room, sheet.height() - 2 * room);
        for (int i = 0; i < outline.length; i++) {
            outline[i] += room;
        }
        scene.outlines.add(outline);
        double[] usual = {2.5, 3, 3.6, 4, 6, 8, 10};
        scene.thickness = usual[random.nextInt(usual.length)];
        return scene;
    }

    /** An empty sheet before a camera. */
    public static TracedScene of(Random random, MeasuringSheet sheet, double megapixels) {
        boolean upright = random.nextInt(3) == 0;
        int longer = (int) Math.round(Math.sqrt(megapixels * 1e6 * 4 / 3));
        int shorter = longer * 3 / 4;
        TracedScene scene = new TracedScene(sheet, upright ? shorter : longer, upright ? longer : shorter);
        scene.seed = random.nextInt(1_000_000);
        scene.focal = longer * (0.66 + 0.3 * random.nextDouble());
        scene.lambda = 0.1 * (random.nextDouble() - 0.5);
        scene.centreU = scene.width / 2.0 + longer * 0.003 * random.nextGaussian();
        scene.centreV = scene.height / 2.0 + longer * 0.003 * random.nextGaussian();
        scene.stand(random, upright);
        scene.light(random);
        scene.finish(random);
        scene.develop(random);
        return scene;
    }

    private void stand(Random random, boolean upright) {
        double slant = Math.toRadians(28 * random.nextDouble());
        double towards = 2 * Math.PI * random.nextDouble();
        // away from the plane, seen from above: x right, y down, z up
        double[] back = {Math.sin(slant) * Math.cos(towards), Math.sin(slant) * Math.sin(towards), Math.cos(slant)};
        double[] forward = {-back[0], -back[1], -back[2]};
        boolean turned = upright != sheet.height() > sheet.width();
        double roll = (turned ? Math.PI / 2 : 0) + (random.nextBoolean() ? Math.PI : 0) + 0.1 * random.nextGaussian();
        double[] guess = {Math.cos(roll), Math.sin(roll), 0};
        double along = dot(guess, forward);
        double[] right = {guess[0] - along * forward[0], guess[1] - along * forward[1], -along * forward[2]};
        double size = Math.sqrt(dot(right, right));
        for (int i = 0; i < 3; i++) {
            right[i] /= size;
        }
        double[] down = {
            forward[1] * right[2] - forward[2] * right[1],
            forward[2] * right[0] - forward[0] * right[2],
            forward[0] * right[1] - forward[1] * right[0]
        };
        // y points down on the sheet and z up: this triad is left-handed, so down must agree with the sheet's own y
        double[] should = {-Math.sin(roll), Math.cos(roll), 0};
        if (dot(down, should) < 0) {
            for (int i = 0; i < 3; i++) {
                down[i] = -down[i];
            }
        }
        axes = new double[][] {right, down, forward};
        double[] middle = {sheet.width() / 2, sheet.height() / 2, 0};
        double far = 100;
        do {
            far *= 1.02;
            eye = new double[] {middle[0] + far * back[0], middle[1] + far * back[1], far * back[2]};
        } while (!showsSheet(0.97 - 0.08 * random.nextDouble()));
    }

    private boolean showsSheet(double fill) {
        for (int i = 0; i < 4; i++) {
            double[] d = {i % 2 * sheet.width() - eye[0], i / 2 * sheet.height() - eye[1], -eye[2]};
            double z = dot(d, axes[2]);
            if (Math.abs(dot(d, axes[0]) / z * focal) > width / 2.0 * fill
                    || Math.abs(dot(d, axes[1]) / z * focal) > height / 2.0 * fill) {
                return false;
            }
        }
        return true;
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private void light(Random random) {
        double around = 2 * Math.PI * random.nextDouble();
        double aside = 900 * random.nextDouble();
        double up = 500 + 1500 * random.nextDouble();
        lamp = new double[] {
            sheet.width() / 2 + aside * Math.cos(around), sheet.height() / 2 + aside * Math.sin(around), up
        };
        lampRadius = random.nextInt(4) == 0 ? 15 : 60 + 250 * random.nextDouble();
        lampShare = 0.25 + 0.5 * random.nextDouble();
        double warm = 0.18 * (random.nextDouble() - 0.35);
        lampColour = new double[] {1 + warm, 1, 1 - 1.3 * warm};
        skyColour = new double[] {1 - 0.5 * warm, 1, 1 + 0.6 * warm};
        exposure = 0.72 + 0.3 * random.nextDouble();
    }

    private void finish(Random random) {
        paper = 0.82 + 0.08 * random.nextDouble();
        double[] wood = WOODS[random.nextInt(WOODS.length)];
        double burnt = random.nextInt(3) == 0 ? 0.2 : 0.55 + 0.35 * random.nextDouble();
        board = new Finish(
                Finish.Kind.WOOD,
                java.util.Arrays.copyOf(wood, 3),
                java.util.Arrays.copyOfRange(wood, 3, 6),
                new double[] {wood[0] * burnt, wood[1] * burnt * 0.93, wood[2] * burnt * 0.86},
                random.nextInt(10_000));
        table = switch (random.nextInt(6)) {
            case 0 -> plain(Finish.Kind.TILES, random, 0.55, 0.54, 0.50);
            case 1 -> plain(Finish.Kind.CLOTH, random, 0.05, 0.06, 0.09);
            case 2 -> plain(Finish.Kind.PLAIN, random, 0.80, 0.80, 0.78);
            case 3 -> plain(Finish.Kind.PLAIN, random, 0.02, 0.02, 0.022);
            default -> {
                double[] other = WOODS[random.nextInt(WOODS.length)];
                yield new Finish(
                        Finish.Kind.WOOD,
                        java.util.Arrays.copyOf(other, 3),
                        java.util.Arrays.copyOfRange(other, 3, 6),
                        BEYOND_RED,
                        random.nextInt(10_000));
            }
        };
    }

    private static Finish plain(Finish.Kind kind, Random random, double r, double g, double b) {
        return new Finish(
                kind,
                new double[] {r, g, b},
                new double[] {r * 0.7, g * 0.7, b * 0.7},
                BEYOND_RED,
                random.nextInt(1000));
    }

    private void develop(Random random) {
        blur = 0.35 + 0.75 * random.nextDouble();
        photonNoise = 0.004 + 0.014 * random.nextDouble();
        readNoise = 0.001 + 0.003 * random.nextDouble();
        vignette = 0.6 * random.nextDouble();
        sharpen = random.nextInt(4) == 0 ? 0 : 0.2 + 0.7 * random.nextDouble();
        sharpenRadius = 0.7 + 0.9 * random.nextDouble();
        contrast = 0.25 * random.nextDouble();
        balance = new double[] {1 + 0.03 * random.nextGaussian(), 1, 1 + 0.03 * random.nextGaussian()};
        bayer = random.nextInt(4) != 0;
        quality = (float) (0.6 + 0.35 * random.nextDouble());
        int packing = random.nextInt(4);
        chromaAcross = packing == 0 ? 1 : 2;
        chromaDown = packing < 2 ? 1 : 2;
    }
}
