package puzzleworkshop.sheets;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Refused;

/** Makes photos of sheets small enough to keep: at most 1,600 pixels on the longer side, as JPEG without any tags. */
@Component
public class SheetPhotos {

    private static final int LONGEST = 1600;
    private static final long MOST_PIXELS = 120_000_000L;

    /** @throws Refused when it is no picture that can be read, or one far too large */
    public byte[] reduced(byte[] photo) {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(photo))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw new Refused("sheets.photo.unreadable");
            }
            ImageReader reader = readers.next();
            reader.setInput(in, true, true);
            int longer = Math.max(reader.getWidth(0), reader.getHeight(0));
            if ((long) reader.getWidth(0) * reader.getHeight(0) > MOST_PIXELS) {
                throw new Refused("sheets.photo.toolarge");
            }
            // skipping pixels while reading keeps a large photo from filling the memory
            ImageReadParam param = reader.getDefaultReadParam();
            int skip = Math.max(1, longer / (2 * LONGEST));
            param.setSourceSubsampling(skip, skip, 0, 0);
            BufferedImage read = reader.read(0, param);
            reader.dispose();
            return jpeg(read);
        } catch (IOException | RuntimeException unreadable) {
            if (unreadable instanceof Refused refused) {
                throw refused;
            }
            throw new Refused("sheets.photo.unreadable");
        }
    }

    private static byte[] jpeg(BufferedImage read) throws IOException {
        double scale = Math.min(1, (double) LONGEST / Math.max(read.getWidth(), read.getHeight()));
        int w = Math.max(1, (int) Math.round(read.getWidth() * scale));
        int h = Math.max(1, (int) Math.round(read.getHeight() * scale));
        BufferedImage small = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = small.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, w, h);
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        pen.drawImage(read, 0, 0, w, h, null);
        pen.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(small, "jpeg", out);
        return out.toByteArray();
    }
}
