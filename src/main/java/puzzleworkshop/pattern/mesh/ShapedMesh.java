package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.edges.EdgeArtist;
import puzzleworkshop.pattern.edges.FreeArtist;
import puzzleworkshop.pattern.edges.SplitMix;

/**
 * Makes room for personal shapes in a plain grid, and for an outer edge that is a curve: all beyond it counts as a shape. Points of the grid inside or close to a shape go; lines that led to
 * them end on the shape's outline instead, squarely where possible; edges that run close by keep their knob only where
 * there is room. Where a piece would become a sliver, a line between it and its neighbour goes as well.
 */
public final class ShapedMesh {

    private static final double CLOSE = 0.2;
    private static final double SLIVER = 0.35;
    private static final int MOST_TRIES = 24;
    /** Stream of random numbers of its own: 2 and 3 are the grid's. */
    private static final int BENDS = 9;
    /** What is hardly bent can hardly be told apart. */
    private static final double LEAST_BENT = 0.8;

    /** A line's end on a shape: which line of the grid, which of its steps, and from which end of the step. */
    private record Stub(int line, int step, boolean fromEnd) {}

    private final PatternSpec spec;
    private final GridMesh grid;
    private final EdgeArtist artist;
    private final FreeArtist free;
    private final double unit;
    private final double limit;
    private final Set<Stub> leftOut;
    private final Mesh mesh = new Mesh();
    private final List<ShapeRing> rings = new ArrayList<>();
    private final Map<Integer, Stub> stubs = new HashMap<>();
    private final Map<Integer, Stub> wholes = new HashMap<>();
    private final Map<ShapeRing, List<Integer>> endsOnRing = new HashMap<>();
    /** The outer edge, where it is a curve. */
    private final Optional<ShapeRing> outer;

    private ShapedMesh(PatternSpec spec, GridMesh grid, Set<Stub> leftOut) {
        this.spec = spec;
        this.grid = grid;
        this.artist = new EdgeArtist(spec);
        this.free = new FreeArtist(spec);
        this.unit = spec.grid().pieceSize(spec.size()).shorterSide().mm();
        this.limit = spec.limits().closestLinesMm();
        this.leftOut = leftOut;
        this.outer = spec.outline().isCurved()
                ? Optional.of(ShapeRing.around(spec.outline().curve(spec.size()), spec.size()))
                : Optional.empty();
    }

    /** @throws Refused when a shape crosses itself, lies too close to the edge or another, or leaves no way around */
    public static Mesh of(PatternSpec spec, GridMesh grid) {
        Set<Stub> leftOut = new HashSet<>();
        double sliver = SLIVER * spec.grid().pieceSize(spec.size()).area().mm2();
        for (int i = 0; i < MOST_TRIES; i++) {
            ShapedMesh tried = new ShapedMesh(spec, grid, leftOut);
            tried.build();
            boolean mended = spec.outline().isCurved()
                    || !spec.layout().isPlain()
                    || spec.shapes().stream().anyMatch(PersonalShape::divided);
            if (mended && tried.leaveOutLooseEnds(leftOut)) {
                continue;
            }
            List<List<Mesh.Step>> slivers = Faces.smallerThan(tried.mesh, sliver);
            if (slivers.isEmpty()) {
                return tried.mesh;
            }
            if (!(mended ? tried.leaveOutOneEach(slivers, leftOut) : tried.leaveOutOne(slivers, leftOut))) {
                break;
            }
        }
        throw spec.shapes().isEmpty()
                ? new Refused("pattern.outline.no_room", spec.grid().pieces())
                : new Refused("pattern.shape.no_room", spec.shapes().getFirst().name());
    }

    /** Chooses a line between a sliver and its neighbour to go; false when it has none that may. */
    private boolean leaveOutOne(List<List<Mesh.Step>> slivers, Set<Stub> leaveOut) {
        return slivers.stream()
                .flatMap(List::stream)
                .map(step -> stubs.get(step.edge().id))
                .filter(stub -> stub != null)
                .findFirst()
                .map(leaveOut::add)
                .orElse(false);
    }

    /** The same for each sliver at once: along a curved edge there are many. */
    private boolean leaveOutOneEach(List<List<Mesh.Step>> slivers, Set<Stub> leaveOut) {
        boolean some = false;
        for (List<Mesh.Step> around : slivers) {
            boolean mended =
                    around.stream().map(step -> stubs.get(step.edge().id)).anyMatch(leaveOut::contains);
            if (!mended) {
                some |= leaveOutOne(List.of(around), leaveOut);
            } else {
                some = true;
            }
        }
        return some;
    }

