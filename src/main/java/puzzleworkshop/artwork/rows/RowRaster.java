package puzzleworkshop.artwork.rows;

import java.awt.Point;
import java.awt.image.ComponentSampleModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;

/**
 * A raster that keeps nothing: it hands on each row the moment a reader has stored it. Java's JPEG reader stores whole
 * rows by {@link #setRect(int, int, Raster)}, its PNG reader pixel by pixel from left to right; so a picture of any height
 * is read in one pass with one row of memory, where reading by regions would decode everything above each region again.
 */
public final class RowRaster extends WritableRaster {

    private final int rowBytes;
    private final RowTaker taker;
    private final byte[] pixels;
    private int next;

    public RowRaster(int width, int height, int bands, RowTaker taker) {
        // A scanline stride of 0 lets every row be the same memory.
        super(
                new ComponentSampleModel(DataBuffer.TYPE_BYTE, width, height, bands, 0, offsets(bands)),
                new DataBufferByte(width * bands),
                new Point(0, 0));
        this.rowBytes = width * bands;
        this.taker = taker;
        this.pixels = new byte[rowBytes];
    }

    private static int[] offsets(int bands) {
        int[] offsets = new int[bands];
        for (int i = 0; i < bands; i++) {
            offsets[i] = i;
        }
        return offsets;
    }

    @Override
    public void setRect(int x, int y, Raster row) {
        boolean wholeRow = x == 0
                && row.getHeight() == 1
                && row.getWidth() == width
                && row.getDataBuffer() instanceof DataBufferByte bytes
                && bytes.getData().length >= rowBytes
                && row.getNumBands() == numBands;
        if (!wholeRow) {
            throw new IllegalStateException("Not a whole row");
        }
        taker.row(y, ((DataBufferByte) row.getDataBuffer()).getData());
    }

    @Override
    public void setPixel(int x, int y, int[] samples) {
        if (x * numBands != next) {
            throw new IllegalStateException("Not from left to right");
        }
        for (int band = 0; band < numBands; band++) {
            pixels[next++] = (byte) samples[band];
        }
        if (next == rowBytes) {
            next = 0;
            taker.row(y, pixels);
        }
    }
}
