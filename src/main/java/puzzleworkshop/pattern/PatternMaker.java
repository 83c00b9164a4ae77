package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import puzzleworkshop.geometry.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * Makes a pattern from its spec and verifies it by geometry: no two lines cross, none comes closer to another (or to
 * itself) than the wood allows. Where one does, the edges concerned are drawn again more calmly, step by step, and
 * looked at again; the result is the same for the same spec on every machine.
 */
public final class PatternMaker {

    private final PatternSpec spec;
    private final GridMesh grid;
    private final EdgeArtist artist;
    private final int[] calm;
    private int redrawn;

    private PatternMaker(PatternSpec spec) {
        this.spec = spec;
        this.grid = new GridMesh(spec);
        this.artist = new EdgeArtist(spec);
        this.calm = new int[grid.mesh.edges.size()];
    }

    /**
     * @throws Refused when pieces are too small for the size, the thickness or the style, with what can be had
     */
    public static CutPattern make(PatternSpec spec) {
        spec.grid().requireFits(spec.size());
        Size piece = spec.grid().pieceSize(spec.size());
        Length smallest = spec.limits().smallestKnobbedSide();
        if (spec.style() != CutStyle.STRAIGHT && piece.shorterSide().compareTo(smallest) < 0) {
            throw new Refused("pattern.too_thick", piece.width(), piece.height(), spec.thickness(), smallest);
        }
        return new PatternMaker(spec).make();
    }

    private CutPattern make() {
        Mesh mesh = grid.mesh;
        BitSet fresh = new BitSet();
        for (Mesh.Edge edge : mesh.edges) {
            if (edge.kind == Mesh.Kind.INNER) {
                draw(edge);
            }
            fresh.set(edge.id);
        }
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
        return pattern(smallestGap);
    }

    private BitSet redrawAll(List<Clearance.Trouble> troubles) {
        BitSet changed = new BitSet();
        for (Clearance.Trouble trouble : troubles) {
            for (int id : new int[] {trouble.edge(), trouble.other()}) {
                if (grid.mesh.edges.get(id).kind == Mesh.Kind.INNER && calm[id] < EdgeArtist.CALMEST) {
                    changed.set(id);
                }
            }
        }
        if (changed.isEmpty()) {
            Clearance.Trouble worst = troubles.getFirst();
            throw new Refused("pattern.no_room", Length.mm(worst.where().xMm()), Length.mm(worst.where().yMm()),
                    Length.mm(worst.distanceMm()), Length.mm(spec.limits().closestLinesMm()));
        }
        changed.stream().forEach(id -> {
            calm[id]++;
            draw(grid.mesh.edges.get(id));
        });
        return changed;
    }

    private void draw(Mesh.Edge edge) {
        GridMesh.Place place = grid.places.get(edge.id);
        edge.draw(artist.draw(place.kind(), place.row(), place.column(), grid.mesh.points.get(edge.from),
                grid.mesh.points.get(edge.to), grid.direction(edge.from, place.kind()),
                grid.direction(edge.to, place.kind()), calm[edge.id]));
    }

    private CutPattern pattern(double smallestGap) {
        Mesh mesh = grid.mesh;
        List<CurvePath> inner = new ArrayList<>();
        for (List<Mesh.Step> line : mesh.lines) {
            inner.add(Mesh.join(line, false));
        }
        CurvePath outline = Mesh.join(mesh.outline, true);
        double rowHeight = spec.size().height().mm() / spec.grid().rows();
        return new CutPattern(spec, inner, outline, Faces.of(mesh, rowHeight),
                new CutPattern.Verified(mesh.edges.size(), redrawn, spec.limits().closestLinesMm(), smallestGap),
                inner.stream().mapToDouble(CurvePath::lengthMm).sum(), outline.lengthMm());
    }
}
