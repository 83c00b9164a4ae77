package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.shapes.AlikeShapes;

/**
 * Makes a pattern from its spec and verifies it by geometry: no two lines cross, none comes closer to another (or to
 * itself) than the wood allows. Where one does, the edges concerned are drawn again more calmly, step by step, and
 * looked at again; the result is the same for the same spec on every machine.
 */
public final class PatternMaker {

    /** The search for the best way to lay two edges upon each other ends a little above the least distance. */
    private static final double SURELY = 0.85;

    private static final GeometryFactory JTS = new GeometryFactory();

    private final PatternSpec spec;
    private final Mesh mesh;
    private boolean allUnlike;
    private int redrawn;

    private PatternMaker(PatternSpec spec) {
        this.spec = spec;
        GridMesh grid = new GridMesh(spec);
        this.mesh = spec.shapes().isEmpty() && !spec.outline().isCurved() ? grid.mesh : ShapedMesh.of(spec, grid);
        if (!spec.isFirstDesign()) {
            allUnlike = UnlikeLines.lay(spec, mesh);
        }
    }

    /**
     * @throws Refused when pieces are too small for the size, the thickness or the style, with what can be had
     */
    public static CutPattern make(PatternSpec spec) {
        if (spec.isOnePiece()) {
            return OnePiece.of(spec);
        }
        spec.grid().requireSeveral();
        spec.grid().requireFits(spec.size());
        Size piece = spec.grid().pieceSize(spec.size());
        Length smallest = spec.limits().smallestKnobbedSide();
        if (spec.style() != CutStyle.STRAIGHT && piece.shorterSide().compareTo(smallest) < 0) {
            throw new Refused("pattern.too_thick", piece.width(), piece.height(), spec.thickness(), smallest);
        }
        return new PatternMaker(spec).make();
    }

    private CutPattern make() {
        BitSet fresh = new BitSet();
        fresh.set(0, mesh.edges.size());
        Clearance clearance = new Clearance(mesh, spec.limits().closestLinesMm());
        List<Clearance.Trouble> troubles = clearance.find(fresh);
        double smallestGap = clearance.smallestGapMm();
        BitSet everRedrawn = new BitSet();
        while (!troubles.isEmpty()) {
            fresh = redrawAll(troubles);
            everRedrawn.or(fresh);
            clearance = new Clearance(mesh, spec.limits().closestLinesMm());
            troubles = clearance.find(fresh);
        }
        redrawn = everRedrawn.cardinality();
        if (redrawn > 0) {
            BitSet all = new BitSet();
            all.set(0, mesh.edges.size());
            if (!clearance.find(all).isEmpty()) {
                throw new IllegalStateException("Edges redrawn in a pattern disturbed others: " + spec);
            }
            smallestGap = clearance.smallestGapMm();
        }
        requireKeptWhole();
        return pattern(smallestGap);
    }

    /** Looked at in the lines as they were drawn in the end, by JTS. */
    private void requireKeptWhole() {
        for (KeptWhole place : spec.layout().keptWhole()) {
            Polygon oval = JTS.createPolygon(coordinates(place.outline()));
            for (Mesh.Edge edge : mesh.edges) {
                if (oval.intersects(JTS.createLineString(coordinates(edge.path())))) {
                    throw new Refused(
                            "pattern.kept.no_room",
                            Length.mm(place.middle().xMm()),
                            Length.mm(place.middle().yMm()));
                }
            }
        }
    }

    private static Coordinate[] coordinates(CurvePath path) {
        return path.flattened(Clearance.FLATTENING_MM).stream()
                .map(ShapeRing::coordinate)
                .toArray(Coordinate[]::new);
    }

    private BitSet redrawAll(List<Clearance.Trouble> troubles) {
        BitSet concerned = new BitSet();
        for (Clearance.Trouble trouble : troubles) {
            concerned.set(trouble.edge());
            concerned.set(trouble.other());
        }
        BitSet changed = new BitSet();
        concerned.stream().filter(id -> mesh.edges.get(id).calmDown()).forEach(changed::set);
        if (changed.isEmpty()) {
            Clearance.Trouble worst = troubles.getFirst();
            throw new Refused(
                    "pattern.no_room",
                    Length.mm(worst.where().xMm()),
                    Length.mm(worst.where().yMm()),
                    Length.mm(worst.distanceMm()),
                    Length.mm(spec.limits().closestLinesMm()));
        }
        return changed;
    }

    private CutPattern pattern(double smallestGap) {
        List<CurvePath> inner = new ArrayList<>();
        for (List<Mesh.Step> line : mesh.lines) {
            inner.add(Mesh.join(line, line.getFirst().start() == line.getLast().end()));
        }
        CurvePath outline = Mesh.join(mesh.outline, true);
        double closest = closestMm();
        double rowHeight = spec.size().height().mm() / spec.grid().rows();
        return new CutPattern(
                spec,
                inner,
                outline,
                Faces.of(mesh, rowHeight),
                new CutPattern.Verified(
                        mesh.edges.size(),
                        redrawn,
                        spec.limits().closestLinesMm(),
                        smallestGap,
                        SURELY * closest,
                        !spec.isFirstDesign() && closest >= UnlikeLines.needMm(spec),
                        AlikeShapes.of(spec.shapes(), spec.kerf())
                                .map(pair -> List.of(pair.one(), pair.other()))
                                .orElse(List.of())),
                inner.stream().mapToDouble(CurvePath::lengthMm).sum(),
                outline.lengthMm());
    }

    /** Of the two edges most alike, as far as it is below what is needed; zero where it was not looked for. */
    private double closestMm() {
        if (spec.isFirstDesign()) {
            return 0;
        }
        return allUnlike && redrawn == 0 ? UnlikeLines.needMm(spec) : UnlikeLines.closestMm(spec, mesh);
    }
}