    /** A line that ends in the open goes as well; false when there is none. */
    private boolean leaveOutLooseEnds(Set<Stub> leaveOut) {
        int[] met = new int[mesh.points.size()];
        mesh.edges.forEach(edge -> {
            met[edge.from]++;
            met[edge.to]++;
        });
        boolean some = false;
        for (Mesh.Edge edge : mesh.edges) {
            Stub line = stubs.getOrDefault(edge.id, wholes.get(edge.id));
            if (line != null && (met[edge.from] == 1 || met[edge.to] == 1)) {
                some |= leaveOut.add(line);
            }
        }
        return some;
    }

    private void build() {
        spec.shapes().forEach(shape -> rings.add(new ShapeRing(shape)));
        requireRoom();
        outer.ifPresent(rings::add);
        mesh.points.addAll(grid.mesh.points);
        if (outer.isEmpty()) {
            for (Mesh.Step step : grid.mesh.outline) {
                Mesh.Edge edge = mesh.addEdge(step.edge().from, step.edge().to, Mesh.Kind.OUTLINE);
                edge.draw(step.edge().path());
                mesh.outline.add(new Mesh.Step(edge, false));
            }
        }
        int rows = spec.grid().rows();
        int columns = spec.grid().columns();
        int line = 0;
        for (int row = 1; row < rows; row++) {
            layLine(line++, 0, row, columns);
        }
        for (int column = 1; column < columns; column++) {
            layLine(line++, 1, column, rows);
        }
        rings.forEach(this::layRing);
    }

    private void requireRoom() {
        double edge =
                Math.max(2 * limit, CLOSE * unit) + spec.outline().measure().mm();
        Bounds inside =
                new Bounds(0, 0, spec.size().width().mm(), spec.size().height().mm());
        for (int i = 0; i < rings.size(); i++) {
            ShapeRing ring = rings.get(i);
            if (!inside.holds(ring.outline.bounds().grownBy(edge))
                    || outer.filter(around -> around.polygon.distance(ring.polygon) < edge)
                            .isPresent()) {
                throw new Refused("pattern.shape.at_edge", ring.name);
            }
            for (ShapeRing other : rings.subList(0, i)) {
                if (ring.polygon.distance(other.polygon) < unit) {
                    throw new Refused("pattern.shape.too_close", ring.name, other.name);
                }
            }
        }
    }

    private ShapeRing swallows(int point) {
        double close = Math.max(2.2 * limit, CLOSE * unit);
        return rings.stream()
                .filter(ring -> ring.distanceTo(mesh.points.get(point)) < close)
                .findFirst()
                .orElse(null);
    }

