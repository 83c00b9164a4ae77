package puzzleworkshop.printing.pdf;

import puzzleworkshop.measure.Length;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * Where the points of a sticker come to lie on a PDF page. On the sticker, u runs right and v down from its upper left
 * corner, in millimetres, the label band below it; on the page points of 1/72 in run right and up (ISO 32000-1, 8.3.2.3).
 */
record LaidSticker(RunItem item, Length sheetHeight) {

    static final double POINTS_PER_MM = 72 / 25.4;

    double x(double u, double v) {
        double across = item.turned() ? height() + PrintMedium.LABEL.mm() - v : u;
        return (item.x().mm() + across) * POINTS_PER_MM;
    }

    double y(double u, double v) {
        double down = item.turned() ? u : v;
        return (sheetHeight.mm() - item.y().mm() - down) * POINTS_PER_MM;
    }

    double width() {
        return item.sticker().width().mm();
    }

    double height() {
        return item.sticker().height().mm();
    }

    double overhang() {
        return item.overhang().mm();
    }

    /** Degrees by which writing is turned, anticlockwise. */
    float writing() {
        return item.turned() ? -90 : 0;
    }

    /** Left, lower, right and upper edge of a part of the sticker on the page. */
    double[] box(double u1, double v1, double u2, double v2) {
        double xa = x(u1, v1);
        double xb = x(u2, v2);
        double ya = y(u1, v1);
        double yb = y(u2, v2);
        return new double[] {Math.min(xa, xb), Math.min(ya, yb), Math.max(xa, xb), Math.max(ya, yb)};
    }

    double[] bleed() {
        return box(0, 0, width(), height());
    }

    double[] trim() {
        return box(overhang(), overhang(), width() - overhang(), height() - overhang());
    }
}
