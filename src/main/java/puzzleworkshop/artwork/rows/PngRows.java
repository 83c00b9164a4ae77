package puzzleworkshop.artwork.rows;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.Readers;

/** A PNG's rows: plain eight-bit ones in one pass, interlaced, indexed and deep ones by strips. */
public final class PngRows {

    /** Where the header chunk, always the first, says whether rows come in order. */
    private static final int INTERLACE = 28;

    private PngRows() {}

    public static void read(Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        if (!readOnePass(file, facts, spout)) {
            StripRows.read(file, facts, spout);
        }
    }

    private static boolean readOnePass(Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        ImageReader reader = Readers.ofJava("png");
        try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
            in.seek(INTERLACE);
            boolean interlaced = in.readByte() != 0;
            in.seek(0);
            reader.setInput(in, true, true);
            ImageTypeSpecifier type = reader.getRawImageType(0);
            boolean plain = !interlaced
                    && facts.colours().bits() == 8
                    && type != null
                    && type.getColorModel() instanceof ComponentColorModel;
            if (!plain) {
                return false;
            }
            int bands = type.getNumBands();
            int colourBands = bands == 1 || bands == 2 ? 1 : 3;
            boolean alpha = bands == 2 || bands == 4;
            byte[] flat = new byte[facts.storedWidth() * colourBands];
            RowTaker into =
                    alpha ? (y, samples) -> spout.row(y, Flatten.onWhite(samples, colourBands, flat)) : spout::row;
            spout.open(colourBands);
            ColorModel colours = new ComponentColorModel(
                    ColorSpace.getInstance(colourBands == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB),
                    alpha,
                    false,
                    alpha ? Transparency.TRANSLUCENT : Transparency.OPAQUE,
                    DataBuffer.TYPE_BYTE);
            RowRaster rows = new RowRaster(facts.storedWidth(), facts.storedHeight(), bands, into);
            ImageReadParam param = reader.getDefaultReadParam();
            param.setDestination(new BufferedImage(colours, rows, false, null));
            reader.read(0, param);
            return true;
        } finally {
            reader.dispose();
        }
    }
}
