package puzzleworkshop.camera.outline;

import java.util.stream.IntStream;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.sheet.Marker;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.sheet.SeenSheet;

/**
 * The photo seen from straight above: light on a raster of the plane z = 0, with what is known of each of its cells beforehand.
 */
final class Ground {

    /** Side of a cell, mm. */
    static final double STEP = 0.5;

    /** How far beyond a sheet's edge is looked, mm: boards may reach over it. */
    private static final double BEYOND = 45;

    /** What lies in a cell as far as the print alone tells. */
    enum Kind {
        UNSEEN,
        /** White paper, unless something lies on it. */
        PAPER,
        /** Print or its edge where no marker was read: paper, ink or something on it. */
        PRINTED,
        /** A marker that was read: nothing lies on it. */
        MARKER,
        /** The edge of the paper, which may have been cut up to the markers: either side. */
        RIM,
        TABLE
    }

    final SeenSheet seen;
    final double left;
    final double top;
    final int columns;
    final int rows;
    final Kind[] kind;
    /** Light in red, green and blue, by cell. */
    final float[][] light = new float[3][];

    Ground(Photo photo, SeenSheet seen) {
        this.seen = seen;
        double[] box = box(seen);
        left = box[0];
        top = box[1];
        columns = (int) Math.ceil((box[2] - box[0]) / STEP);
        rows = (int) Math.ceil((box[3] - box[1]) / STEP);
        kind = new Kind[columns * rows];
        for (int c = 0; c < 3; c++) {
            light[c] = new float[columns * rows];
        }
        IntStream.range(0, rows).parallel().forEach(row -> fill(photo, row));
    }

    private static double[] box(SeenSheet seen) {
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        double w = seen.sheet().width();
        double h = seen.sheet().height();
        for (SeenSheet.Card card : seen.cards()) {
            for (int i = 0; i < 4; i++) {
                double x = card.toX(i % 2 * w, i / 2 * h);
                double y = card.toY(i % 2 * w, i / 2 * h);
                box[0] = Math.min(box[0], x - BEYOND);
                box[1] = Math.min(box[1], y - BEYOND);
                box[2] = Math.max(box[2], x + BEYOND);
                box[3] = Math.max(box[3], y + BEYOND);
            }
        }
        return box;
    }

    double x(int cell) {
        return left + (cell % columns + 0.5) * STEP;
    }

    double y(int cell) {
        return top + (cell / columns + 0.5) * STEP;
    }

    /** The cell of a place, or −1. */
    int cell(double x, double y) {
        int c = (int) Math.floor((x - left) / STEP);
        int r = (int) Math.floor((y - top) / STEP);
        return c < 0 || r < 0 || c >= columns || r >= rows ? -1 : r * columns + c;
    }

    private void fill(Photo photo, int row) {
        double[] uv = new double[2];
        for (int column = 0; column < columns; column++) {
            int cell = row * columns + column;
            double x = x(cell);
            double y = y(cell);
            double[] sum = new double[3];
            boolean whole = true;
            for (int i = 0; i < 4; i++) {
                double dx = (i % 2 - 0.5) * STEP / 2;
                double dy = (i / 2 - 0.5) * STEP / 2;
                if (!seen.view().project(x + dx, y + dy, 0, uv) || !photo.shows(uv[0], uv[1])) {
                    whole = false;
                    break;
                }
                photo.addLight(uv[0], uv[1], 0.25, sum);
            }
            kind[cell] = whole ? kindAt(x, y) : Kind.UNSEEN;
            for (int c = 0; c < 3; c++) {
                light[c][cell] = (float) sum[c];
            }
        }
    }

    private Kind kindAt(double x, double y) {
        MeasuringSheet sheet = seen.sheet();
        for (SeenSheet.Card card : seen.cards()) {
            double px = card.cardX(x, y);
            double py = card.cardY(x, y);
            double out = Math.max(Math.max(-px, px - sheet.width()), Math.max(-py, py - sheet.height()));
            if (out > 1.5) {
                continue;
            }
            if (out > (sheet.parts() == 1 ? 0.8 - MeasuringSheet.INSET : -0.8)) {
                return Kind.RIM;
            }
            return onPaper(sheet, card.part(), px, py);
        }
        return Kind.TABLE;
    }

    private Kind onPaper(MeasuringSheet sheet, int part, double px, double py) {
        double reach = MeasuringSheet.INSET + MeasuringSheet.MARKER + 1.5;
        if (px < reach || py < reach || px > sheet.width() - reach || py > sheet.height() - reach) {
            for (Marker marker : sheet.markers(part)) {
                double off = Math.max(Math.abs(px - marker.x()), Math.abs(py - marker.y())) - marker.side() / 2;
                if (off < 0.6) {
                    return seen.codes().contains(marker.code()) ? Kind.MARKER : Kind.PRINTED;
                }
            }
        }
        if (sheet.parts() > 1) {
            // nothing is laid on a card
            return Kind.MARKER;
        }
        return sheet.isLettered(px, py) ? Kind.PRINTED : Kind.PAPER;
    }

    /** Whether a place is on the sheet (not on the table beside it). */
    boolean isOnSheet(double x, double y) {
        MeasuringSheet sheet = seen.sheet();
        return sheet.parts() == 1 && x >= 0 && y >= 0 && x <= sheet.width() && y <= sheet.height();
    }
}
