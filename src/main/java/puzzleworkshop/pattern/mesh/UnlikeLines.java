package puzzleworkshop.pattern.mesh;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.edges.EdgeAlbum;
import puzzleworkshop.pattern.edges.EdgeShape;
import puzzleworkshop.pattern.shapes.AlikeShapes;

/**
 * Lays the inner edges of a mesh one after another so that no two are alike: of several drawings of each edge the first
 * is taken that has room and differs from every edge laid before by more than a solver could take for a fit. Where none
 * does, the one that differs most. The same mesh gives the same lines.
 */
final class UnlikeLines {

    private static final double LEAST_NEED_MM = 0.04;
    private static final int MOST_TRIES = 60;
    private static final int TRIES_AT_FULL_LIFE = 10;
    private static final int TRIES_FOR_WISH = 2;
    private static final int MOST_FOR_WISH = 600;
    private static final int COMPARED_EACH = 5;

    private final Mesh mesh;
    private final List<KeptWhole> keptWhole;
    private final Occupied occupied;
    private final EdgeAlbum album = new EdgeAlbum();
    /** Falls where no edge so different can be found any more: what later edges need not reach either. */
    private double need;

    private double wish;
    private boolean allUnlike = true;

    private UnlikeLines(PatternSpec spec, Mesh mesh) {
        this.mesh = mesh;
        this.keptWhole = spec.layout().keptWhole();
        double unit = spec.grid().pieceSize(spec.size()).shorterSide().mm();
        occupied = new Occupied(mesh, spec.limits().closestLinesMm(), unit);
        need = needMm(spec);
        wish = spec.grid().pieces() > MOST_FOR_WISH ? need : Math.max(need, Math.min(0.6, 0.018 * unit));
    }

    /** @return whether no two are alike; false where some edge had to be taken that is the least like, or none had room */
    static boolean lay(PatternSpec spec, Mesh mesh) {
        UnlikeLines lines = new UnlikeLines(spec, mesh);
        lines.lay();
        return lines.allUnlike;
    }

    /** Two edges that differ by more than this cannot be taken for each other. */
    static double needMm(PatternSpec spec) {
        return AlikeShapes.toldApartMm(spec.kerf());
    }

    /** The distance of the two edges most like each other, as far as it is below what is needed. */
    static double closestMm(PatternSpec spec, Mesh mesh) {
        EdgeAlbum album = new EdgeAlbum();
        double closest = needMm(spec);
        for (Mesh.Edge edge : mesh.edges) {
            if (mesh.isCompared(edge)) {
                EdgeShape shape = EdgeShape.of(edge.path());
                closest = Math.min(closest, album.nearest(shape, closest, -1));
                album.add(shape);
            }
        }
        return closest;
    }

    private void lay() {
        for (KeptWhole place : keptWhole) {
            // as if a line lay there already that meets no other: nobody comes near
            occupied.add(
                    new Mesh.Edge(-1, -1, -1, Mesh.Kind.SHAPE), place.outline().flattened(Clearance.FLATTENING_MM));
        }
        for (Mesh.Edge edge : mesh.edges) {
            if (edge.kind != Mesh.Kind.INNER && !mesh.isCompared(edge)) {
                occupied.add(edge, edge.path().flattened(Clearance.FLATTENING_MM));
            }
        }
        // edges around divided shapes before those that end on them
        for (Mesh.Edge edge : mesh.edges) {
            if (edge.kind != Mesh.Kind.INNER && mesh.isCompared(edge)) {
                lay(edge);
            }
        }
        for (Mesh.Edge edge : mesh.edges) {
            if (edge.kind == Mesh.Kind.INNER) {
                lay(edge);
            }
        }
    }

    private void lay(Mesh.Edge edge) {
        Drawn chosen = firstUnlike(edge);
        if (chosen == null) {
            allUnlike = false;
            chosen = leastLike(edge);
        }
        if (chosen == null) {
            // none has room: as calm as can be, and whoever is in the way calms down too when all are looked at
            edge.calmest();
            chosen = new Drawn(edge.path());
        } else {
            edge.draw(chosen.path);
        }
        occupied.add(edge, chosen.flat);
        album.add(chosen.shape());
    }

    private Drawn firstUnlike(Mesh.Edge edge) {
        for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
            Drawn drawn = new Drawn(edge.variant(attempt, life(attempt)));
            if (occupied.hasRoomFor(edge, drawn.flat)
                    && !album.hasNearer(drawn.shape(), attempt < TRIES_FOR_WISH ? wish : need)) {
                return drawn;
            }
        }
        return null;
    }

    /** Of some drawings that have room the one that differs most. */
    private Drawn leastLike(Mesh.Edge edge) {
        Drawn best = null;
        double most = -1;
        for (int attempt = 0; attempt < MOST_TRIES; attempt += COMPARED_EACH) {
            Drawn drawn = new Drawn(edge.variant(attempt, life(attempt)));
            if (occupied.hasRoomFor(edge, drawn.flat)) {
                double distance = album.nearest(drawn.shape(), need, most);
                if (distance > most) {
                    most = distance;
                    best = drawn;
                }
            }
        }
        if (best != null) {
            // the space of shapes is full at this distance: looking on for it would only take time
            need = Math.max(LEAST_NEED_MM, Math.min(need, most));
            wish = need;
        }
        return best;
    }

    private static double life(int attempt) {
        return attempt < TRIES_AT_FULL_LIFE
                ? 1
                : 1 - 0.75 * (attempt - TRIES_AT_FULL_LIFE) / (MOST_TRIES - TRIES_AT_FULL_LIFE);
    }

    private static final class Drawn {
        final CurvePath path;
        final List<Point> flat;
        private EdgeShape shape;

        Drawn(CurvePath path) {
            this.path = path;
            this.flat = path.flattened(Clearance.FLATTENING_MM);
        }

        EdgeShape shape() {
            if (shape == null) {
                shape = EdgeShape.of(flat);
            }
            return shape;
        }
    }
}
