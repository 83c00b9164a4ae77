package puzzleworkshop.camera.sheet;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.util.List;
import org.openpdf.text.Document;
import org.openpdf.text.Element;
import org.openpdf.text.Phrase;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.ColumnText;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfName;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.display.PaperFonts;

/** The measuring sheet on paper: a PDF page of exact size with markers, the 100 mm line and a line of words. */
public final class SheetPaper {

    private static final double MM = 72 / 25.4;

    private final PdfContentByte page;
    private final double pageHeight;

    private SheetPaper(PdfContentByte page, double pageHeight) {
        this.page = page;
        this.pageHeight = pageHeight;
    }

    /**
     * @param words to print small beside the line: what it is and that it is printed at 100 %
     * @param onLetter loose cards on a Letter page instead of A4; other sheets have their own size
     */
    public static byte[] pdf(MeasuringSheet sheet, String title, List<String> words, boolean onLetter) {
        MeasuringSheet cut = onLetter ? MeasuringSheet.LETTER : MeasuringSheet.A4;
        double width = sheet == MeasuringSheet.CARDS ? cut.width() : sheet.width();
        double height = sheet == MeasuringSheet.CARDS ? cut.height() : sheet.height();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle((float) (width * MM), (float) (height * MM)), 0, 0, 0, 0);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        // printing programs keep the size of their own accord when a page asks for it (ISO 32000-1, 12.2)
        writer.addViewerPreference(PdfName.PRINTSCALING, PdfName.NONE);
        document.addTitle(title);
        document.open();
        SheetPaper paper = new SheetPaper(writer.getDirectContent(), height);
        if (sheet == MeasuringSheet.CARDS) {
            paper.cards(width, height, words);
        } else {
            paper.markers(sheet, 0, 0, 0);
            paper.line(sheet.lineX(), sheet.lineY(), words);
        }
        document.close();
        return out.toByteArray();
    }

    private void cards(double width, double height, List<String> words) {
        MeasuringSheet cards = MeasuringSheet.CARDS;
        double left = width / 2 - cards.width();
        double top = 2;
        for (int part = 0; part < cards.parts(); part++) {
            double x = left + part % 2 * cards.width();
            double y = top + part / 2 * cards.height();
            markers(cards, part, x, y);
            page.setColorStroke(new Color(0xB0B0B0));
            page.setLineWidth(0.4f);
            page.rectangle(pt(x), up(y + cards.height()), pt(cards.width()), pt(cards.height()));
            page.stroke();
            ColumnText.showTextAligned(
                    page,
                    Element.ALIGN_CENTER,
                    new Phrase(part + 1 + " / " + cards.parts(), PaperFonts.soft(9)),
                    pt(x + cards.width() / 2),
                    up(y + cards.height() / 2),
                    0);
        }
        line(left + 10, height - 8, words);
    }

    private void markers(MeasuringSheet sheet, int part, double left, double top) {
        page.setColorFill(Color.BLACK);
        for (Marker marker : sheet.markers(part)) {
            double field = marker.side() / MarkerFinder.FIELDS;
            double x = left + marker.x() - marker.side() / 2;
            double y = top + marker.y() - marker.side() / 2;
            page.rectangle(pt(x), up(y + marker.side()), pt(marker.side()), pt(marker.side()));
            for (int row = 1; row < MarkerFinder.FIELDS - 1; row++) {
                for (int column = 1; column < MarkerFinder.FIELDS - 1; column++) {
                    if (!MarkerFinder.isBlack(marker.code(), row, column)) {
                        // even-odd: a field within the square is left out, so no hairline of black stays between fields
                        page.rectangle(pt(x + column * field), up(y + (row + 1) * field), pt(field), pt(field));
                    }
                }
            }
            page.eoFill();
        }
    }

    private void line(double x, double y, List<String> words) {
        page.setColorStroke(Color.BLACK);
        page.setLineWidth(0.6f);
        stroke(x, y, x + MeasuringSheet.LINE, y);
        stroke(x, y - 2, x, y + 2);
        stroke(x + MeasuringSheet.LINE, y - 2, x + MeasuringSheet.LINE, y + 2);
        for (int i = 0; i < words.size(); i++) {
            ColumnText.showTextAligned(
                    page,
                    i == 0 ? Element.ALIGN_CENTER : Element.ALIGN_LEFT,
                    new Phrase(words.get(i), PaperFonts.soft(6)),
                    i == 0 ? pt(x + MeasuringSheet.LINE / 2) : pt(x + MeasuringSheet.LINE + 3),
                    i == 0 ? up(y - 0.8) : up(y - 0.8 + (i - 1) * 2.4),
                    0);
        }
    }

    private void stroke(double x1, double y1, double x2, double y2) {
        page.moveTo(pt(x1), up(y1));
        page.lineTo(pt(x2), up(y2));
        page.stroke();
    }

    private static float pt(double mm) {
        return (float) (mm * MM);
    }

    /** PDF counts from the bottom, in points. */
    private float up(double fromTop) {
        return (float) ((pageHeight - fromTop) * MM);
    }
}
