package puzzleworkshop.delivery.labels;

import java.time.LocalDate;
import java.util.List;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.ColumnText;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;

/**
 * The data of a customs declaration CN 22, in its order and with its words (Universal Postal Union, form CN 22; words as
 * postal operators print them, size from memory): category, contents with quantity, net weight and value of each, HS tariff number and origin, totals,
 * date and signature. The words are English, which together with French is what the form has; carriers ask for the data
 * electronically as well, and decide what they need.
 *
 * @param lines what is in the parcel
 * @param hsCode heading or subheading of the Harmonized System
 * @param origin where it was made, ISO 3166-1
 */
record CustomsForm(
        List<Line> lines, String hsCode, String origin, double totalGrams, Money total, LocalDate on, String sender) {

    /** Of the form: 74 × 105 mm. */
    static final Size SIZE = Size.mm(74, 105);

    private static final double BORDER_MM = 3;

    /** One kind of goods. */
    record Line(String contents, int quantity, double netGrams, Money value) {}

    PdfTemplate draw(PdfWriter writer, Formatter figures) {
        float width = Points.of(SIZE.width().mm());
        float height = Points.of(SIZE.height().mm());
        PdfTemplate page = writer.getDirectContent().createTemplate(width, height);
        page.setColorStroke(PaperFonts.INK);
        page.setLineWidth(0.7f);
        page.rectangle(0.5f, 0.5f, width - 1, height - 1);
        page.stroke();
        float border = Points.of(BORDER_MM);
        ColumnText column = new ColumnText(page);
        column.setSimpleColumn(border, border, width - border, height - border);
        column.addElement(line(figures.text("delivery.cn22.title"), true, 10));
        column.addElement(line(figures.text("delivery.cn22.opened"), false, 6.5f));
        column.addElement(line(figures.text("delivery.cn22.category"), false, 6.5f));
        column.addElement(line(figures.text("delivery.cn22.sale"), true, 6.5f));
        PdfPTable table = new PdfPTable(new float[] {6, 2.4f, 3});
        table.setWidthPercentage(100);
        table.setSpacingBefore(3);
        cell(table, figures.text("delivery.cn22.contents"), true);
        cell(table, figures.text("delivery.cn22.weight"), true);
        cell(table, figures.text("delivery.cn22.value"), true);
        for (Line each : lines) {
            cell(table, each.quantity() + " × " + each.contents(), false);
            cell(table, kilograms(figures, each.netGrams()), false);
            cell(table, figures.money(each.value()), false);
        }
        cell(table, figures.text("delivery.cn22.hs"), true);
        cell(table, figures.text("delivery.cn22.total-weight"), true);
        cell(table, figures.text("delivery.cn22.total-value"), true);
        cell(table, hsCode + " · " + origin, false);
        cell(table, kilograms(figures, totalGrams), false);
        cell(table, figures.money(total), false);
        column.addElement(table);
        column.addElement(line(figures.text("delivery.cn22.declares"), false, 6));
        column.addElement(line(figures.text("delivery.cn22.signed", on.toString(), sender), true, 6.5f));
        column.go();
        return page;
    }

    private static String kilograms(Formatter figures, double grams) {
        return figures.number(grams / 1000, 3);
    }

    private static Paragraph line(String text, boolean bold, float size) {
        Paragraph line = new Paragraph(text, bold ? PaperFonts.bold(size) : PaperFonts.plain(size));
        line.setLeading(size * 1.2f);
        line.setSpacingAfter(2);
        return line;
    }

    private static void cell(PdfPTable table, String text, boolean head) {
        PdfPCell cell = new PdfPCell(new Paragraph(text, head ? PaperFonts.soft(5.5f) : PaperFonts.plain(7)));
        cell.setBorder(Rectangle.BOX);
        cell.setBorderWidth(0.4f);
        cell.setPadding(2);
        table.addCell(cell);
    }
}
