package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.pattern.Piece;

/**
 * Reads the pieces off a mesh: at every point the edges are ordered by the direction in which they leave it; turning
 * always into the next one walks once around each face. The face outside of everything is walked the other way round
 * and left out.
 */
public final class Faces {

    private record Face(CurvePath outline, double area, Point centre, boolean atEdge, String shape) {}

    private static final double FLATTENING_MM = 0.02;

    private final Mesh mesh;
    private final List<List<Mesh.Step>> leaving = new ArrayList<>();

    private Faces(Mesh mesh) {
        this.mesh = mesh;
        for (int i = 0; i < mesh.points.size(); i++) {
            leaving.add(new ArrayList<>(4));
        }
        for (Mesh.Edge edge : mesh.edges) {
            leaving.get(edge.from).add(new Mesh.Step(edge, false));
            leaving.get(edge.to).add(new Mesh.Step(edge, true));
        }
        for (List<Mesh.Step> steps : leaving) {
            steps.sort(Comparator.comparingDouble(Faces::direction));
        }
    }

    /** The pieces in reading order. @param rowHeightMm what counts as one row */
    public static List<Piece> of(Mesh mesh, double rowHeightMm) {
        List<Face> faces = new Faces(mesh).walkAll();
        faces.sort(Comparator.<Face>comparingInt(
                        face -> (int) Math.floor(face.centre().yMm() / rowHeightMm))
                .thenComparingDouble(face -> face.centre().xMm()));
        List<Piece> pieces = new ArrayList<>(faces.size());
        for (Face face : faces) {
            pieces.add(new Piece(
                    pieces.size() + 1, face.outline(), face.area(), face.centre(), face.atEdge(), face.shape()));
        }
        return List.copyOf(pieces);
    }

    /** Ordinary pieces below an area, as the edges around them: too small to hold. */
    static List<List<Mesh.Step>> smallerThan(Mesh mesh, double areaMm2) {
        Faces faces = new Faces(mesh);
        List<List<Mesh.Step>> small = new ArrayList<>();
        for (List<Mesh.Step> around : faces.arounds()) {
            double area = Mesh.join(around, true).signedAreaMm2();
            if (area > 0 && area < areaMm2 && around.stream().anyMatch(step -> step.edge().kind != Mesh.Kind.SHAPE)) {
                small.add(around);
            }
        }
        return small;
    }

    private List<Face> walkAll() {
        List<Face> faces = new ArrayList<>();
        for (List<Mesh.Step> around : arounds()) {
            Face face = face(around);
            if (face.area() > 0) {
                faces.add(face);
            }
        }
        return faces;
    }

    private List<List<Mesh.Step>> arounds() {
        boolean[] walkedForwards = new boolean[mesh.edges.size()];
        boolean[] walkedBackwards = new boolean[mesh.edges.size()];
        List<List<Mesh.Step>> arounds = new ArrayList<>();
        for (Mesh.Edge edge : mesh.edges) {
            for (boolean backwards : new boolean[] {false, true}) {
                if (!(backwards ? walkedBackwards : walkedForwards)[edge.id]) {
                    List<Mesh.Step> around = walk(new Mesh.Step(edge, backwards));
                    for (Mesh.Step step : around) {
                        (step.backwards() ? walkedBackwards : walkedForwards)[step.edge().id] = true;
                    }
                    arounds.add(around);
                }
            }
        }
        return arounds;
    }

    private List<Mesh.Step> walk(Mesh.Step first) {
        List<Mesh.Step> around = new ArrayList<>(4);
        Mesh.Step step = first;
        do {
            around.add(step);
            List<Mesh.Step> ways = leaving.get(step.end());
            int back = ways.indexOf(new Mesh.Step(step.edge(), !step.backwards()));
            step = ways.get((back + ways.size() - 1) % ways.size());
        } while (!step.equals(first));
        return around;
    }

    private Face face(List<Mesh.Step> around) {
        CurvePath outline = Mesh.join(around, true);
        List<Point> points = outline.flattened(FLATTENING_MM);
        Point origin = points.getFirst();
        double doubled = 0;
        double x = 0;
        double y = 0;
        for (int i = 1; i < points.size(); i++) {
            double px = points.get(i - 1).xMm() - origin.xMm();
            double py = points.get(i - 1).yMm() - origin.yMm();
            double qx = points.get(i).xMm() - origin.xMm();
            double qy = points.get(i).yMm() - origin.yMm();
            double part = px * qy - qx * py;
            doubled += part;
            x += (px + qx) * part;
            y += (py + qy) * part;
        }
        Point centre = doubled == 0 ? origin : origin.plus(x / (3 * doubled), y / (3 * doubled));
        boolean atEdge = around.stream().anyMatch(step -> step.edge().kind == Mesh.Kind.OUTLINE);
        // a face with nothing but edges of one personal shape is that shape
        boolean personal = around.stream().allMatch(step -> step.edge().kind == Mesh.Kind.SHAPE);
        String shape = personal ? mesh.shapeNames.getOrDefault(around.getFirst().edge().id, "") : "";
        return new Face(outline, outline.signedAreaMm2(), centre, atEdge, shape);
    }

    /** Angle in which a step leaves its point, clockwise as seen; a handle on top of the point is looked past. */
    private static double direction(Mesh.Step step) {
        CurvePath path = step.path();
        Point start = path.start();
        Point towards = switch (path.segments().getFirst()) {
            case Segment.Line line -> line.to();
            case Segment.Cubic cubic ->
                !cubic.control1().equals(start)
                        ? cubic.control1()
                        : !cubic.control2().equals(start) ? cubic.control2() : cubic.to();
        };
        return StrictMath.atan2(towards.yMm() - start.yMm(), towards.xMm() - start.xMm());
    }
}
