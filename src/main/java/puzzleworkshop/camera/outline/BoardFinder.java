package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.rings.Regions;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.SharpNotches;
import puzzleworkshop.camera.rings.StraightEdges;
import puzzleworkshop.camera.rings.Traces;
import puzzleworkshop.camera.sheet.MeasuringSheetFinder;
import puzzleworkshop.camera.sheet.SeenSheet;
import puzzleworkshop.camera.walls.DarkNotches;
import puzzleworkshop.camera.walls.Silhouette;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** Finds the outlines of boards in a photo with a measuring sheet: right, or a sentence that says what to do. */
public final class BoardFinder {

    /** Smaller things are crumbs, mm². */
    private static final double SMALLEST_BOARD = 350;

    /** Holes below this area are not worth a ring, mm². */
    private static final double SMALLEST_HOLE = 9;

    /** A board without colour must be darker than this, in spreads of white paper, or it may be a shadow. */
    private static final double DARKER_THAN_SHADOW = 40;

    private static final double FEWEST_CLEAR = 0.72;

    /** What a piece leaves of itself is no larger than this, in areas of the smallest crumb that counts. */
    private static final double LEFTOVER = 20;

    /** So small a share of an edge told by colour alone matters less. */
    private static final double SELDOM = 0.1;

    private final Photo photo;
    private final double thickness;
    private final double printScale;
    private final SeenSheet seen;
    private final BoardMask mask;
    private final SeenPart seenPart;
    private final List<FoundBoard> boards = new ArrayList<>();
    private final List<Sentence> leftOut = new ArrayList<>();

    private BoardFinder(Photo photo, double thickness, double printScale, double smallest, boolean pictures) {
        this.photo = photo;
        this.printScale = printScale;
        // everything is measured in units of the print and scaled at the end
        this.thickness = thickness / printScale;
        this.seen = MeasuringSheetFinder.find(photo);
        this.mask = new BoardMask(new Ground(photo, seen), smallest, pictures);
        this.seenPart = new SeenPart(mask);
    }

    /**
     * @param thicknessMm of the boards, 0 to 40
     * @param printScale length of the printed 100 mm line by the ruler, divided by 100
     * @throws Refused when there is no sheet or no board, or nothing is sure enough
     */
    public static FoundBoards find(Photo photo, double thicknessMm, double printScale) {
        requireSense(thicknessMm, printScale);
        return new BoardFinder(photo.reduced(), thicknessMm, printScale, SMALLEST_BOARD, false).found();
    }

    /**
     * The edges of everything that lies there, for pieces of a puzzle.
     *
     * @param smallestMm2 what is smaller is a crumb
     * @param largestMm2 what is larger is more than one thing
     * @throws Refused when there is no sheet, or nothing on it
     */
    public static SeenEdges edges(
            Photo photo, double thicknessMm, double printScale, double smallestMm2, double largestMm2) {
        requireSense(thicknessMm, printScale);
        return new BoardFinder(photo.reduced(), thicknessMm, printScale, smallestMm2, true)
                .edges(smallestMm2, largestMm2);
    }

    private static void requireSense(double thicknessMm, double printScale) {
        if (!(thicknessMm > 0 && thicknessMm <= 40)) {
            throw new Refused("camera.outline.thickness");
        }
        if (!(printScale > 0.9 && printScale < 1.1)) {
            throw new Refused("camera.sheet.scale");
        }
    }

    private SeenEdges edges(double smallestMm2, double largestMm2) {
        if (!mask.byColour
                && mask.apart < DARKER_THAN_SHADOW
                && !parts(smallestMm2).isEmpty()) {
            throw new Refused("camera.pieces.noedge");
        }
        return mask.varied ? pictures(smallestMm2, largestMm2) : backs(smallestMm2);
    }

