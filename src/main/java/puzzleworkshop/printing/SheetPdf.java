package puzzleworkshop.printing;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.openpdf.text.Document;
import org.openpdf.text.Image;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfArray;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfICCBased;
import org.openpdf.text.pdf.PdfIndirectReference;
import org.openpdf.text.pdf.PdfName;
import org.openpdf.text.pdf.PdfNumber;
import org.openpdf.text.pdf.PdfStream;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.measure.Size;

/**
 * Writes a run as a PDF at exact size, one page a sheet: pictures with their overhang, marks at the finished edges
 * outside the picture, order number and code in the waste below.
 *
 * <p>Page boxes (ISO 32000-1, 14.11.2): the MediaBox is the sheet. A sheet of several stickers has no single finished
 * page, so the TrimBox is the smallest rectangle around all finished outlines and the BleedBox the one around all
 * stickers with their overhang; with one sticker on the sheet they are its own trim and bleed. Colours are sRGB, said by
 * every picture and by the output intent. Pictures are streamed: one at a time is open, none is held in memory.
 */
final class SheetPdf {

    private final PrintRun run;
    private final StickerPicture.Source pictures;
    private final SheetMarks marks;

    SheetPdf(PrintRun run, StickerPicture.Source pictures, SheetMarks marks) {
        this.run = run;
        this.pictures = pictures;
        this.marks = marks;
    }

    /**
     * @param waiting the approved picture of each order in the run
     * @param out stays open
     * @param progress told the share that is written, 0 to 1
     */
    void write(Map<Long, PrintItem> waiting, OutputStream out, Consumer<Double> progress) throws IOException {
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
        PdfIndirectReference colours = writer.addToBody(new PdfICCBased(screen)).getIndirectReference();
        int done = 0;
        Pictures written = new Pictures(writer, colours);
        for (int sheet = 0; sheet < run.sheets(); sheet++) {
            if (sheet > 0) {
                boxes(writer, sheet);
                document.newPage();
            }
            writer.setPageEmpty(false);
            PdfContentByte content = writer.getDirectContent();
            for (RunItem item : run.on(sheet).toList()) {
                LaidSticker laid = new LaidSticker(item, run.sheetSize().height());
                place(content, laid, written.of(waiting.get(item.orderId())));
                marks.draw(content, laid);
                done++;
                progress.accept(done / (double) run.laid().size());
            }
        }
        document.close();
    }

    /** In the middle of its sticker and cut off at the sticker's edges: a picture is whole pixels, a sticker is not. */
    private static void place(PdfContentByte content, LaidSticker laid, Written picture) {
        double[] bleed = laid.bleed();
        content.saveState();
        content.rectangle((float) bleed[0], (float) bleed[1], (float) (bleed[2] - bleed[0]), (float) (bleed[3] - bleed[1]));
        content.clip();
        content.newPath();
        double left = (laid.width() - picture.printed().width().mm()) / 2;
        double top = (laid.height() - picture.printed().height().mm()) / 2;
        double right = laid.width() - left;
        double bottom = laid.height() - top;
        double x = laid.x(left, bottom);
        double y = laid.y(left, bottom);
        content.addImage(picture.image(), (float) (laid.x(right, bottom) - x), (float) (laid.y(right, bottom) - y),
                (float) (laid.x(left, top) - x), (float) (laid.y(left, top) - y), (float) x, (float) y);
        content.restoreState();
    }

    private void boxes(PdfWriter writer, int sheet) {
        List<LaidSticker> laid =
                run.on(sheet).map(item -> new LaidSticker(item, run.sheetSize().height())).toList();
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
        return new Rectangle((float) (size.width().mm() * LaidSticker.POINTS_PER_MM),
                (float) (size.height().mm() * LaidSticker.POINTS_PER_MM));
    }

    /** A picture whose pixels stand in the file already. */
    private record Written(Image image, Size printed) {}

    /** Pictures already written: copies of one order share one. */
    private final class Pictures {
        private final PdfWriter writer;
        private final PdfIndirectReference colours;
        private final Map<Long, Written> byOrder = new java.util.HashMap<>();

        Pictures(PdfWriter writer, PdfIndirectReference colours) {
            this.writer = writer;
            this.colours = colours;
        }

        Written of(PrintItem item) throws IOException {
            Written known = byOrder.get(item.orderId());
            if (known == null) {
                known = stream(item);
                byOrder.put(item.orderId(), known);
            }
            return known;
        }

        /** Writes the pixels straight into the file; what is kept is only where they stand. */
        private Written stream(PrintItem item) throws IOException {
            try (StickerPicture picture = pictures.open(item)) {
                PdfStream pixels = new PdfStream(picture.jpeg(), writer);
                pixels.put(PdfName.TYPE, PdfName.XOBJECT);
                pixels.put(PdfName.SUBTYPE, PdfName.IMAGE);
                pixels.put(PdfName.WIDTH, new PdfNumber(picture.width()));
                pixels.put(PdfName.HEIGHT, new PdfNumber(picture.height()));
                pixels.put(PdfName.BITSPERCOMPONENT, new PdfNumber(8));
                PdfArray space = new PdfArray(PdfName.ICCBASED);
                space.add(colours);
                pixels.put(PdfName.COLORSPACE, space);
                pixels.put(PdfName.FILTER, PdfName.DCTDECODE);
                PdfIndirectReference where = writer.addToBody(pixels).getIndirectReference();
                pixels.writeLength();
                Image image = Image.getInstance(1, 1, 3, 8, new byte[3]);
                image.setDirectReference(where);
                return new Written(image, picture.printed());
            }
        }
    }
}
