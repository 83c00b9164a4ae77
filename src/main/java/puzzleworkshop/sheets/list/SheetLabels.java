package puzzleworkshop.sheets.list;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.util.List;
import org.openpdf.text.Document;
import org.openpdf.text.Element;
import org.openpdf.text.Font;
import org.openpdf.text.Phrase;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.ColumnText;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfWriter;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.display.QrCode;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackStore;
import puzzleworkshop.workshop.Workshop;

/**
 * Labels for sheets, 62 × 29 mm each on a page of its own: number, size, kind, place, a small drawing and a QR code that
 * opens the sheet on a phone. The code holds the workshop's public address, or the address asked for.
 */
@Component
public class SheetLabels {

    private static final float MM = 72 / 25.4f;
    private static final float WIDTH = 62 * MM;
    private static final float HEIGHT = 29 * MM;

    private final Formatter figures;
    private final Workshop workshop;
    private final RackStore rack;

    SheetLabels(Formatter figures, Workshop workshop, RackStore rack) {
        this.figures = figures;
        this.workshop = workshop;
        this.rack = rack;
    }

    /** The address by which the browser reached this program, for when no public one is set. */
    public static String base(String host, boolean secure) {
        return host == null || host.isBlank() ? "" : (secure ? "https://" : "http://") + host;
    }

    /** What the code of a sheet says: its page under the public address, or under the one given when there is none. */
    public String address(SheetId id, String reachedAt) {
        String publicUrl = workshop.profile().publicUrl();
        return (publicUrl.isBlank() ? reachedAt : publicUrl) + "/sheets/number/" + id;
    }

    /** @param reachedAt see {@link #base} */
    public byte[] pdf(List<Sheet> sheets, String reachedAt) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle(WIDTH, HEIGHT), 0, 0, 0, 0);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        document.addTitle(figures.text("sheets.label.title"));
        document.open();
        for (Sheet sheet : sheets) {
            document.newPage();
            label(writer.getDirectContent(), sheet, address(sheet.id(), reachedAt));
        }
        if (sheets.isEmpty()) {
            // a paper without a page cannot be made
            line(writer.getDirectContent(), figures.text("sheets.empty.title"), PaperFonts.plain(8), 6, 40);
            writer.setPageEmpty(false);
        }
        document.close();
        return out.toByteArray();
    }

    private void label(PdfContentByte page, Sheet sheet, String address) {
        QrCode.of(address, 2).draw(page, WIDTH - 25 * MM, 4.5f * MM, 20 * MM, Color.BLACK);
        Font large = PaperFonts.bold(20);
        Font small = PaperFonts.plain(7.5f);
        line(page, sheet.id().toString(), large, 2.5f * MM, HEIGHT - 8 * MM);
        line(page, figures.size(sheet.outline().bounds()), small, 2.5f * MM, HEIGHT - 12 * MM);
        String material = rack.materials().stream()
                .filter(m -> m.id().equals(sheet.facts().material()))
                .map(Material::name)
                .findFirst()
                .orElse(sheet.facts().material());
        line(page, material + " " + figures.length(sheet.facts().thickness()), small, 2.5f * MM, HEIGHT - 15.5f * MM);
        line(page, sheet.facts().place(), small, 2.5f * MM, HEIGHT - 19 * MM);
        drawing(page, sheet, 20 * MM, HEIGHT - 10 * MM, 15 * MM, 8 * MM);
        if (!sheet.facts().past().isFitForCutting()) {
            line(page, figures.text("sheets.label.never"), small, 2.5f * MM, 2.5f * MM);
        }
    }

    private static void line(PdfContentByte page, String text, Font font, float x, float y) {
        ColumnText.showTextAligned(page, Element.ALIGN_LEFT, new Phrase(text, font), x, y, 0);
    }

    private static void drawing(PdfContentByte page, Sheet sheet, float x, float y, float w, float h) {
        Size bounds = sheet.outline().bounds();
        Point origin = sheet.outline().origin();
        double scale = Math.min(w / bounds.width().mm(), h / bounds.height().mm());
        page.setLineWidth(0.7f);
        for (int r = -1; r < sheet.outline().badAreas().size(); r++) {
            List<Point> ring =
                    r < 0 ? sheet.outline().outer() : sheet.outline().badAreas().get(r);
            for (int i = 0; i < ring.size(); i++) {
                float px = x + (float) ((ring.get(i).xMm() - origin.xMm()) * scale);
                float py = y + h - (float) ((ring.get(i).yMm() - origin.yMm()) * scale);
                if (i == 0) {
                    page.moveTo(px, py);
                } else {
                    page.lineTo(px, py);
                }
            }
            page.closePathStroke();
        }
    }
}
