package puzzleworkshop.printing.pdf;

import java.util.List;
import org.openpdf.text.pdf.PdfContentByte;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.printing.crosses.Crosses;

/** Draws the crosses by which the laser finds a print: black hairlines on a white halo, so that they show on any picture. */
final class CrossMarks {

    private static final double LINE = 0.15;
    private static final double HALO = 0.5;

    private CrossMarks() {}

    static void draw(PdfContentByte content, LaidSticker laid, Crosses crosses) {
        if (!crosses.fit(laid.item().overhang())) {
            return;
        }
        List<Point> middles = crosses.on(laid.item().finished());
        double half = crosses.span().mm() / 2;
        content.saveState();
        content.setGrayStroke(1);
        content.setLineWidth((float) (HALO * LaidSticker.POINTS_PER_MM));
        // projecting ends, so that the halo goes round the ends of the black lines too (ISO 32000-1, 8.4.3.3)
        content.setLineCap(PdfContentByte.LINE_CAP_PROJECTING_SQUARE);
        middles.forEach(middle -> cross(content, laid, middle, half));
        content.setGrayStroke(0);
        content.setLineWidth((float) (LINE * LaidSticker.POINTS_PER_MM));
        content.setLineCap(PdfContentByte.LINE_CAP_BUTT);
        middles.forEach(middle -> cross(content, laid, middle, half));
        content.restoreState();
    }

    private static void cross(PdfContentByte content, LaidSticker laid, Point middle, double half) {
        double u = laid.overhang() + middle.xMm();
        double v = laid.overhang() + middle.yMm();
        line(content, laid, u - half, v, u + half, v);
        line(content, laid, u, v - half, u, v + half);
    }

    private static void line(PdfContentByte content, LaidSticker laid, double u1, double v1, double u2, double v2) {
        content.moveTo((float) laid.x(u1, v1), (float) laid.y(u1, v1));
        content.lineTo((float) laid.x(u2, v2), (float) laid.y(u2, v2));
        content.stroke();
    }
}
