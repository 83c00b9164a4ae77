package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.camera.outline.TopView;

/**
 * Where an outline may lie in a photo when nothing but the edges that are seen there tell: laid on in every turn and at every place
 * around a middle, it covers more of them or fewer. Chamfer matching (Barrow, Tenenbaum, Bolles and Wolf, Parametric correspondence
 * and chamfer matching, 1977) with a limit in place of a distance, and with the directions of edges.
 */
final class OutlineSearch {

    /** Side of a cell, mm. */
    private static final double CELL = 0.5;

    /** How far from the given middle an outline's may lie: a thing of which half is pale has its middle in its other half. */
    private static final double AWAY_MM = 10;

    private static final double APART_MM = 1;

    private static final int TURNS = 60;

    /** Half a turn has so many directions. */
    private static final int DIRECTIONS = 12;

    /** Code values of all three colours together across one cell: what is an edge. */
    private static final double LEAST_EDGE = 0.035;

    /** One of so many points of an outline is looked at. */
    private static final int EVERY = 3;

    private static final int LOOKED_AT = PlaceEdge.POINTS / EVERY;

    /** After so many points less than a third covered is not gone on with. */
    private static final int FIRST_LOOK = 15;

    private final int columns;
    private final double left;
    private final double top;
    private final double middleX;
    private final double middleY;
    /** Of each cell the directions in which edges pass it or its neighbours, one bit each. */
    private final int[] edges;

    /**
     * @param covered share of the outline along which there is an edge
     */
    record Start(int place, Pose pose, double covered) {}

    private OutlineSearch(TopView.Patch patch, double middleX, double middleY, int columns) {
        this.middleX = middleX;
        this.middleY = middleY;
        this.columns = columns;
        left = patch.left();
        top = patch.top();
        edges = spread(seen(patch));
    }

    /**
     * @param reach farthest point of any outline from its middle, mm
     */
    static OutlineSearch around(double middleX, double middleY, double reach, Sight sight) {
        double half = AWAY_MM + reach + 2 * CELL;
        int columns = (int) Math.ceil(2 * half / CELL) + 1;
        return new OutlineSearch(
                sight.patch(
                        middleX - half,
                        middleY - half,
                        middleX - half + columns * CELL,
                        middleY - half + columns * CELL),
                middleX,
                middleY,
                columns);
    }

    /** What shows a part of a photo; edges in mm as in {@link TopView#patch}. */
    interface Sight {
        TopView.Patch patch(double left, double top, double right, double bottom);
    }

    private int[] seen(TopView.Patch patch) {
        int[] seen = new int[columns * columns];
        double[] across = new double[6];
        double[] down = new double[6];
        for (int row = 0; row < columns; row++) {
            for (int column = 0; column < columns; column++) {
                double x = left + (column + 0.5) * CELL;
                double y = top + (row + 0.5) * CELL;
                patch.along(x - CELL / 2, y, CELL, 0, 2, across);
                patch.along(x, y - CELL / 2, 0, CELL, 2, down);
                double xx = 0;
                double xy = 0;
                double yy = 0;
                for (int c = 0; c < 3; c++) {
                    double dx = across[3 + c] - across[c];
                    double dy = down[3 + c] - down[c];
                    xx += dx * dx;
                    xy += dx * dy;
                    yy += dy * dy;
                }
                // the larger eigenvalue of the colours' common gradient, and its direction (Di Zenzo 1986)
                double steepest = (xx + yy + Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / 2;
                if (steepest > LEAST_EDGE * LEAST_EDGE) {
                    int direction = direction(Math.atan2(2 * xy, xx - yy) / 2);
                    seen[row * columns + column] = 1 << direction
                            | 1 << (direction + 1) % DIRECTIONS
                            | 1 << (direction + DIRECTIONS - 1) % DIRECTIONS;
                }
            }
        }
        return seen;
    }

    private int[] spread(int[] seen) {
        int[] spread = new int[seen.length];
        for (int row = 1; row < columns - 1; row++) {
            for (int column = 1; column < columns - 1; column++) {
                int at = row * columns + column;
                for (int beside = -1; beside <= 1; beside++) {
                    spread[at] |= seen[at + beside * columns - 1]
                            | seen[at + beside * columns]
                            | seen[at + beside * columns + 1];
                }
            }
        }
        return spread;
    }

    private static int direction(double angle) {
        return (int) Math.floor(angle / Math.PI * DIRECTIONS + 2 * DIRECTIONS + 0.5) % DIRECTIONS;
    }

    /**
     * The likeliest ways one outline may lie there, the best first.
     *
     * @param most how many, each turned otherwise
     */
    List<Start> of(int place, PlaceEdge outline, int most) {
        List<Start> starts = new ArrayList<>();
        int[] offset = new int[LOOKED_AT];
        int[] bit = new int[LOOKED_AT];
        for (int turn = 0; turn < TURNS; turn++) {
            Pose pose = new Pose();
            pose.cos = Math.cos(2 * Math.PI * turn / TURNS);
            pose.sin = Math.sin(2 * Math.PI * turn / TURNS);
            for (int k = 0; k < LOOKED_AT; k++) {
                // neighbours in turn are far apart, so that a wrong place is left early
                int i = EVERY * (7 * k % LOOKED_AT);
                double x = pose.turnedX(outline.x[i], outline.y[i]);
                double y = pose.turnedY(outline.x[i], outline.y[i]);
                offset[k] = (int) Math.floor(y / CELL + 0.5) * columns + (int) Math.floor(x / CELL + 0.5);
                bit[k] = 1
                        << direction(Math.atan2(
                                pose.turnedY(outline.nx[i], outline.ny[i]),
                                pose.turnedX(outline.nx[i], outline.ny[i])));
            }
            starts.add(best(place, pose, offset, bit));
        }
        starts.sort(Comparator.comparingDouble(Start::covered).reversed());
        return starts.subList(0, Math.min(most, starts.size()));
    }

    private Start best(int place, Pose pose, int[] offset, int[] bit) {
        int most = -1;
        for (double y = middleY - AWAY_MM; y <= middleY + AWAY_MM; y += APART_MM) {
            for (double x = middleX - AWAY_MM; x <= middleX + AWAY_MM; x += APART_MM) {
                int covered = covered((int) ((y - top) / CELL) * columns + (int) ((x - left) / CELL), offset, bit);
                if (covered > most) {
                    most = covered;
                    pose.x = x;
                    pose.y = y;
                }
            }
        }
        return new Start(place, pose, (double) most / LOOKED_AT);
    }

    private int covered(int at, int[] offset, int[] bit) {
        int covered = 0;
        for (int k = 0; k < offset.length; k++) {
            covered += (edges[at + offset[k]] & bit[k]) != 0 ? 1 : 0;
            if (k == FIRST_LOOK && 3 * covered < FIRST_LOOK) {
                return covered;
            }
        }
        return covered;
    }
}
