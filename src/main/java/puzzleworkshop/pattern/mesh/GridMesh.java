package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.edges.EdgeArtist;
import puzzleworkshop.pattern.edges.FreeArtist;
import puzzleworkshop.pattern.edges.SplitMix;

/**
 * Lays the mesh of a plain grid: its points, slightly off the straight rows so that no piece is like another, the
 * direction in which the lines run through each point, and the edges. A line across and a line down always meet at a
 * right angle.
 */
public final class GridMesh {

    private static final int POINTS = 2;
    private static final double POINT_SHIFT = 0.035;
    private static final double FREE_POINT_SHIFT = 0.075;
    private static final double KNOB_TURN = Math.toRadians(17);
    private static final double WAVE_TURN_LEAST = Math.toRadians(14);
    private static final double WAVE_TURN_MOST = Math.toRadians(36);

    public final Mesh mesh = new Mesh();
    private final double[] turn;
    private final GridPlaces places;
    private final PatternSpec spec;
    private final EdgeArtist artist;
    private final FreeArtist free;
    private final int columns;
    private final int rows;

    public GridMesh(PatternSpec spec) {
        this.spec = spec;
        this.artist = new EdgeArtist(spec);
        this.free = new FreeArtist(spec);
        this.columns = spec.grid().columns();
        this.rows = spec.grid().rows();
        this.places = new GridPlaces(spec);
        this.turn = new double[(columns + 1) * (rows + 1)];
        layPoints();
        layOutline();
        layLines();
    }

    int point(int row, int column) {
        return row * (columns + 1) + column;
    }

    /** Direction of the line across ({@code kind} 0) or down (1) through a point of the grid. */
    double[] direction(int point, int kind) {
        double cos = StrictMath.cos(turn[point]);
        double sin = StrictMath.sin(turn[point]);
        return kind == 0 ? new double[] {cos, sin} : new double[] {-sin, cos};
    }

    private void layPoints() {
        double shift = shift(
                spec.layout().isPlain()
                        ? Math.min(
                                spec.size().width().mm() / columns,
                                spec.size().height().mm() / rows)
                        : places.leastSideMm());
        double inset = spec.outline().kind() == PuzzleEdge.Kind.WAVY
                ? spec.outline().measure().mm()
                : 0;
        for (int row = 0; row <= rows; row++) {
            for (int column = 0; column <= columns; column++) {
                SplitMix random = SplitMix.of(spec.seed(), POINTS, row, column);
                double dx = random.around(0, shift);
                double dy = random.around(0, shift);
                boolean sideways = column == 0 || column == columns;
                boolean upright = row == 0 || row == rows;
                double x = places.x(column) + (sideways ? inset * (column == 0 ? 1 : -1) : upright ? dx / 2 : dx);
                double y = places.y(row) + (upright ? inset * (row == 0 ? 1 : -1) : sideways ? dy / 2 : dy);
                mesh.addPoint(Point.of(x, y));
                if (!sideways && !upright) {
                    turn[point(row, column)] = turn(random);
                }
            }
        }
    }

    private double shift(double side) {
        if (spec.isFirstDesign()) {
            return spec.style() == CutStyle.STRAIGHT ? 0 : POINT_SHIFT * side;
        }
        // where pieces are hardly larger than knobs need, the points stay nearer to their rows
        double spare = side - spec.limits().smallestKnobbedSide().mm();
        return Math.clamp(0.3 * spare, POINT_SHIFT * side, FREE_POINT_SHIFT * side);
    }

    private double turn(SplitMix random) {
        return switch (spec.style()) {
            case STRAIGHT -> 0;
            case KNOBS -> random.around(0, KNOB_TURN);
            case WAVY -> random.sign() * random.between(WAVE_TURN_LEAST, WAVE_TURN_MOST);
        };
    }

    /** Whether the edge from this point on, across (0) or down (1), is not cut: its cells are one piece. */
    boolean isJoined(int kind, int row, int column) {
        return places.isJoined(kind, row, column);
    }

    private void layLines() {
        for (int row = 1; row < rows; row++) {
            List<Mesh.Step> line = new ArrayList<>();
            for (int column = 0; column < columns; column++) {
                line = go(line, 0, row, column, point(row, column + 1));
            }
            end(line);
        }
        for (int column = 1; column < columns; column++) {
            List<Mesh.Step> line = new ArrayList<>();
            for (int row = 0; row < rows; row++) {
                line = go(line, 1, row, column, point(row + 1, column));
            }
            end(line);
        }
    }

    private List<Mesh.Step> go(List<Mesh.Step> line, int kind, int row, int column, int to) {
        if (isJoined(kind, row, column)) {
            end(line);
            return new ArrayList<>();
        }
        line.add(inner(kind, row, column, to));
        return line;
    }

    private void end(List<Mesh.Step> line) {
        if (!line.isEmpty()) {
            mesh.lines.add(line);
        }
    }

    private Mesh.Step inner(int kind, int row, int column, int to) {
        int from = point(row, column);
        Mesh.Edge edge = mesh.addEdge(from, to, Mesh.Kind.INNER);
        Point a = mesh.points.get(from);
        Point b = mesh.points.get(to);
        double[] leaving = direction(from, kind);
        double[] arriving = direction(to, kind);
        edge.draw(calm -> artist.draw(kind, row, column, a, b, leaving, arriving, calm), EdgeArtist.CALMEST);
        edge.varies((attempt, life) -> free.draw(kind, row, column, a, b, leaving, arriving, attempt, life));
        return new Mesh.Step(edge, false);
    }

    private void layOutline() {
        for (int column = 0; column < columns; column++) {
            outline(point(0, column), point(0, column + 1));
        }
        for (int row = 0; row < rows; row++) {
            outline(point(row, columns), point(row + 1, columns));
        }
        for (int column = columns; column > 0; column--) {
            outline(point(rows, column), point(rows, column - 1));
        }
        for (int row = rows; row > 0; row--) {
            outline(point(row, 0), point(row - 1, 0));
        }
        new OutlineArtist(spec, spec.layout().isPlain() ? sideOfPlain() : places.leastSideMm()).draw(mesh);
    }

    private double sideOfPlain() {
        return spec.grid().pieceSize(spec.size()).shorterSide().mm();
    }

    private void outline(int from, int to) {
        mesh.outline.add(new Mesh.Step(mesh.addEdge(from, to, Mesh.Kind.OUTLINE), false));
    }
}
