package puzzleworkshop.camera;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.camera.sheet.MeasuringSheet;

/** Photos as people take them: one board on a sheet, seen from somewhere above, in whatever light there is. */
public final class RandomScenes {

    /** Light that woods throw back, red, green, blue (linear), by eye. */
    private static final double[][] WOODS = {
        {0.76, 0.62, 0.42},
        {0.70, 0.52, 0.30},
        {0.55, 0.38, 0.20},
        {0.24, 0.14, 0.075},
        {0.42, 0.28, 0.15},
        {0.80, 0.69, 0.52},
        {0.62, 0.47, 0.31},
        {0.36, 0.19, 0.10}
    };

    private static final double[][] TABLES = {
        {0.16, 0.09, 0.05},
        {0.45, 0.30, 0.16},
        {0.25, 0.25, 0.26},
        {0.03, 0.03, 0.035},
        {0.60, 0.58, 0.55},
        {0.10, 0.16, 0.12}
    };

    private RandomScenes() {}

    public static Scene next(Random random, MeasuringSheet sheet) {
        Scene scene = new Scene();
        scene.seed = random.nextLong(1_000_000);
        scene.sheet = sheet;
        boolean upright = random.nextInt(4) == 0;
        scene.width = upright ? 3024 : 4032;
        scene.height = upright ? 4032 : 3024;
        double longer = 4032;
        scene.focal = longer * (0.68 + 0.27 * random.nextDouble());
        scene.centreU = scene.width / 2.0 + 12 * random.nextGaussian();
        scene.centreV = scene.height / 2.0 + 12 * random.nextGaussian();
        scene.k1 = 0.12 * (random.nextDouble() - 0.5);
        scene.k2 = 0.10 * (random.nextDouble() - 0.5);
        scene.p1 = 0.001 * random.nextGaussian();
        scene.p2 = 0.001 * random.nextGaussian();
        double w = sheet.width();
        double h = sheet.height();
        boolean turned = upright != h > w;
        scene.frame(
                0,
                0,
                turned ? h : w,
                turned ? w : h,
                30 * random.nextDouble(),
                2 * Math.PI * random.nextDouble(),
                0.88);
        double[] eye = scene.eye;
        scene.eye = new double[] {eye[0] - (turned ? h : w) / 2 + w / 2, eye[1] - (turned ? w : h) / 2 + h / 2, eye[2]};
        scene.looksAt = new double[] {w / 2, h / 2, 0};
        scene.roll = (turned ? Math.PI / 2 : 0) + 0.12 * random.nextGaussian() + (random.nextBoolean() ? Math.PI : 0);
        double[] table = TABLES[random.nextInt(TABLES.length)];
        scene.table = table.clone();
        scene.tableGrain = 0.05 + 0.3 * random.nextDouble();
        scene.light = new double[] {
            w / 2 + 500 * random.nextGaussian(), h / 2 + 500 * random.nextGaussian(), -600 - 1400 * random.nextDouble()
        };
        scene.ambient = 0.3 + 0.4 * random.nextDouble();
        scene.penumbra = 0.03 + 0.4 * random.nextDouble();
        double warm = 0.08 * (random.nextDouble() - 0.4);
        scene.lightColour = new double[] {1 + warm, 1, 1 - warm};
        scene.ambientColour = new double[] {1 - warm, 1, 1 + warm};
        scene.exposure = 0.75 + 0.35 * random.nextDouble();
        scene.blur = 0.5 + 0.9 * random.nextDouble();
        scene.noise = 0.004 + 0.012 * random.nextDouble();
        scene.vignette = 0.4 * random.nextDouble();
        scene.jpeg = (float) (0.75 + 0.2 * random.nextDouble());
        double room = random.nextInt(3) == 0 ? 6 : 20;
        double[] outline = outline(random, w - 2 * room, h - 2 * room);
        for (int i = 0; i < outline.length; i += 2) {
            outline[i] += room;
            outline[i + 1] += room;
        }
        Scene.Board board = new Scene.Board(List.of(outline), thickness(random));
        double[] wood = WOODS[random.nextInt(WOODS.length)];
        board.colour = wood.clone();
        double burnt = random.nextInt(3) == 0 ? 0.25 : 0.75;
        board.wall = new double[] {wood[0] * burnt, wood[1] * burnt * 0.92, wood[2] * burnt * 0.85};
        board.grain = 0.03 + 0.15 * random.nextDouble();
        board.grainAngle = Math.PI * random.nextDouble();
        board.seed = random.nextInt(10_000);
        scene.boards.add(board);
        return scene;
    }

