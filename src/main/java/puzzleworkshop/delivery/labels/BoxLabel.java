package puzzleworkshop.delivery.labels;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.openpdf.text.Element;
import org.openpdf.text.Image;
import org.openpdf.text.Paragraph;
import org.openpdf.text.pdf.BarcodeEAN;
import org.openpdf.text.pdf.ColumnText;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.display.QrCode;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * The label of a box. Picture and code take the left; the words take what is left of it, as large as they fit. What warns
 * is never cut off and never smaller than {@link #LEAST} points: a label that is too small for it is refused.
 *
 * @param picture JPEG
 * @param facts size, pieces, age and the like, one to a line
 * @param warning as the program computed it
 * @param maker name and address of the workshop
 * @param code in the QR code and below it: the order's number
 * @param words the owner's own
 */
record BoxLabel(
        byte[] picture,
        String title,
        List<String> facts,
        Optional<String> warning,
        String maker,
        String code,
        Optional<Gtin> gtin,
        String words) {

    /** Still read at arm's length, about 1.2 mm of height in small letters (common practice). */
    static final float LEAST = 5.5f;

    private static final float LARGEST = 12;
    private static final float STEP = 0.25f;
    private static final double BORDER_MM = 2.5;
    private static final double MOST_QR_MM = 22;
    private static final double LEAST_QR_MM = 11;
    private static final double LOW_MM = 30;
    private static final float LEADING = 1.15f;
    private static final float EAN_WIDTH = Points.of(31.35);
    private static final float EAN_HEIGHT = Points.of(14);

    /** @throws Refused when it does not fit on a label of this size */
    PdfTemplate draw(PdfWriter writer, Size label) {
        float width = Points.of(label.width().mm());
        float height = Points.of(label.height().mm());
        PdfTemplate page = writer.getDirectContent().createTemplate(width, height);
        float border = Points.of(BORDER_MM);
        float innerWidth = width - 2 * border;
        float innerHeight = height - 2 * border;
        boolean low = label.height().mm() < LOW_MM;
        float qr = Points.of(Math.max(
                LEAST_QR_MM,
                Math.min(MOST_QR_MM, Math.min(label.height().mm(), label.width().mm()) * 0.4)));
        float left = low ? qr : Math.max(qr, innerWidth * 0.36f);
        QrCode.of(code, 2).draw(page, border - qr * 0.04f, border, qr, PaperFonts.INK);
        float words = border;
        if (!low) {
            picture(page, border, border + qr + border / 2, left, innerHeight - qr - border / 2);
        }
        float from = border + left + border;
        if (gtin.isPresent() && innerWidth - left - border >= EAN_WIDTH && innerHeight > 3 * EAN_HEIGHT) {
            bars(writer, page, from, border);
            words += EAN_HEIGHT + border;
        }
        write(page, from, words, width - border, height - border);
        return page;
    }

    private void picture(PdfTemplate page, float x, float y, float width, float height) {
        try {
            Image image = Image.getInstance(picture);
            image.scaleToFit(width, height);
            image.setAbsolutePosition(x, y + height - image.getScaledHeight());
            page.addImage(image);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private void bars(PdfWriter writer, PdfTemplate page, float x, float y) {
        BarcodeEAN bars = new BarcodeEAN();
        bars.setCodeType(BarcodeEAN.EAN13);
        bars.setCode(gtin.orElseThrow().digits());
        bars.setFont(PaperFonts.base());
        bars.setSize(7);
        bars.setBaseline(7);
        bars.setBarHeight(EAN_HEIGHT - 8);
        PdfTemplate drawn = bars.createTemplateWithBarcode(page, PaperFonts.INK, PaperFonts.INK);
        page.addTemplate(drawn, x + Points.of(3.63), y);
    }

    private void write(PdfTemplate page, float x, float y, float right, float top) {
        for (float size = LARGEST; size >= LEAST; size -= STEP) {
            if (set(page, x, y, right, top, size, true)) {
                set(page, x, y, right, top, size, false);
                return;
            }
        }
        throw new Refused("delivery.label.small", title);
    }

    private boolean set(PdfTemplate page, float x, float y, float right, float top, float size, boolean tried) {
        ColumnText column = new ColumnText(page);
        column.setSimpleColumn(x, y, right, top);
        Paragraph head = new Paragraph(title, PaperFonts.bold(size * 1.25f));
        column.addElement(spaced(head, size * 1.25f));
        facts.forEach(fact -> column.addElement(spaced(new Paragraph(fact, PaperFonts.plain(size)), size)));
        warning.ifPresent(text -> column.addElement(spaced(new Paragraph(text, PaperFonts.bold(size)), size)));
        if (!words.isBlank()) {
            column.addElement(spaced(new Paragraph(words, PaperFonts.plain(size)), size));
        }
        column.addElement(spaced(new Paragraph(maker, PaperFonts.soft(size)), size));
        column.addElement(spaced(new Paragraph(code, PaperFonts.bold(size)), size));
        return column.go(tried) == ColumnText.NO_MORE_TEXT;
    }

    private static Element spaced(Paragraph text, float size) {
        text.setLeading(size * LEADING);
        text.setSpacingAfter(size * 0.2f);
        return text;
    }
}
