package puzzleworkshop.artwork.pixels;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.rows.Pixels;
import puzzleworkshop.measure.WorkLimit;

/**
 * One pass over a picture's pixels: a smaller upright copy in the screen's colours, its focus and its light.
 *
 * @param copy red, green, blue; upright
 * @param detail see {@link Focus#share()}
 */
public record Survey(Frame copy, OptionalDouble detail, Light light) {

    /**
     * @param longerSide of the copy in pixels; smaller pictures keep their size
     * @param progress told shares from 0 to 1
     */
    public static Survey of(Path file, ImageHeader facts, int longerSide, Consumer<Double> progress)
            throws IOException {
        return of(file, facts, longerSide, WorkLimit.none(), progress);
    }

    /** @param limit looked at for every row */
    public static Survey of(Path file, ImageHeader facts, int longerSide, WorkLimit limit, Consumer<Double> progress)
            throws IOException {
        int width = facts.storedWidth();
        int height = facts.storedHeight();
        double scale = Math.min(1, (double) longerSide / Math.max(width, height));
        int newWidth = (int) Math.max(1, Math.round(width * scale));
        int newHeight = (int) Math.max(1, Math.round(height * scale));
        Shrink[] shrink = new Shrink[1];
        Focus[] focus = new Focus[1];
        Pixels.Channels channels = Pixels.of(file, facts, limit).each(read -> {
            shrink[0] = new Shrink(read.count(), width, height, newWidth, newHeight);
            focus[0] = new Focus(read.count(), width, height);
            return shrink[0].and(focus[0]).and((y, samples) -> {
                if (y % 256 == 0) {
                    progress.accept((double) y / height);
                }
            });
        });
        Frame small = shrink[0].result();
        byte[] rgb = channels.colours().toScreen(small.samples(), newWidth, newHeight);
        Frame copy = new Frame(newWidth, newHeight, 3, rgb).upright(facts.orientation());
        return new Survey(copy, focus[0].share(), Light.of(copy));
    }
}
