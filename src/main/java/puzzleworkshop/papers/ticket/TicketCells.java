package puzzleworkshop.papers.ticket;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.openpdf.text.Image;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import puzzleworkshop.display.PaperFonts;

/** Tables, cells and pictures as they stand on a job ticket. */
final class TicketCells {

    private TicketCells() {}

    static PdfPTable table(float... widths) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        return table;
    }

    static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setPadding(0);
        cell.setPaddingRight(8);
        return cell;
    }

    static PdfPCell lined() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.TOP);
        cell.setBorderColor(PaperFonts.LINE);
        cell.setPadding(0);
        cell.setPaddingTop(1);
        cell.setPaddingBottom(3.5f);
        cell.setPaddingRight(6);
        return cell;
    }

    static Image image(byte[] jpeg) {
        try {
            return Image.getInstance(jpeg);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static Image scaled(Image image, float width, float height) {
        image.scaleToFit(width, height);
        return image;
    }
}