    private static double thickness(Random random) {
        double[] usual = {2, 3, 3, 4, 5, 6, 9, 12};
        return usual[random.nextInt(usual.length)];
    }

    /** An offcut within a box, clockwise as seen. */
    public static double[] outline(Random random, double boxW, double boxH) {
        double w = boxW * (0.35 + 0.6 * random.nextDouble());
        double h = boxH * (0.35 + 0.6 * random.nextDouble());
        List<double[]> points = new ArrayList<>();
        switch (random.nextInt(5)) {
            case 0 -> add(points, 0, 0, w, 0, w, h, 0, h);
            case 1 -> {
                double a = w * (0.3 + 0.4 * random.nextDouble());
                double b = h * (0.3 + 0.4 * random.nextDouble());
                add(points, 0, 0, w, 0, w, b, a, b, a, h, 0, h);
            }
            case 2 -> {
                // a bay, as a laser leaves it
                double a = w * (0.2 + 0.2 * random.nextDouble());
                double c = w * (0.2 + 0.2 * random.nextDouble());
                double b = h * (0.3 + 0.4 * random.nextDouble());
                add(points, 0, 0, a, 0, a, b, w - c, b, w - c, 0, w, 0, w, h, 0, h);
            }
            case 3 -> {
                int n = 5 + random.nextInt(6);
                for (int i = 0; i < n; i++) {
                    double angle = 2 * Math.PI * (i + 0.6 * random.nextDouble()) / n;
                    double far = 0.7 + 0.3 * random.nextDouble();
                    points.add(
                            new double[] {w / 2 + w / 2 * far * Math.cos(angle), h / 2 + h / 2 * far * Math.sin(angle)
                            });
                }
            }
            default -> {
                // a straight edge, a curved one, a broken one
                add(points, 0, h * 0.1, w * 0.55, 0);
                for (int i = 1; i <= 24; i++) {
                    double t = i / 24.0;
                    points.add(new double[] {
                        w * (0.55 + 0.45 * Math.sin(t * Math.PI / 2)), h * 0.9 * (1 - Math.cos(t * Math.PI / 2))
                    });
                }
                for (int i = 1; i < 14; i++) {
                    points.add(new double[] {w * (1 - i / 14.0), h * (0.9 + 0.1 * random.nextDouble())});
                }
                add(points, 0, h * 0.95);
            }
        }
        double angle = random.nextInt(3) == 0 ? 0 : 2 * Math.PI * random.nextDouble();
        return placed(points, angle, boxW, boxH, random);
    }

    private static void add(List<double[]> points, double... xy) {
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new double[] {xy[i], xy[i + 1]});
        }
    }

    private static double[] placed(List<double[]> points, double angle, double boxW, double boxH, Random random) {
        double minX = Double.MAX_VALUE;
        double minY = Double.MAX_VALUE;
        double maxX = -Double.MAX_VALUE;
        double maxY = -Double.MAX_VALUE;
        double[] ring = new double[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            double x = Math.cos(angle) * points.get(i)[0] - Math.sin(angle) * points.get(i)[1];
            double y = Math.sin(angle) * points.get(i)[0] + Math.cos(angle) * points.get(i)[1];
            ring[2 * i] = x;
            ring[2 * i + 1] = y;
            minX = Math.min(minX, x);
            minY = Math.min(minY, y);
            maxX = Math.max(maxX, x);
            maxY = Math.max(maxY, y);
        }
        double scale = Math.min(1, Math.min(boxW / (maxX - minX), boxH / (maxY - minY)));
        double dx = (boxW - scale * (maxX - minX)) * random.nextDouble();
        double dy = (boxH - scale * (maxY - minY)) * random.nextDouble();
        for (int i = 0; i < ring.length; i += 2) {
            ring[i] = (ring[i] - minX) * scale + dx;
            ring[i + 1] = (ring[i + 1] - minY) * scale + dy;
        }
        return ring;
    }
}