    /** Outlines of what shows pictures are only laid in afterwards, so rough rings will do. */
    private SeenEdges pictures(double smallestMm2, double largestMm2) {
        List<int[]> lying = LyingThings.parts(mask, smallestMm2, largestMm2, false);
        List<double[]> rings = roughly(lying, leftOut);
        List<double[]> faint = roughly(LyingThings.parts(mask, smallestMm2, largestMm2, true), new ArrayList<>());
        requireSome(rings);
        Traces traces = Leftovers.of(mask, lying, 3 + 2 * thickness, LEFTOVER * smallestMm2);
        return new SeenEdges(rings, faint, leftOut, true, traces.scaled(printScale), top());
    }

    private List<double[]> roughly(List<int[]> parts, List<Sentence> refusals) {
        Silhouette silhouette = new Silhouette(seen.view(), thickness);
        List<double[]> rings = new ArrayList<>();
        for (int[] part : parts) {
            if (!isOnSheet(part)) {
                continue;
            }
            try {
                seenPart.requireWhole(part);
                int[] around = Regions.rings(part, mask.ground.columns, mask.ground.rows)
                        .getFirst();
                rings.add(scaled(silhouette.onBoard(Ring.smoothed(onPlane(around), 4))));
            } catch (Refused refused) {
                refusals.add(refused.sentence());
            }
        }
        return rings;
    }

    private SeenEdges backs(double smallestMm2) {
        Silhouette silhouette = new Silhouette(seen.view(), thickness);
        List<double[]> rings = new ArrayList<>();
        for (int[] part : parts(smallestMm2)) {
            if (!isOnSheet(part)) {
                continue;
            }
            try {
                seenPart.requireWhole(part);
                seenPart.requireNoGlare(part);
                int[] around = Regions.rings(part, mask.ground.columns, mask.ground.rows)
                        .getFirst();
                double[] edge = new EdgeSearch(photo, mask, silhouette)
                        .refined(onPlane(around))
                        .ring();
                rings.add(scaled(silhouette.onBoard(edge)));
            } catch (Refused refused) {
                leftOut.add(refused.sentence());
            }
        }
        requireSome(rings);
        return new SeenEdges(rings, List.of(), leftOut, false, Traces.NONE, top());
    }

    private TopView top() {
        return new TopView(photo, seen.view(), mask.paper, thickness, printScale);
    }

    private void requireSome(List<double[]> rings) {
        if (rings.isEmpty()) {
            throw new Refused(leftOut.isEmpty() ? Sentence.of("camera.outline.none") : leftOut.getFirst());
        }
    }

    private double[] scaled(double[] ring) {
        double[] scaled = ring.clone();
        for (int i = 0; i < ring.length; i++) {
            scaled[i] *= printScale;
        }
        return scaled;
    }

    private List<int[]> parts(double smallestMm2) {
        byte[] state = new byte[mask.board.length];
        for (int i = 0; i < state.length; i++) {
            state[i] = (byte) (mask.board[i] ? 1 : 0);
        }
        int smallest = (int) (smallestMm2 / (Ground.STEP * Ground.STEP));
        return Regions.parts(state, mask.ground.columns, mask.ground.rows, smallest);
    }

    private FoundBoards found() {
        for (int[] part : parts(SMALLEST_BOARD)) {
            if (isOnSheet(part)) {
                try {
                    boards.add(board(part));
                } catch (Refused refused) {
                    leftOut.add(refused.sentence());
                }
            }
        }
        if (boards.isEmpty()) {
            throw new Refused(leftOut.isEmpty() ? Sentence.of("camera.outline.none") : leftOut.getFirst());
        }
        boards.sort((a, b) -> Double.compare(area(b), area(a)));
        return new FoundBoards(boards, leftOut, seen);
    }

    private static double area(FoundBoard board) {
        double[] ring = new double[2 * board.outer().size()];
        for (int i = 0; i < board.outer().size(); i++) {
            ring[2 * i] = board.outer().get(i).xMm();
            ring[2 * i + 1] = board.outer().get(i).yMm();
        }
        return Ring.area(ring);
    }

