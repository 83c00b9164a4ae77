package puzzleworkshop.delivery.labels;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.openpdf.text.Document;
import org.openpdf.text.Image;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Phrase;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.ColumnText;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.display.QrCode;
import puzzleworkshop.measure.Size;

/** The other papers of a parcel: packing slip, card in the box, address label. */
final class PackingSlip {

    private static final float SIDE = 42;
    private static final float TEXT = 10;
    private static final float QR = 64;

    private final Formatter figures;

    PackingSlip(Formatter figures) {
        this.figures = figures;
    }

    /**
     * One line of the slip.
     *
     * @param number of the order
     * @param what size, pieces and tray
     * @param eachGrams one packed puzzle, as reckoned
     */
    record Line(String number, String what, int quantity, double eachGrams, double scatterGrams) {}

    /** A page of its own with margins; what does not fit goes on to the next. */
    void write(
            Document document,
            PdfWriter writer,
            Size paper,
            List<String> from,
            List<String> to,
            List<Line> lines,
            Optional<String> way,
            String tracking,
            String total) {
        document.setPageSize(new Rectangle(
                Points.of(paper.width().mm()), Points.of(paper.height().mm())));
        document.setMargins(SIDE, SIDE, SIDE, SIDE);
        if (document.isOpen()) {
            document.newPage();
        } else {
            document.open();
        }
        PdfPTable head = table(5, 5, 3);
        head.addCell(words(from, 9));
        head.addCell(words(to, 11));
        PdfPCell code = bare();
        PdfTemplate drawn = writer.getDirectContent().createTemplate(QR, QR);
        QrCode.of(lines.getFirst().number(), 2).draw(drawn, 0, 0, QR, PaperFonts.INK);
        Image image = Image.getInstance(drawn);
        image.setAlignment(Image.ALIGN_RIGHT);
        code.addElement(image);
        head.addCell(code);
        document.add(head);
        document.add(text(figures.text("delivery.slip.title"), 20, true));
        PdfPTable rows = table(3, 8, 2, 4);
        rows.setSpacingBefore(8);
        for (String key : List.of("order", "what", "quantity", "weight")) {
            rows.addCell(lined(figures.text("delivery.slip." + key), true));
        }
        for (Line line : lines) {
            rows.addCell(lined(line.number(), false));
            rows.addCell(lined(line.what(), false));
            rows.addCell(lined(Integer.toString(line.quantity()), false));
            rows.addCell(lined(
                    figures.text(
                            "delivery.slip.each",
                            figures.number(line.eachGrams(), 0),
                            figures.number(line.scatterGrams(), 0)),
                    false));
        }
        document.add(rows);
        document.add(text(total, TEXT, true));
        way.ifPresent(name -> document.add(text(figures.text("delivery.slip.way", name), TEXT, false)));
        if (!tracking.isBlank()) {
            document.add(text(figures.text("delivery.slip.tracking", tracking), TEXT, false));
        }
        document.add(text(figures.text("delivery.slip.check"), TEXT - 1, false));
    }

    /** The card that lies in the box: the picture, what it is, how to keep it. */
    PdfTemplate card(PdfWriter writer, Size size, byte[] picture, String title, String care, String maker) {
        float width = Points.of(size.width().mm());
        float height = Points.of(size.height().mm());
        PdfTemplate page = writer.getDirectContent().createTemplate(width, height);
        float border = Points.of(6);
        try {
            Image image = Image.getInstance(picture);
            image.scaleToFit(width - 2 * border, height * 0.5f);
            image.setAbsolutePosition((width - image.getScaledWidth()) / 2, height - border - image.getScaledHeight());
            page.addImage(image);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        fit(
                page,
                border,
                border,
                width - border,
                height * 0.5f - 2 * border,
                size2 -> List.of(text(title, size2 * 1.3f, true), text(care, size2, false), soft(maker, size2)));
        return page;
    }

    /** Sender small, receiver large, the order's number in a code. */
    PdfTemplate address(PdfWriter writer, Size size, List<String> from, List<String> to, String code) {
        float width = Points.of(size.width().mm());
        float height = Points.of(size.height().mm());
        PdfTemplate page = writer.getDirectContent().createTemplate(width, height);
        float border = Points.of(4);
        float qr = Points.of(18);
        QrCode.of(code, 2).draw(page, width - border - qr, border, qr, PaperFonts.INK);
        ColumnText small = new ColumnText(page);
        small.setSimpleColumn(border, height - border - Points.of(10), width - border, height - border);
        small.addElement(soft(String.join(" · ", from), 7));
        small.go();
        fit(
                page,
                border,
                border,
                width - 2 * border - qr,
                height - border - Points.of(11),
                letters -> List.of(text(String.join("\n", to), letters * 1.2f, true)));
        return page;
    }

    private interface Words {
        List<Paragraph> at(float size);
    }

    /** As large as it fits, 14 points at most; what does not fit at 6 is cut, as nothing here warns. */
    private static void fit(PdfTemplate page, float x, float y, float right, float top, Words words) {
        float size = 14;
        while (size > 6 && set(page, x, y, right, top, words.at(size), true) != ColumnText.NO_MORE_TEXT) {
            size -= 0.5f;
        }
        set(page, x, y, right, top, words.at(size), false);
    }

    private static int set(
            PdfTemplate page, float x, float y, float right, float top, List<Paragraph> words, boolean tried) {
        ColumnText column = new ColumnText(page);
        column.setSimpleColumn(x, y, right, top);
        words.forEach(column::addElement);
        return column.go(tried);
    }

    private static Paragraph text(String words, float size, boolean bold) {
        Paragraph text = new Paragraph(words, bold ? PaperFonts.bold(size) : PaperFonts.plain(size));
        text.setLeading(size * 1.25f);
        text.setSpacingBefore(size * 0.5f);
        return text;
    }

    private static Paragraph soft(String words, float size) {
        Paragraph text = new Paragraph(words, PaperFonts.soft(size));
        text.setLeading(size * 1.2f);
        text.setSpacingBefore(size * 0.5f);
        return text;
    }

    private static PdfPCell words(List<String> lines, float size) {
        PdfPCell cell = bare();
        lines.forEach(line -> {
            Paragraph text = new Paragraph(line, PaperFonts.plain(size));
            text.setLeading(size * 1.3f);
            cell.addElement(text);
        });
        return cell;
    }

    private static PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        return table;
    }

    private static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setPadding(0);
        cell.setPaddingRight(8);
        return cell;
    }

    private static PdfPCell lined(String words, boolean head) {
        PdfPCell cell = new PdfPCell(new Phrase(words, head ? PaperFonts.soft(TEXT - 1) : PaperFonts.plain(TEXT)));
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderColor(PaperFonts.LINE);
        cell.setPadding(4);
        cell.setPaddingLeft(0);
        return cell;
    }
}
