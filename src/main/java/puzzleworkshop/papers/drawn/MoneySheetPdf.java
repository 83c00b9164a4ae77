package puzzleworkshop.papers.drawn;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.openpdf.text.Document;
import org.openpdf.text.Element;
import org.openpdf.text.Font;
import org.openpdf.text.Image;
import org.openpdf.text.PageSize;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Phrase;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import org.openpdf.text.pdf.PdfPageEventHelper;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.measure.UnitSystem;

/**
 * Sets a quote, invoice or credit note on the page: birch band, the workshop's name and logo, the puzzle's face, lines,
 * sums. A4 where millimetres are used, Letter where inches are.
 */
public final class MoneySheetPdf {

    private static final float SIDE = 56;
    private static final float HEAD = 62;
    private static final float FOOT = 56;
    private static final float BAND = 10;
    private static final float TEXT = 9.5f;
    private static final float SMALL = 8;

    private final MoneySheet sheet;
    private final Formatter figures;

    private MoneySheetPdf(MoneySheet sheet, Formatter figures) {
        this.sheet = sheet;
        this.figures = figures;
    }

    public static byte[] write(MoneySheet sheet, Formatter figures) {
        return new MoneySheetPdf(sheet, figures).write();
    }

    private byte[] write() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Rectangle page = figures.units() == UnitSystem.INCHES ? PageSize.LETTER : PageSize.A4;
        Document document = new Document(page, SIDE, SIDE, HEAD, FOOT);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        writer.setPageEvent(new Foot());
        document.addTitle(sheet.title());
        document.addAuthor(sheet.seller().getFirst());
        document.addCreator("Puzzle Workshop");
        document.open();
        document.add(head());
        document.add(addresses());
        Paragraph title = new Paragraph(sheet.title(), PaperFonts.bold(20));
        title.setSpacingBefore(26);
        title.setSpacingAfter(sheet.lead().isEmpty() ? 12 : 4);
        document.add(title);
        if (!sheet.lead().isEmpty()) {
            Paragraph lead = new Paragraph(sheet.lead(), PaperFonts.plain(TEXT));
            lead.setSpacingAfter(12);
            document.add(lead);
        }
        document.add(lines());
        document.add(sums());
        for (MoneySheet.Pair note : sheet.notes()) {
            document.add(note(note));
        }
        document.close();
        return out.toByteArray();
    }

    private PdfPTable head() {
        PdfPTable head = table(3, 2);
        PdfPCell name = bare();
        sheet.logo()
                .ifPresentOrElse(
                        logo -> name.addElement(scaled(logo, 150, 48)),
                        () -> name.addElement(new Paragraph(sheet.seller().getFirst(), PaperFonts.accent(18))));
        head.addCell(name);
        PdfPCell seller = bare();
        for (String line : sheet.logo().isPresent()
                ? sheet.seller()
                : sheet.seller().subList(1, sheet.seller().size())) {
            seller.addElement(right(line, PaperFonts.soft(SMALL)));
        }
        head.addCell(seller);
        return head;
    }

    /** Customer left, facts in the middle, the face of the puzzle right. */
    private PdfPTable addresses() {
        PdfPTable row = table(5, 5, 4);
        row.setSpacingBefore(28);
        PdfPCell customer = bare();
        for (int i = 0; i < sheet.customer().size(); i++) {
            customer.addElement(
                    new Paragraph(14, sheet.customer().get(i), i == 0 ? PaperFonts.bold(10.5f) : PaperFonts.plain(10)));
        }
        row.addCell(customer);
        PdfPTable facts = table(1, 1);
        for (MoneySheet.Pair fact : sheet.facts()) {
            facts.addCell(padded(fact.name(), PaperFonts.soft(SMALL + 0.5f), Element.ALIGN_LEFT));
            facts.addCell(padded(fact.value(), PaperFonts.plain(SMALL + 0.5f), Element.ALIGN_LEFT));
        }
        PdfPCell middle = bare();
        middle.addElement(facts);
        row.addCell(middle);
        PdfPCell face = bare();
        sheet.picture().ifPresent(picture -> {
            Image image = scaled(picture, 124, 92);
            image.setAlignment(Element.ALIGN_RIGHT);
            face.addElement(image);
        });
        row.addCell(face);
        return row;
    }

    private PdfPTable lines() {
        float[] widths = new float[sheet.columns().size()];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = sheet.columns().get(i).share();
        }
        PdfPTable table = table(widths);
        table.setHeaderRows(1);
        sheet.columns().forEach(column -> head(table, column.name(), align(column)));
        for (List<String> row : sheet.rows()) {
            for (int i = 0; i < row.size(); i++) {
                table.addCell(lined(
                        row.get(i),
                        PaperFonts.plain(TEXT),
                        align(sheet.columns().get(i))));
            }
        }
        return table;
    }

    private static int align(MoneySheet.Column column) {
        return column.figures() ? Element.ALIGN_RIGHT : Element.ALIGN_LEFT;
    }

    private PdfPTable sums() {
        PdfPTable table = table(4, 4, 3);
        table.setKeepTogether(true);
        table.setSpacingBefore(8);
        for (MoneySheet.Sum sum : sheet.sums()) {
            table.addCell(bare());
            Font font = sum.strong() ? PaperFonts.bold(12) : PaperFonts.plain(TEXT);
            PdfPCell name = padded(sum.name(), font, Element.ALIGN_LEFT);
            PdfPCell amount = padded(figures.money(sum.amount()), font, Element.ALIGN_RIGHT);
            if (sum.strong()) {
                for (PdfPCell cell : List.of(name, amount)) {
                    cell.setBackgroundColor(new Color(0xF4EADA));
                    cell.setPaddingTop(7);
                    cell.setPaddingBottom(8);
                    cell.setPaddingLeft(6);
                    cell.setPaddingRight(6);
                }
            }
            table.addCell(name);
            table.addCell(amount);
        }
        return table;
    }

    private Paragraph note(MoneySheet.Pair note) {
        Paragraph paragraph = new Paragraph("", PaperFonts.soft(SMALL + 0.5f));
        paragraph.setSpacingBefore(6);
        paragraph.setLeading(13);
        paragraph.setKeepTogether(true);
        if (!note.name().isEmpty()) {
            paragraph.add(new Phrase(note.name() + "\n", PaperFonts.bold(SMALL + 0.5f)));
        }
        paragraph.add(new Phrase(note.value(), PaperFonts.soft(SMALL + 0.5f)));
        return paragraph;
    }

    private void head(PdfPTable table, String name, int align) {
        PdfPCell cell = padded(name, PaperFonts.soft(SMALL), align);
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderColor(PaperFonts.INK);
        cell.setBorderWidth(0.8f);
        table.addCell(cell);
    }

    private static PdfPCell lined(String text, Font font, int align) {
        PdfPCell cell = padded(text, font, align);
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderColor(PaperFonts.LINE);
        cell.setPaddingTop(6);
        cell.setPaddingBottom(7);
        return cell;
    }

    private static PdfPCell padded(String text, Font font, int align) {
        PdfPCell cell = new PdfPCell(new Phrase(text, font));
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setHorizontalAlignment(align);
        cell.setPaddingLeft(0);
        cell.setPaddingRight(align == Element.ALIGN_RIGHT ? 0 : 8);
        cell.setPaddingTop(2);
        cell.setPaddingBottom(4);
        return cell;
    }

    private static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setPadding(0);
        return cell;
    }

    private static Paragraph right(String text, Font font) {
        Paragraph paragraph = new Paragraph(11, text, font);
        paragraph.setAlignment(Element.ALIGN_RIGHT);
        return paragraph;
    }

    private static PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        return table;
    }

    private static Image scaled(byte[] bytes, float width, float height) {
        try {
            Image image = Image.getInstance(bytes);
            image.scaleToFit(width, height);
            return image;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Birch band at the top, seller and page numbers at the foot; the total is known when the last page is written. */
    private final class Foot extends PdfPageEventHelper {

        private PdfTemplate total;

        @Override
        public void onOpenDocument(PdfWriter writer, Document document) {
            total = writer.getDirectContent().createTemplate(30, 12);
        }

        @Override
        public void onEndPage(PdfWriter writer, Document document) {
            PdfContentByte content = writer.getDirectContent();
            Rectangle page = document.getPageSize();
            content.saveState();
            content.setColorFill(PaperFonts.BIRCH);
            content.rectangle(0, page.getTop() - BAND, page.getWidth(), BAND);
            content.fill();
            content.setColorFill(PaperFonts.ACCENT);
            content.rectangle(SIDE, page.getTop() - BAND, 48, BAND);
            content.fill();
            content.restoreState();
            String left = sheet.seller().getFirst() + " · " + sheet.title();
            String right = figures.text("papers.page", writer.getPageNumber()) + " ";
            float y = 30;
            content.beginText();
            content.setColorFill(PaperFonts.SOFT);
            content.setFontAndSize(PaperFonts.base(), SMALL);
            content.showTextAligned(Element.ALIGN_LEFT, left, SIDE, y, 0);
            content.showTextAligned(Element.ALIGN_RIGHT, right, page.getRight() - SIDE - 8, y, 0);
            content.endText();
            content.addTemplate(total, page.getRight() - SIDE - 8, y);
        }

        @Override
        public void onCloseDocument(PdfWriter writer, Document document) {
            total.beginText();
            total.setColorFill(PaperFonts.SOFT);
            total.setFontAndSize(PaperFonts.base(), SMALL);
            total.showText(Integer.toString(writer.getPageNumber() - 1));
            total.endText();
        }
    }
}
