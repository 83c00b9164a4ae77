package puzzleworkshop.camera;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/** Photos of the pieces of a pattern lying apart on the measuring sheet, turned at random, picture down. */
public final class PieceScenes {

    private static final double GAP = 2.5;

    private PieceScenes() {}

    /** The edge of a piece as drawn, clockwise as seen from the picture side. */
    public static double[] ring(Piece piece) {
        List<Point> points = piece.outline().flattened(0.02);
        double[] ring = new double[2 * (points.size() - 1)];
        for (int i = 0; i < points.size() - 1; i++) {
            ring[2 * i] = points.get(i).xMm();
            ring[2 * i + 1] = points.get(i).yMm();
        }
        return ring;
    }

    /**
     * Lays as many of the pieces as there is room for on an A3 sheet, first ones first, and takes them off the list.
     *
     * @return the photo's scene
     */
    public static Scene lay(List<Piece> waiting, CutPattern pattern, Random random) {
        Scene scene = new Scene();
        scene.seed = random.nextLong(1_000_000);
        scene.sheet = MeasuringSheet.A3;
        scene.width = 4032;
        scene.height = 3024;
        scene.focal = 4032 * (0.7 + 0.2 * random.nextDouble());
        scene.centreU = 2016;
        scene.centreV = 1512;
        scene.k1 = 0.08 * (random.nextDouble() - 0.5);
        scene.k2 = 0.06 * (random.nextDouble() - 0.5);
        scene.frame(0, 0, 420, 297, 12 * random.nextDouble(), 2 * Math.PI * random.nextDouble(), 0.9);
        scene.light = new double[] {210 + 300 * random.nextGaussian(), 150 + 300 * random.nextGaussian(), -1300};
        scene.ambient = 0.4 + 0.3 * random.nextDouble();
        scene.penumbra = 0.05 + 0.3 * random.nextDouble();
        scene.noise = 0.006;
        List<Geometry> lying = new ArrayList<>();
        double kerf = pattern.spec().kerf().mm();
        double reach = waiting.stream()
                .mapToDouble(p -> Math.max(
                        p.outline().bounds().width(), p.outline().bounds().height()))
                .max()
                .orElse(30);
        int across = (int) Math.max(1, Math.floor(392 / (reach * 0.98)));
        int down = (int) Math.max(1, Math.floor(255 / (reach * 0.98)));
        List<int[]> spots = new ArrayList<>();
        for (int r = 0; r < down; r++) {
            for (int c = 0; c < across; c++) {
                spots.add(new int[] {c, r});
            }
        }
        Collections.shuffle(waiting, random);
        for (int[] spot : spots) {
            for (int attempt = 0; attempt < 60 && !waiting.isEmpty(); attempt++) {
                double x = 14 + 392 * (spot[0] + 0.5 + 0.12 * random.nextGaussian()) / across;
                double y = 16 + 255 * (spot[1] + 0.5 + 0.12 * random.nextGaussian()) / down;
                double[] ring = placed(waiting.getFirst(), 2 * Math.PI * random.nextDouble(), x, y);
                Geometry shape = OutlineError.polygon(ring).buffer(-kerf / 2);
                boolean free = shape.getEnvelopeInternal().getMinX() > 3
                        && shape.getEnvelopeInternal().getMinY() > 3
                        && shape.getEnvelopeInternal().getMaxX() < 417
                        && shape.getEnvelopeInternal().getMaxY() < 294
                        && lying.stream().noneMatch(other -> other.isWithinDistance(shape, GAP));
                if (free) {
                    lying.add(shape);
                    waiting.removeFirst();
                    scene.boards.add(board(shape, pattern, random));
                    break;
                }
            }
        }
        return scene;
    }

    private static Scene.Board board(Geometry shape, CutPattern pattern, Random random) {
        var corners = shape.getCoordinates();
        double[] ring = new double[2 * (corners.length - 1)];
        for (int i = 0; i < corners.length - 1; i++) {
            ring[2 * i] = corners[i].x;
            ring[2 * i + 1] = corners[i].y;
        }
        Scene.Board board =
                new Scene.Board(List.of(ring), pattern.spec().thickness().mm());
        board.wall = new double[] {0.12, 0.07, 0.04};
        board.grainAngle = Math.PI * random.nextDouble();
        board.seed = random.nextInt(1000);
        return board;
    }

    private static double[] placed(Piece piece, double angle, double x, double y) {
        double[] ring = ring(piece);
        double[] turned = new double[ring.length];
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
            // picture down: mirrored
            double px = -(ring[2 * i] - piece.centre().xMm());
            double py = ring[2 * i + 1] - piece.centre().yMm();
            turned[2 * i] = x + c * px - s * py;
            turned[2 * i + 1] = y + s * px + c * py;
        }
        return turned;
    }
}
