package puzzleworkshop.bench;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import org.openpdf.text.Document;
import org.openpdf.text.DocumentException;
import org.openpdf.text.Image;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfWriter;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.judged.LostPiece;

/** The print of one piece at exact size: its part of the framed picture with overhang, on a page of its own. */
@Component
public class PiecePrint {

    private static final int MOST_PIXELS = 4000;

    private final CroppedPictures pictures;

    PiecePrint(CroppedPictures pictures) {
        this.pictures = pictures;
    }

    /** @return PDF of one page, as large as the print */
    public byte[] pdf(FramedPicture framed, Size finished, LostPiece lost, Length overhang) {
        byte[] whole = pictures.proof(framed.picture(), framed.crop(), finished, overhang, MOST_PIXELS);
        try {
            return pdf(
                    part(ImageIO.read(new ByteArrayInputStream(whole)), finished, overhang, lost.print(overhang)),
                    lost);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** A part in the picture's own pixels and the exact place it shows. */
    record Part(BufferedImage image, Bounds shows, Bounds wanted) {}

    static Part part(BufferedImage whole, Size finished, Length overhang, Bounds wanted) {
        double perMm = whole.getWidth() / (finished.width().mm() + 2 * overhang.mm());
        int left = Math.clamp((long) Math.floor((wanted.minX() + overhang.mm()) * perMm), 0, whole.getWidth() - 1);
        int top = Math.clamp((long) Math.floor((wanted.minY() + overhang.mm()) * perMm), 0, whole.getHeight() - 1);
        int right = Math.clamp((long) Math.ceil((wanted.maxX() + overhang.mm()) * perMm), left + 1, whole.getWidth());
        int bottom = Math.clamp((long) Math.ceil((wanted.maxY() + overhang.mm()) * perMm), top + 1, whole.getHeight());
        BufferedImage part = new BufferedImage(right - left, bottom - top, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = part.createGraphics();
        g.drawImage(whole, -left, -top, Color.WHITE, null);
        g.dispose();
        return new Part(
                part,
                new Bounds(
                        left / perMm - overhang.mm(),
                        top / perMm - overhang.mm(),
                        right / perMm - overhang.mm(),
                        bottom / perMm - overhang.mm()),
                wanted);
    }

    private static byte[] pdf(Part part, LostPiece lost) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Bounds wanted = part.wanted();
        Document document = new Document(new Rectangle(points(wanted.width()), points(wanted.height())), 0, 0, 0, 0);
        try {
            PdfWriter.getInstance(document, bytes);
            document.addTitle("Piece " + lost.piece().number());
            document.open();
            Image image = Image.getInstance(part.image(), null);
            image.scaleAbsolute(
                    points(part.shows().width()), points(part.shows().height()));
            image.setAbsolutePosition(
                    points(part.shows().minX() - wanted.minX()),
                    points(wanted.maxY() - part.shows().maxY()));
            document.add(image);
            document.close();
        } catch (DocumentException failed) {
            throw new IllegalStateException("The print of a piece could not be written", failed);
        }
        return bytes.toByteArray();
    }

    private static float points(double mm) {
        return (float) (mm * 72 / Length.MM_PER_INCH);
    }
}
