package puzzleworkshop.papers.ticket;

import java.util.List;
import org.openpdf.text.Chunk;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Phrase;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.workshop.Stage;

/** The stages on a job ticket, each with a box to tick, what to look at, and who did it. */
final class TicketStages {

    private static final float TEXT = 9;
    private static final float SMALL = 7.5f;

    private TicketStages() {}

    /** @param handOver what to look at when this order is handed over */
    static PdfPTable table(List<Checklist.Line> handOver, Formatter figures) {
        PdfPTable stages = TicketCells.table(1, 5, 22, 5);
        stages.setSpacingBefore(8);
        for (Stage stage : Stage.values()) {
            PdfPCell box = TicketCells.lined();
            box.addElement(new Chunk("\u00a0", PaperFonts.plain(TEXT)));
            box.setCellEvent((cell, place, canvases) -> {
                PdfContentByte canvas = canvases[PdfPTable.LINECANVAS];
                canvas.saveState();
                canvas.setLineWidth(0.8f);
                canvas.setColorStroke(PaperFonts.INK);
                canvas.rectangle(place.getLeft() + 1, place.getTop() - 14, 10, 10);
                canvas.stroke();
                canvas.restoreState();
            });
            stages.addCell(box);
            PdfPCell name = TicketCells.lined();
            name.addElement(new Paragraph(figures.text(stage.textKey()), PaperFonts.bold(TEXT)));
            stages.addCell(name);
            PdfPCell checks = TicketCells.lined();
            checks.addElement(checks(stage == Stage.HAND_OVER ? handOver : Checklist.of(stage), figures));
            stages.addCell(checks);
            PdfPCell who = TicketCells.lined();
            who.addElement(new Paragraph(figures.text("papers.ticket.who"), PaperFonts.soft(SMALL)));
            stages.addCell(who);
        }
        return stages;
    }

    private static Paragraph checks(List<Checklist.Line> lines, Formatter figures) {
        Phrase phrase = new Phrase();
        boolean first = true;
        for (Checklist.Line line : lines) {
            if (!first) {
                phrase.add(new Chunk("  ·  ", PaperFonts.soft(SMALL)));
            }
            first = false;
            String text = figures.text(line.textKey());
            phrase.add(
                    line.caution()
                            ? new Chunk(figures.text("bench.caution", text), PaperFonts.bold(SMALL))
                            : new Chunk(text, PaperFonts.plain(SMALL)));
        }
        Paragraph checks = new Paragraph(phrase);
        checks.setLeading(9.6f);
        return checks;
    }
}
