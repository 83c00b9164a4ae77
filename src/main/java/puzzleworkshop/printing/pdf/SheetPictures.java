package puzzleworkshop.printing.pdf;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.openpdf.text.Image;
import org.openpdf.text.pdf.PdfArray;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfICCBased;
import org.openpdf.text.pdf.PdfIndirectReference;
import org.openpdf.text.pdf.PdfName;
import org.openpdf.text.pdf.PdfNumber;
import org.openpdf.text.pdf.PdfStream;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.artwork.PrintPicture;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.printing.PrintItem;
import puzzleworkshop.printing.PrintPictures;

/**
 * The pictures of one print file: each is written once, streamed from its file, and laid wherever it is wanted; copies of
 * an order share it. Every picture says its colours by an ICC profile.
 */
final class SheetPictures {

    /** A picture whose pixels stand in the file already. */
    private record Written(Image image, List<PrintPicture.Lay> laid, OptionalInt ground) {}

    private final PdfWriter writer;
    private final PrintPictures source;
    private final PdfIndirectReference screen;
    private Optional<PdfIndirectReference> grey = Optional.empty();
    private final Map<OrderId, Written> byOrder = new HashMap<>();

    SheetPictures(PdfWriter writer, PrintPictures source) throws IOException {
        this.writer = writer;
        this.source = source;
        this.screen = profile(ICC_Profile.getInstance(ColorSpace.CS_sRGB));
    }

    /** Cut off at the sticker's edges. */
    void place(PdfContentByte content, LaidSticker sticker, PrintItem item) throws IOException {
        Written picture = of(item);
        content.saveState();
        clip(content, sticker.bleed());
        if (picture.ground().isPresent()) {
            double[] all = sticker.bleed();
            content.setColorFill(new java.awt.Color(picture.ground().getAsInt()));
            content.rectangle((float) all[0], (float) all[1], (float) (all[2] - all[0]), (float) (all[3] - all[1]));
            content.fill();
        }
        for (PrintPicture.Lay lay : picture.laid()) {
            content.saveState();
            PrintPicture.Box within = lay.within();
            clip(content, sticker.box(within.left(), within.top(), within.right(), within.bottom()));
            place(content, sticker, lay, picture.image());
            content.restoreState();
        }
        content.restoreState();
    }

    /** In a PDF a picture is a square of 1 × 1 that stands on its lower left corner (ISO 32000-1, 8.9.3). */
    private static void place(PdfContentByte content, LaidSticker sticker, PrintPicture.Lay lay, Image image) {
        double lowerX = lay.x() + lay.downX();
        double lowerY = lay.y() + lay.downY();
        double x = sticker.x(lowerX, lowerY);
        double y = sticker.y(lowerX, lowerY);
        double rightX = sticker.x(lowerX + lay.acrossX(), lowerY + lay.acrossY());
        double rightY = sticker.y(lowerX + lay.acrossX(), lowerY + lay.acrossY());
        double upperX = sticker.x(lay.x(), lay.y());
        double upperY = sticker.y(lay.x(), lay.y());
        content.addImage(
                image,
                (float) (rightX - x),
                (float) (rightY - y),
                (float) (upperX - x),
                (float) (upperY - y),
                (float) x,
                (float) y);
    }

    private static void clip(PdfContentByte content, double[] box) {
        content.rectangle((float) box[0], (float) box[1], (float) (box[2] - box[0]), (float) (box[3] - box[1]));
        content.clip();
        content.newPath();
    }

    private Written of(PrintItem item) throws IOException {
        Written known = byOrder.get(item.order().id());
        if (known == null) {
            known = write(item);
            byOrder.put(item.order().id(), known);
        }
        return known;
    }

    /** Copies the pixels straight into the file; what is kept is only where they stand. */
    private Written write(PrintItem item) throws IOException {
        try (PrintPicture picture = source.open(item);
                InputStream jpeg = Files.newInputStream(picture.jpeg())) {
            PdfStream pixels = new PdfStream(jpeg, writer);
            pixels.put(PdfName.TYPE, PdfName.XOBJECT);
            pixels.put(PdfName.SUBTYPE, PdfName.IMAGE);
            pixels.put(PdfName.WIDTH, new PdfNumber(picture.width()));
            pixels.put(PdfName.HEIGHT, new PdfNumber(picture.height()));
            pixels.put(PdfName.BITSPERCOMPONENT, new PdfNumber(8));
            PdfArray space = new PdfArray(PdfName.ICCBASED);
            space.add(colours(picture));
            pixels.put(PdfName.COLORSPACE, space);
            pixels.put(PdfName.FILTER, PdfName.DCTDECODE);
            PdfIndirectReference where = writer.addToBody(pixels).getIndirectReference();
            pixels.writeLength();
            Image image = Image.getInstance(1, 1, 3, 8, new byte[3]);
            image.setDirectReference(where);
            return new Written(image, picture.laid(), picture.ground());
        }
    }

    private PdfIndirectReference colours(PrintPicture picture) throws IOException {
        if (picture.profile().isPresent()) {
            return profile(ICC_Profile.getInstance(picture.profile().get()));
        }
        if (picture.channels() == 3) {
            return screen;
        }
        if (grey.isEmpty()) {
            grey = Optional.of(profile(GreyProfile.make()));
        }
        return grey.get();
    }

    private PdfIndirectReference profile(ICC_Profile profile) throws IOException {
        return writer.addToBody(new PdfICCBased(profile)).getIndirectReference();
    }
}
