package puzzleworkshop.papers.ticket;

import java.awt.Color;
import java.util.List;
import org.openpdf.text.Element;
import org.openpdf.text.Image;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Sheet;

/** Draws a board to scale on paper: wood, bad areas, and where the blank lies. */
final class TicketBoard {

    private static final Color BAD = new Color(0xB8996A);

    private final Outline outline;
    private final Chosen block;
    private final Formatter figures;

    TicketBoard(JobTicket.Board board, Formatter figures) {
        this.block = board.block();
        this.outline = board.sheet().map(Sheet::outline).orElseGet(() -> around(board.block()));
        this.figures = figures;
    }

    /** A board that is still to be bought is not known: the blank alone is drawn. */
    private static Outline around(Chosen block) {
        List<Point> corners = block.placement().corners(block.size());
        return Outline.of(corners);
    }

    Image draw(PdfWriter writer, float most, float mostHigh) {
        Size bounds = outline.bounds();
        float scale = (float)
                Math.min(most / bounds.width().mm(), mostHigh / bounds.height().mm());
        float width = (float) bounds.width().mm() * scale + 2;
        float height = (float) bounds.height().mm() * scale + 2;
        PdfTemplate canvas = writer.getDirectContent().createTemplate(width, height);
        // points per millimetre, y up on paper and down on the board
        Point origin = outline.origin();
        canvas.concatCTM(
                scale, 0, 0, -scale, 1 - (float) origin.xMm() * scale, height - 1 + (float) origin.yMm() * scale);
        canvas.setLineWidth(0.8f / scale);
        canvas.setColorStroke(BAD);
        canvas.setColorFill(PaperFonts.BIRCH);
        ring(canvas, outline.outer());
        canvas.fillStroke();
        canvas.setColorFill(BAD);
        for (List<Point> bad : outline.badAreas()) {
            ring(canvas, bad);
            canvas.fill();
        }
        canvas.setColorStroke(PaperFonts.ACCENT);
        canvas.setLineWidth(1.6f / scale);
        List<Point> corners = block.placement().corners(block.size());
        ring(canvas, corners);
        canvas.stroke();
        label(canvas, scale);
        Image image = Image.getInstance(canvas);
        image.setWidthPercentage(0); // as large as it is: else a cell stretches it to its own width
        return image;
    }

    /**
     * How large letters stand in a block, and which way: a blank that stands upright on a large board is narrower than its words.
     *
     * @param points size of the letters
     * @param turned from bottom to top
     */
    record Lettering(float points, boolean turned) {

        private static final float USUAL = 8;
        /** Half a point of line and a breath on either side. */
        private static final float AROUND = 4;

        /** @param across width of the block as drawn, in points; down likewise */
        static Lettering of(String words, float across, float down) {
            float wide = PaperFonts.base().getWidthPoint(words, USUAL);
            boolean turned = wide > across - AROUND && down > across;
            float room = Math.max(1, (turned ? down : across) - AROUND);
            return new Lettering(Math.min(USUAL, USUAL * room / wide), turned);
        }
    }

    private void label(PdfTemplate canvas, float scale) {
        Point centre = block.placement().centre(block.size());
        Bounds drawn = block.placement().corners(block.size()).stream()
                .map(Bounds::at)
                .reduce(Bounds::and)
                .orElseThrow();
        String words = figures.size(block.size());
        Lettering letters = Lettering.of(words, (float) drawn.width() * scale, (float) drawn.height() * scale);
        float below = letters.points() * 0.36f;
        canvas.saveState();
        canvas.concatCTM(1 / scale, 0, 0, -1 / scale, (float) centre.xMm(), (float) centre.yMm());
        canvas.beginText();
        canvas.setColorFill(PaperFonts.ACCENT);
        canvas.setFontAndSize(PaperFonts.base(), letters.points());
        canvas.showTextAligned(
                Element.ALIGN_CENTER,
                words,
                letters.turned() ? below : 0,
                letters.turned() ? 0 : -below,
                letters.turned() ? 90 : 0);
        canvas.endText();
        canvas.restoreState();
    }

    private static void ring(PdfContentByte canvas, List<Point> ring) {
        canvas.moveTo((float) ring.getFirst().xMm(), (float) ring.getFirst().yMm());
        ring.stream().skip(1).forEach(spot -> canvas.lineTo((float) spot.xMm(), (float) spot.yMm()));
        canvas.closePath();
    }
}
