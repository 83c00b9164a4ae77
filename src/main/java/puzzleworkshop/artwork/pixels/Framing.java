package puzzleworkshop.artwork.pixels;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.artwork.rows.ScreenColours;

/**
 * Draws what a crop shows, with its overhang, at any resolution, row by row. Every new pixel is the mean of the area it
 * covers; where it covers less than one pixel of the picture, neighbours are blended in proportion (bilinear).
 */
public final class Framing {

    private final TurnedRows rows;
    private final ScreenColours colours;
    private final Crop crop;
    private final ResampleWeights across;
    private final ResampleWeights down;
    private final int channels;
    private final Map<Integer, float[]> shrunkRows;

    private Framing(TurnedRows rows, ScreenColours colours, Crop crop, ResampleWeights across, ResampleWeights down) {
        this.rows = rows;
        this.colours = colours;
        this.crop = crop;
        this.across = across;
        this.down = down;
        this.channels = rows.channels();
        int kept = down.widest() + 2;
        this.shrunkRows = new LinkedHashMap<>() {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Integer, float[]> eldest) {
                return size() > kept;
            }
        };
    }

    /**
     * @param width pixels across the frame, without overhang
     * @param height pixels down the frame
     * @param overhang pixels beyond the frame on every side
     */
    public static Framing of(UnpackedPixels pixels, Crop crop, int width, int height, int overhang) {
        return of(pixels.turned(crop.quarterTurns()), pixels.colours(), crop, width, height, overhang);
    }

    /** The same from a smaller copy in the screen's colours. */
    public static Framing of(Frame copy, Crop crop, int width, int height, int overhang) {
        return of(
                TurnedRows.of(copy, crop.quarterTurns()),
                ScreenColours.of(3, Optional.empty()),
                crop,
                width,
                height,
                overhang);
    }

    private static Framing of(TurnedRows rows, ScreenColours colours, Crop crop, int width, int height, int overhang) {
        ResampleWeights across = ResampleWeights.of(crop.left(), crop.width(), rows.width(), width, overhang, crop);
        ResampleWeights down = ResampleWeights.of(crop.top(), crop.height(), rows.height(), height, overhang, crop);
        return new Framing(rows, colours, crop, across, down);
    }

    public int width() {
        return across.count();
    }

    public int height() {
        return down.count();
    }

    /** Red, green, blue side by side; cheapest from top to bottom. */
    public byte[] row(int y) {
        int width = across.count();
        float[] sum = new float[width * channels];
        for (int t = down.start(y); t < down.start(y + 1); t++) {
            float weight = down.weight(t);
            float[] row = shrunk(down.index(t));
            for (int i = 0; i < sum.length; i++) {
                sum[i] += weight * row[i];
            }
        }
        byte[] own = new byte[sum.length];
        for (int x = 0; x < width; x++) {
            float inside = across.inside(x) * down.inside(y);
            for (int c = 0; c < channels; c++) {
                int i = x * channels + c;
                own[i] = inside > 1e-6f ? (byte) Math.clamp(Math.round(sum[i] / inside), 0, 255) : 0;
            }
        }
        byte[] screen = colours.toScreen(own, width, 1);
        layOnBorder(screen, y);
        return screen;
    }

    public BufferedImage image() {
        BufferedImage image = new BufferedImage(width(), height(), BufferedImage.TYPE_3BYTE_BGR);
        for (int y = 0; y < height(); y++) {
            image.getRaster().setDataElements(0, y, width(), 1, row(y));
        }
        return image;
    }

    public byte[] jpeg(double ppi, float quality) {
        return Jpeg.write(width(), height(), ppi, quality, this::row);
    }

    /** Into a file, row by row. */
    public void jpeg(double ppi, float quality, Path file) throws IOException {
        Jpeg.write(width(), height(), ppi, quality, this::row, file);
    }

    private void layOnBorder(byte[] screen, int y) {
        int border = crop.borderRgb();
        for (int x = 0; x < across.count(); x++) {
            float inside = across.inside(x) * down.inside(y);
            if (inside > 0.999f) {
                continue;
            }
            for (int c = 0; c < 3; c++) {
                int colour = border >> (16 - 8 * c) & 0xFF;
                int i = x * 3 + c;
                screen[i] = (byte) Math.round((screen[i] & 0xFF) * inside + colour * (1 - inside));
            }
        }
    }

    private float[] shrunk(int y) {
        float[] known = shrunkRows.get(y);
        if (known != null) {
            return known;
        }
        byte[] row = rows.row(y);
        float[] out = new float[across.count() * channels];
        if (channels == 3) {
            shrinkColours(row, out);
        } else {
            shrink(row, out);
        }
        shrunkRows.put(y, out);
        return out;
    }

    private void shrink(byte[] row, float[] out) {
        for (int x = 0; x < across.count(); x++) {
            for (int t = across.start(x); t < across.start(x + 1); t++) {
                float weight = across.weight(t);
                int from = across.index(t) * channels;
                for (int c = 0; c < channels; c++) {
                    out[x * channels + c] += weight * (row[from + c] & 0xFF);
                }
            }
        }
    }

    /** The same sums in the same order for what nearly every picture is, held in three numbers: this loop is most of a face. */
    private void shrinkColours(byte[] row, float[] out) {
        for (int x = 0; x < across.count(); x++) {
            float first = 0;
            float second = 0;
            float third = 0;
            for (int t = across.start(x); t < across.start(x + 1); t++) {
                float weight = across.weight(t);
                int from = across.index(t) * 3;
                first += weight * (row[from] & 0xFF);
                second += weight * (row[from + 1] & 0xFF);
                third += weight * (row[from + 2] & 0xFF);
            }
            out[x * 3] = first;
            out[x * 3 + 1] = second;
            out[x * 3 + 2] = third;
        }
    }
}
