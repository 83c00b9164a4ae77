package puzzleworkshop.printing.pdf;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.openpdf.text.Document;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.PrintItem;
import puzzleworkshop.printing.PrintPictures;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;

/**
 * Writes a run as a PDF at exact size, one page a sheet: pictures with their overhang, marks at the finished edges
 * outside the picture, order number and code in the waste below.
 *
 * <p>Page boxes (ISO 32000-1, 14.11.2): the MediaBox is the sheet. A sheet of several stickers has no single finished
 * page, so the TrimBox is the smallest rectangle around all finished outlines and the BleedBox the one around all
 * stickers with their overhang; with one sticker on the sheet they are its own trim and bleed. The output intent is sRGB.
 */
public final class SheetPdf {

    private final PrintRun run;
    private final PrintPictures pictures;
    private final SheetMarks marks;

    public SheetPdf(PrintRun run, PrintPictures pictures, SheetMarks marks) {
        this.run = run;
        this.pictures = pictures;
        this.marks = marks;
    }

    /**
     * @param waiting the approved picture of each order in the run
     * @param out stays open
     * @param progress told the share that is written, 0 to 1
     */
    public void write(Map<OrderId, PrintItem> waiting, OutputStream out, Consumer<Double> progress) throws IOException {
        Rectangle page = page(run.sheetSize());
        Document document = new Document(page, 0, 0, 0, 0);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        writer.setPdfVersion(PdfWriter.VERSION_1_7);
        boxes(writer, 0);
        document.addTitle(marks.title());
        document.addCreator("Puzzle Workshop");
        document.open();
        ICC_Profile screen = ICC_Profile.getInstance(ColorSpace.CS_sRGB);
        writer.setOutputIntents("sRGB IEC61966-2.1", "", "http://www.color.org", "sRGB IEC61966-2.1", screen);
        int done = 0;
        SheetPictures written = new SheetPictures(writer, pictures);
        for (int sheet = 0; sheet < run.sheets(); sheet++) {
            if (sheet > 0) {
                boxes(writer, sheet);
                document.newPage();
            }
            writer.setPageEmpty(false);
            PdfContentByte content = writer.getDirectContent();
            for (RunItem item : run.on(sheet).toList()) {
                LaidSticker laid = new LaidSticker(item, run.sheetSize().height());
                written.place(content, laid, waiting.get(item.order().id()));
                run.crosses().ifPresent(crosses -> CrossMarks.draw(content, laid, crosses));
                marks.draw(content, laid);
                done++;
                progress.accept(done / (double) run.laid().size());
            }
        }
        document.close();
    }

    private void boxes(PdfWriter writer, int sheet) {
        List<LaidSticker> laid = run.on(sheet)
                .map(item -> new LaidSticker(item, run.sheetSize().height()))
                .toList();
        writer.setBoxSize("trim", around(laid.stream().map(LaidSticker::trim).toList()));
        writer.setBoxSize("bleed", around(laid.stream().map(LaidSticker::bleed).toList()));
    }

    private static Rectangle around(List<double[]> boxes) {
        double[] all = boxes.getFirst().clone();
        for (double[] box : boxes) {
            all[0] = Math.min(all[0], box[0]);
            all[1] = Math.min(all[1], box[1]);
            all[2] = Math.max(all[2], box[2]);
            all[3] = Math.max(all[3], box[3]);
        }
        return new Rectangle((float) all[0], (float) all[1], (float) all[2], (float) all[3]);
    }

    private static Rectangle page(Size size) {
        return new Rectangle((float) (size.width().mm() * LaidSticker.POINTS_PER_MM), (float)
                (size.height().mm() * LaidSticker.POINTS_PER_MM));
    }
}