    private boolean isOnSheet(int[] part) {
        if (seen.sheet().parts() > 1) {
            return true;
        }
        int inside = 0;
        for (int cell : part) {
            inside += mask.ground.isOnSheet(mask.ground.x(cell), mask.ground.y(cell)) ? 1 : 0;
        }
        return inside > 0.3 * part.length;
    }

    private FoundBoard board(int[] part) {
        seenPart.requireWhole(part);
        seenPart.requireFace(part, thickness);
        if (!mask.byColour && mask.apart < DARKER_THAN_SHADOW) {
            throw new Refused("camera.outline.grey");
        }
        seenPart.requireNoGlare(part);
        List<int[]> rings = Regions.rings(part, mask.ground.columns, mask.ground.rows);
        Silhouette silhouette = new Silhouette(seen.view(), thickness);
        EdgeSearch search = new EdgeSearch(photo, mask, silhouette);
        EdgeSearch.Edge byColour = search.refined(onPlane(rings.getFirst()));
        if (byColour.clear() < FEWEST_CLEAR) {
            throw new Refused("camera.outline.noedge");
        }
        FineEdge.Edge fine = new FineEdge(photo, mask, search).refined(byColour.ring());
        seenPart.requireOneColour(fine.ring(), silhouette);
        FaceEdge.Edge face = new FaceEdge(photo, mask, thickness).proven(silhouette.onBoard(fine.ring()));
        double[] open = DarkNotches.leftOut(face.ring(), photo, seen.view(), thickness);
        double[] top = SharpNotches.followed(open, silhouette::hidden);
        double doubt = doubt(fine, byColour.clear()) + face.doubt();
        StraightEdges edges = new StraightEdges(top, doubt);
        List<List<Point>> holes = new ArrayList<>();
        for (int[] hole : rings.subList(1, rings.size())) {
            double[] ring = onPlane(hole);
            if (-Ring.area(ring) > SMALLEST_HOLE) {
                double[] refined = Ring.length(ring) > 25 ? search.refined(ring).ring() : Ring.smoothed(ring, 3);
                holes.add(spots(new StraightEdges(silhouette.onBoard(refined), doubt).polygon()));
            }
        }
        return new FoundBoard(
                spots(edges.polygon()),
                holes,
                doubt * printScale,
                edges.straight,
                edges.squared,
                edges.squaredWithin * printScale,
                thickness * printScale);
    }

    /** Lens and view, flatness of paper and board, and how clear the edge is; twice the deviation, by common practice. */
    private double doubt(FineEdge.Edge fine, double clear) {
        double[] ring = fine.ring();
        double[] uv = new double[2];
        double view = 0;
        double scale = Double.MAX_VALUE;
        int n = Ring.size(ring);
        for (int i = 0; i < n; i += Math.max(1, n / 16)) {
            if (seen.view().project(ring[2 * i], ring[2 * i + 1], -thickness, uv)) {
                view = Math.max(view, seen.doubt().at(uv[0], uv[1], -thickness));
                scale = Math.min(scale, seen.view().pixelsPerMm(ring[2 * i], ring[2 * i + 1]));
            }
        }
        double flat = 0.2;
        double edge = 0.8 / scale + 0.6 * (1 - clear);
        // where only colour tells the edge, it strays as far as it is seen to stray where brightness tells it too
        double colour = fine.strays() * Math.min(1, (1 - fine.seen()) / SELDOM);
        return flat
                + Math.sqrt(4 * view * view + edge * edge + colour * colour + Math.pow(2 * seen.residual() / scale, 2));
    }

    private double[] onPlane(int[] ring) {
        double[] plane = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            plane[i] = mask.ground.left + ring[i] * Ground.STEP;
            plane[i + 1] = mask.ground.top + ring[i + 1] * Ground.STEP;
        }
        return plane;
    }

    private List<Point> spots(double[] ring) {
        List<Point> spots = new ArrayList<>();
        for (int i = 0; i < ring.length; i += 2) {
            spots.add(new Point(ring[i] * printScale, ring[i + 1] * printScale));
        }
        return spots;
    }
}
