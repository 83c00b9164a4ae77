package puzzleworkshop.printing.pdf;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.List;
import java.util.function.Function;
import org.openpdf.text.pdf.PdfContentByte;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * What is printed around a sticker: marks in line with the finished edges, outside the picture, and below it the order's
 * number with a small code that holds the same.
 */
public final class SheetMarks {

    private static final double CLEAR = 0.5;
    private static final double HAIRLINE = 0.1;
    private static final double LETTER = 2.3;
    /** Four modules of quiet zone around 21 fit the band of 8 mm (ISO/IEC 18004, version 1). */
    private static final double MODULE = 0.276;

    private static final int QUIET = 4;

    private final String title;
    private final Function<RunItem, List<String>> lines;

    /** @param lines what stands beside the code of a sticker, two short lines */
    public SheetMarks(String title, Function<RunItem, List<String>> lines) {
        this.title = title;
        this.lines = lines;
    }

    String title() {
        return title;
    }

    void draw(PdfContentByte content, LaidSticker laid) {
        content.saveState();
        content.setGrayFill(0);
        content.setGrayStroke(0);
        content.setLineWidth((float) (HAIRLINE * LaidSticker.POINTS_PER_MM));
        cropMarks(content, laid);
        label(content, laid);
        content.restoreState();
    }

    private static void cropMarks(PdfContentByte content, LaidSticker laid) {
        double o = laid.overhang();
        double w = laid.width();
        double h = laid.height();
        double length = PrintMedium.MARKS.mm() - CLEAR;
        for (double u : new double[] {o, w - o}) {
            line(content, laid, u, -CLEAR, u, -CLEAR - length);
            line(content, laid, u, h + CLEAR, u, h + CLEAR + length);
        }
        for (double v : new double[] {o, h - o}) {
            line(content, laid, -CLEAR, v, -CLEAR - length, v);
            line(content, laid, w + CLEAR, v, w + CLEAR + length, v);
        }
    }

    private static void line(PdfContentByte content, LaidSticker laid, double u1, double v1, double u2, double v2) {
        content.moveTo((float) laid.x(u1, v1), (float) laid.y(u1, v1));
        content.lineTo((float) laid.x(u2, v2), (float) laid.y(u2, v2));
        content.stroke();
    }

    private void label(PdfContentByte content, LaidSticker laid) {
        ByteMatrix code = code(laid.item().order().number());
        double left = laid.overhang() + 1.5;
        double top = laid.height() + QUIET * MODULE;
        for (int row = 0; row < code.getHeight(); row++) {
            for (int column = 0; column < code.getWidth(); column++) {
                if (code.get(column, row) == 1) {
                    double[] box = laid.box(
                            left + column * MODULE,
                            top + row * MODULE,
                            left + (column + 1) * MODULE,
                            top + (row + 1) * MODULE);
                    content.rectangle(
                            (float) box[0], (float) box[1], (float) (box[2] - box[0]), (float) (box[3] - box[1]));
                }
            }
        }
        content.fill();
        double textLeft = left + (code.getWidth() + QUIET) * MODULE;
        double room = laid.width() - laid.overhang() - 1 - textLeft;
        double baseline = laid.height() + QUIET * MODULE + LETTER;
        for (String line : lines.apply(laid.item())) {
            write(content, laid, line, textLeft, baseline, room);
            baseline += LETTER + 0.9;
        }
    }

    /** Smaller when there is little room; left out when it could not be read. */
    private void write(PdfContentByte content, LaidSticker laid, String line, double u, double v, double room) {
        double size = LETTER * LaidSticker.POINTS_PER_MM / 0.72;
        double wide = PaperFonts.base().getWidthPoint(line, (float) size) / LaidSticker.POINTS_PER_MM;
        double fitting = wide > room ? size * room / wide : size;
        if (fitting < 4) {
            return;
        }
        content.beginText();
        content.setFontAndSize(PaperFonts.base(), (float) fitting);
        content.showTextAligned(
                PdfContentByte.ALIGN_LEFT, line, (float) laid.x(u, v), (float) laid.y(u, v), laid.writing());
        content.endText();
    }

    private static ByteMatrix code(String text) {
        try {
            return Encoder.encode(text, ErrorCorrectionLevel.L).getMatrix();
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException(
                    "An order number of " + text.length() + " letters does not fit a code", tooLong);
        }
    }
}
