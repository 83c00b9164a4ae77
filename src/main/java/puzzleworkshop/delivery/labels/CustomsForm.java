package puzzleworkshop.delivery.labels;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * The data of a customs declaration CN 22, in its order and with its words (Universal Postal Union, form CN 22; words as
 * postal operators print them, size from memory): category, contents with quantity, net weight and value of each, HS tariff number and origin, totals,
 * date and signature. The words are English, which together with French is what the form has; carriers ask for the data
 * electronically as well, and decide what they need.
 *
 * @param category the box that is ticked
 * @param lines what is in the parcel; equal goods are summed
 * @param hsCode heading or subheading of the Harmonized System
 * @param origin where it was made, ISO 3166-1
 */
record CustomsForm(
        GoodsCategory category,
        List<Line> lines,
        String hsCode,
        String origin,
        double totalGrams,
        Money total,
        LocalDate on,
        String sender) {

    /** Of the form: 74 × 105 mm. */
    static final Size SIZE = Size.mm(74, 105);

    private static final List<GoodsCategory> BOXES = List.of(
            GoodsCategory.GIFT,
            GoodsCategory.COMMERCIAL_SAMPLE,
            GoodsCategory.DOCUMENTS,
            GoodsCategory.RETURNED_GOODS,
            GoodsCategory.SALE_OF_GOODS,
            GoodsCategory.OTHER);

    private static final double BORDER_MM = 3;

    /** Of the usual sizes; below it the declaration would have letters of less than 4.2 points. */
    private static final float SMALLEST = 0.7f;

    private static final float STEP = 0.05f;

    /** One kind of goods. */
    record Line(String contents, int quantity, double netGrams, Money value) {

        private Line and(Line more) {
            return new Line(contents, quantity + more.quantity, netGrams + more.netGrams, value.plus(more.value));
        }
    }

    /** Goods described alike are one kind, as the form asks for. */
    CustomsForm {
        Map<String, Line> kinds = new LinkedHashMap<>();
        lines.forEach(line -> kinds.merge(line.contents(), line, Line::and));
        lines = List.copyOf(kinds.values());
    }

    /** @throws Refused when not all of it can be set so that it can still be read: a declaration is never cut off */
    PdfTemplate draw(PdfWriter writer, Formatter figures) {
        float width = Points.of(SIZE.width().mm());
        float height = Points.of(SIZE.height().mm());
        for (float scale = 1; scale >= SMALLEST; scale -= STEP) {
            PdfTemplate page = writer.getDirectContent().createTemplate(width, height);
            if (set(page, figures, scale, true)) {
                page.setColorStroke(PaperFonts.INK);
                page.setLineWidth(0.7f);
                page.rectangle(0.5f, 0.5f, width - 1, height - 1);
                page.stroke();
                set(page, figures, scale, false);
                return page;
            }
        }
        throw new Refused("delivery.cn22.full", lines.size());
    }

    private boolean set(PdfTemplate page, Formatter figures, float scale, boolean tried) {
        float border = Points.of(BORDER_MM);
        ColumnText column = new ColumnText(page);
        column.setSimpleColumn(
                border,
                border,
                Points.of(SIZE.width().mm()) - border,
                Points.of(SIZE.height().mm()) - border);
        column.addElement(line(figures.text("delivery.cn22.title"), true, 10 * scale));
        column.addElement(line(figures.text("delivery.cn22.opened"), false, 6.5f * scale));
        column.addElement(boxes(figures, scale));
        PdfPTable table = new PdfPTable(new float[] {6, 2.4f, 3});
        table.setWidthPercentage(100);
        table.setSpacingBefore(3);
        head(table, figures.text("delivery.cn22.contents"), scale);
        head(table, figures.text("delivery.cn22.weight"), scale);
        head(table, figures.text("delivery.cn22.value"), scale);
        for (Line each : lines) {
            cell(table, each.quantity() + " × " + each.contents(), scale);
            cell(table, kilograms(figures, each.netGrams()), scale);
            cell(table, named(each.value()), scale);
        }
        head(table, figures.text("delivery.cn22.hs"), scale);
        head(table, figures.text("delivery.cn22.total-weight"), scale);
        head(table, figures.text("delivery.cn22.total-value"), scale);
        cell(table, hsCode + " · " + origin, scale);
        cell(table, kilograms(figures, totalGrams), scale);
        cell(table, named(total), scale);
        column.addElement(table);
        column.addElement(line(figures.text("delivery.cn22.declares"), false, 6 * scale));
        column.addElement(line(figures.text("delivery.cn22.signed", on.toString(), sender), true, 6.5f * scale));
        return column.go(tried) == ColumnText.NO_MORE_TEXT;
    }

    /** The six boxes in two columns, one ticked, as on the form. */
    private PdfPTable boxes(Formatter figures, float scale) {
        PdfPTable boxes = new PdfPTable(2);
        boxes.setWidthPercentage(100);
        for (GoodsCategory box : BOXES) {
            boolean ticked = box == category.box();
            String words = figures.text((ticked ? category : box).textKey());
            PdfPCell cell = new PdfPCell(new Paragraph(
                    figures.text(ticked ? "delivery.cn22.ticked" : "delivery.cn22.empty", words),
                    ticked ? PaperFonts.bold(6.5f * scale) : PaperFonts.plain(6.5f * scale)));
            cell.setBorder(Rectangle.NO_BORDER);
            cell.setPadding(1);
            boxes.addCell(cell);
        }
        return boxes;
    }

    /** By its code: a sign alone says at the border only that it is some kind of dollar. */
    private static String named(Money money) {
        return money.currency().getCurrencyCode() + " "
                + money.rounded().amount().toPlainString();
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

    private static void head(PdfPTable table, String text, float scale) {
        cell(table, new Paragraph(text, PaperFonts.soft(5.5f * scale)));
    }

    private static void cell(PdfPTable table, String text, float scale) {
        cell(table, new Paragraph(text, PaperFonts.plain(7 * scale)));
    }

    private static void cell(PdfPTable table, Paragraph words) {
        PdfPCell cell = new PdfPCell(words);
        cell.setBorder(Rectangle.BOX);
        cell.setBorderWidth(0.4f);
        cell.setPadding(2);
        table.addCell(cell);
    }
}