    /** @param number row of a line across, column of a line down */
    private void layLine(int line, int kind, int number, int steps) {
        List<Mesh.Step> run = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            int row = kind == 0 ? number : i;
            int column = kind == 0 ? i : number;
            int from = grid.point(row, column);
            int to = kind == 0 ? grid.point(row, column + 1) : grid.point(row + 1, column);
            if (grid.isJoined(kind, row, column)) {
                end(run);
                run.clear();
                continue;
            }
            ShapeRing atFrom = swallows(from);
            ShapeRing atTo = swallows(to);
            ShapeRing between = rings.stream()
                    .filter(ring -> ring.isCrossedBy(mesh.points.get(from), mesh.points.get(to)))
                    .findFirst()
                    .orElse(null);
            if (atFrom == null && atTo == null && between == null) {
                Stub name = new Stub(line, i, false);
                if (leftOut.contains(name)) {
                    end(run);
                    run.clear();
                } else {
                    run.add(whole(name, kind, row, column, from, to));
                }
                continue;
            }
            ShapeRing ahead = atTo != null ? atTo : between;
            if (atFrom == null && ahead != null) {
                stub(new Stub(line, i, false), kind, row, column, from, ahead, 1)
                        .ifPresent(run::add);
            }
            end(run);
            run.clear();
            ShapeRing behind = atFrom != null ? atFrom : between;
            if (atTo == null && behind != null) {
                stub(new Stub(line, i, true), kind, row, column, to, behind, -1).ifPresent(run::add);
            }
        }
        end(run);
    }

    private void end(List<Mesh.Step> run) {
        if (!run.isEmpty()) {
            mesh.lines.add(new ArrayList<>(run));
        }
    }

    private Mesh.Step whole(Stub name, int kind, int row, int column, int from, int to) {
        Mesh.Edge edge = mesh.addEdge(from, to, Mesh.Kind.INNER);
        wholes.put(edge.id, name);
        Point a = mesh.points.get(from);
        Point b = mesh.points.get(to);
        double[] leaving = grid.direction(from, kind);
        double[] arriving = grid.direction(to, kind);
        edge.draw(calm -> artist.beside(kind, row, column, a, b, leaving, arriving, calm), EdgeArtist.CALMEST + 2);
        edge.varies((attempt, life) -> free.draw(kind, row, column, a, b, leaving, arriving, attempt, life));
        return new Mesh.Step(edge, false);
    }

    private Optional<Mesh.Step> stub(Stub stub, int kind, int row, int column, int from, ShapeRing ring, int way) {
        double[] along = grid.direction(from, kind);
        double[] leaving = {way * along[0], way * along[1]};
        Point a = mesh.points.get(from);
        if (leftOut.contains(stub)) {
            return Optional.empty();
        }
        ShapeRing.Place place = ring.take(
                a,
                leaving,
                Math.max(unit, spec.grid().pieceSize(spec.size()).longerSide().mm()),
                (ring.divided ? 5 : 3) * limit);
        if (place == null) {
            return Optional.empty();
        }
        Point b = place.point();
        int to = mesh.addPoint(b);
        endsOnRing.computeIfAbsent(ring, r -> new ArrayList<>()).add(to);
        Mesh.Edge edge = mesh.addEdge(from, to, Mesh.Kind.INNER);
        stubs.put(edge.id, stub);
        double[] arriving = {place.inX(), place.inY()};
        edge.draw(calm -> artist.stub(kind, row, column, a, b, leaving, arriving, calm), EdgeArtist.CALMEST + 2);
        int attempts = way < 0 ? 1 << 12 : 0; // both ends of one step may be stubs: two streams
        edge.varies((attempt, life) -> free.stub(kind, row, column, a, b, leaving, arriving, attempt + attempts, life));
        return Optional.of(new Mesh.Step(edge, way < 0));
    }

    private void layRing(ShapeRing ring) {
        List<Integer> points = endsOnRing.getOrDefault(ring, List.of());
        if (points.size() < 2) {
            throw outer.filter(ring::equals).isPresent()
                    ? new Refused("pattern.outline.no_room", spec.grid().pieces())
                    : new Refused("pattern.shape.no_room", ring.name);
        }
        boolean isOuter = outer.filter(ring::equals).isPresent();
        Map<ShapeRing.Place, Integer> pointOf = new HashMap<>();
        for (int i = 0; i < points.size(); i++) {
            pointOf.put(ring.taken().get(i), points.get(i));
        }
        List<ShapeRing.Place> order = new ArrayList<>(ring.taken());
        order.sort(Comparator.comparingInt(ShapeRing.Place::segment).thenComparingDouble(ShapeRing.Place::t));
        List<Mesh.Step> around = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            ShapeRing.Place a = order.get(i);
            ShapeRing.Place b = order.get((i + 1) % order.size());
            Mesh.Edge edge =
                    mesh.addEdge(pointOf.get(a), pointOf.get(b), isOuter ? Mesh.Kind.OUTLINE : Mesh.Kind.SHAPE);
            if (ring.divided) {
                bends(edge, ring, a, b, i);
            } else {
                edge.draw(ring.between(a, b));
            }
            if (!isOuter) {
                mesh.shapeNames.put(edge.id, ring.name);
            }
            around.add(new Mesh.Step(edge, false));
        }
        if (isOuter) {
            mesh.outline.addAll(around);
        } else {
            mesh.lines.add(around);
        }
    }

    private void bends(Mesh.Edge edge, ShapeRing ring, ShapeRing.Place a, ShapeRing.Place b, int number) {
        int one = rings.indexOf(ring);
        mesh.divided.add(edge.id);
        edge.draw(
                calm -> ring.bent(
                        a,
                        b,
                        SplitMix.of(spec.seed(), BENDS, one << 8, number),
                        1 - (double) calm / EdgeArtist.CALMEST),
                EdgeArtist.CALMEST);
        edge.varies((attempt, life) -> ring.bent(
                a, b, SplitMix.of(spec.seed(), BENDS, one << 8 | attempt + 1, number), Math.max(life, LEAST_BENT)));
    }
}
