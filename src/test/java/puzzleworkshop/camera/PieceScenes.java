package puzzleworkshop.camera;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.camera.pieces.PieceShape;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/** Photos of the pieces of a pattern lying apart on the measuring sheet, turned at random. */
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

    /** The edges of a pattern's pieces as the beam leaves them, half a kerf inside of the drawn lines. */
    public static List<PieceShape> shapes(CutPattern pattern) {
        double kerf = pattern.spec().kerf().mm();
        return pattern.pieces().stream()
                .map(piece -> new PieceShape(
                        piece.number(),
                        clockwise(OutlineError.polygon(ring(piece)).buffer(-kerf / 2))))
                .toList();
    }

    /**
     * How pieces lie.
     *
     * @param sheet on it; on {@link MeasuringSheet#CARDS} the pieces lie on a cloth with cards to both sides
     * @param pixels of the longer side of the photo
     * @param picture what the puzzle shows, by place on it; null: picture down
     * @param cloth light that it throws back, where there are cards
     * @param width of the field where pieces lie, mm
     */
    public record Laying(
            MeasuringSheet sheet, int pixels, Scene.Face picture, double[] cloth, double width, double height) {

        static final Laying ON_A3 = onSheet(MeasuringSheet.A3, 4032, null);

        public static Laying onSheet(MeasuringSheet sheet, int pixels, Scene.Face picture) {
            return new Laying(sheet, pixels, picture, null, sheet.width(), sheet.height());
        }

        /** Between four cards. */
        public static Laying onCloth(int pixels, double[] cloth, Scene.Face picture) {
            return new Laying(MeasuringSheet.CARDS, pixels, picture, cloth, 330, 270);
        }

        /** A small field between two of the cards. */
        public static Laying betweenTwoCards(int pixels, double[] cloth, Scene.Face picture) {
            return new Laying(MeasuringSheet.CARDS, pixels, picture, cloth, 235, 190);
        }

        private boolean isOnCloth() {
            return sheet == MeasuringSheet.CARDS;
        }

        private boolean isUpright() {
            return height > width;
        }
    }

    /** Lays as many of the pieces as there is room for on an A3 sheet, picture down; see the other one. */
    public static Scene lay(List<Piece> waiting, CutPattern pattern, Random random) {
        return lay(waiting, pattern, random, Laying.ON_A3);
    }

    /**
     * Lays as many of the pieces as there is room for, first ones first, and takes them off the list.
     *
     * @return the photo's scene
     */
    public static Scene lay(List<Piece> waiting, CutPattern pattern, Random random, Laying laying) {
        Scene scene = scene(random, laying);
        double width = laying.width();
        double height = laying.height();
        List<Geometry> lying = new ArrayList<>();
        double kerf = pattern.spec().kerf().mm();
        double reach = waiting.stream()
                .mapToDouble(p -> Math.max(
                        p.outline().bounds().width(), p.outline().bounds().height()))
                .max()
                .orElse(30);
        int across = (int) Math.max(1, Math.floor((width - 28) / (reach * 0.98)));
        int down = (int) Math.max(1, Math.floor((height - 42) / (reach * 0.98)));
        List<int[]> spots = new ArrayList<>();
        for (int r = 0; r < down; r++) {
            for (int c = 0; c < across; c++) {
                spots.add(new int[] {c, r});
            }
        }
        Collections.shuffle(waiting, random);
        for (int[] spot : spots) {
            for (int attempt = 0; attempt < 60 && !waiting.isEmpty(); attempt++) {
                double x = 14 + (width - 28) * (spot[0] + 0.5 + 0.12 * random.nextGaussian()) / across;
                double y = 16 + (height - 42) * (spot[1] + 0.5 + 0.12 * random.nextGaussian()) / down;
                Place place = new Place(waiting.getFirst(), 2 * Math.PI * random.nextDouble(), x, y, laying.picture());
                Geometry shape = OutlineError.polygon(place.ring()).buffer(-kerf / 2);
                boolean free = shape.getEnvelopeInternal().getMinX() > 3
                        && shape.getEnvelopeInternal().getMinY() > 3
                        && shape.getEnvelopeInternal().getMaxX() < width - 3
                        && shape.getEnvelopeInternal().getMaxY() < height - 3
                        && lying.stream().noneMatch(other -> other.isWithinDistance(shape, GAP));
                if (free) {
                    lying.add(shape);
                    waiting.removeFirst();
                    scene.boards.add(board(shape, pattern, random, place));
                    break;
                }
            }
        }
        return scene;
    }

    private static Scene scene(Random random, Laying laying) {
        Scene scene = new Scene();
        scene.seed = random.nextLong(1_000_000);
        scene.sheet = laying.sheet();
        scene.width = laying.pixels();
        scene.height = laying.pixels() * 3 / 4;
        scene.focal = scene.width * (0.7 + 0.2 * random.nextDouble());
        scene.centreU = scene.width / 2.0;
        scene.centreV = scene.height / 2.0;
        scene.k1 = 0.08 * (random.nextDouble() - 0.5);
        scene.k2 = 0.06 * (random.nextDouble() - 0.5);
        double width = laying.width();
        double height = laying.height();
        double beside = laying.isOnCloth() ? 110 : 0;
        // the camera is turned with an upright sheet
        double turned = laying.isUpright() ? (height - width) / 2 : 0;
        scene.roll = laying.isUpright() ? Math.PI / 2 : 0;
        scene.frame(
                -beside - turned,
                turned,
                width + 2 * (beside + turned),
                height - 2 * turned,
                12 * random.nextDouble(),
                2 * Math.PI * random.nextDouble(),
                laying.isOnCloth() ? 0.86 : 0.9);
        scene.light = new double[] {210 + 300 * random.nextGaussian(), 150 + 300 * random.nextGaussian(), -1300};
        scene.ambient = 0.4 + 0.3 * random.nextDouble();
        scene.penumbra = 0.05 + 0.3 * random.nextDouble();
        scene.noise = 0.006;
        if (laying.isOnCloth()) {
            scene.table = laying.cloth().clone();
            scene.tableGrain = 0.1;
            boolean two = height < 2 * MeasuringSheet.CARDS.height();
            double down = two ? height / 2 - 65 : -2;
            scene.cards.add(new Scene.LaidCard(0, -103, down, 0.04));
            scene.cards.add(new Scene.LaidCard(1, width + 13, down + 5, -0.03));
            if (!two) {
                scene.cards.add(new Scene.LaidCard(2, -100, 138, -0.05));
                scene.cards.add(new Scene.LaidCard(3, width + 10, 140, 0.02));
            }
        }
        return scene;
    }

    private static double[] clockwise(Geometry shape) {
        var corners = shape.getCoordinates();
        int n = corners.length - 1;
        boolean turn = Orientation.isCCW(corners);
        double[] ring = new double[2 * n];
        for (int i = 0; i < n; i++) {
            // counterclockwise with y upwards is clockwise as seen with y down
            var corner = corners[turn ? i : n - i];
            ring[2 * i] = corner.x;
            ring[2 * i + 1] = corner.y;
        }
        return ring;
    }

    private static Scene.Board board(Geometry shape, CutPattern pattern, Random random, Place place) {
        Scene.Board board = new Scene.Board(
                List.of(clockwise(shape)), pattern.spec().thickness().mm());
        board.wall = new double[] {0.12, 0.07, 0.04};
        board.grainAngle = Math.PI * random.nextDouble();
        board.seed = random.nextInt(1000);
        board.face = place.picture == null ? null : place::picture;
        return board;
    }

    /** Where a piece lies, turned; mirrored where its picture is down. */
    private record Place(Piece piece, double angle, double x, double y, Scene.Face picture) {

        double[] ring() {
            double[] ring = PieceScenes.ring(piece);
            double[] turned = new double[ring.length];
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            double flip = picture == null ? -1 : 1;
            for (int i = 0; i < ring.length; i += 2) {
                double px = flip * (ring[i] - piece.centre().xMm());
                double py = ring[i + 1] - piece.centre().yMm();
                turned[i] = x + c * px - s * py;
                turned[i + 1] = y + s * px + c * py;
            }
            return turned;
        }

        double[] picture(double atX, double atY) {
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            return picture.at(
                    piece.centre().xMm() + c * (atX - x) + s * (atY - y),
                    piece.centre().yMm() - s * (atX - x) + c * (atY - y));
        }
    }
}
