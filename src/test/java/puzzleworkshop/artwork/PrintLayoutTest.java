package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Framing;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** A picture that is laid as it is must look like one that is drawn anew; Java 2D is the one who draws what is laid. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PrintLayoutTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;
    private static final double PX_PER_MM = 4;
    private static final Length OVERHANG = Length.mm(3);

    @Test
    void laid_as_it_is_a_picture_looks_as_if_drawn_anew_whatever_its_orientation_turn_and_crop(@TempDir Path folder)
            throws Exception {
        BufferedImage stored = picture();
        Random random = new Random(Seeds.from(20261127));
        for (int orientation = 1; orientation <= 8; orientation++) {
            byte[] jpeg = SamplePictures.withOrientation(SamplePictures.encode(stored, "jpg"), orientation);
            Path file = SamplePictures.write(folder, orientation + ".jpg", jpeg);
            ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
            try (UnpackedPixels pixels = UnpackedPixels.of(file, facts)) {
                for (int turns = 0; turns < 4; turns++) {
                    for (Crop crop : crops(facts, turns, random)) {
                        assertSame(stored, orientation, pixels, crop);
                    }
                }
            }
        }
    }

    /** Frames inside the picture, frames that touch its edges, and the whole picture with a border around it. */
    private static List<Crop> crops(ImageHeader facts, int turns, Random random) {
        Picture picture = new Picture(
                new PictureId(UUID.randomUUID()),
                "x",
                facts.format(),
                facts.uprightWidth(),
                facts.uprightHeight(),
                facts.orientation(),
                "0".repeat(64),
                1,
                facts.colours(),
                Optional.empty(),
                List.of(),
                Instant.EPOCH);
        double w = 0.4 + random.nextDouble() * 0.5;
        double h = 0.4 + random.nextDouble() * 0.5;
        Crop inside = new Crop(
                random.nextDouble() * (1 - w),
                random.nextDouble() * (1 - h),
                w,
                h,
                turns,
                Crop.Fit.FILL,
                Crop.WHITE,
                Crop.Edge.MIRRORED);
        return List.of(
                inside,
                Crop.filling(picture, 1.4, turns),
                Crop.fitting(picture, 1.2, turns, "#3060c0"),
                new Crop(-0.02, 0.1, 1.1, 0.7, turns, Crop.Fit.FIT, "#c03060", Crop.Edge.MIRRORED));
    }

    private static void assertSame(BufferedImage stored, int orientation, UnpackedPixels pixels, Crop crop) {
        boolean lying = orientation >= 5 != (crop.quarterTurns() % 2 == 1);
        double aspect = crop.width() * (lying ? HEIGHT : WIDTH) / (crop.height() * (lying ? WIDTH : HEIGHT));
        Size finished = Size.mm(50, Math.round(50 / aspect * 4) / 4.0);
        int w = (int) Math.round(finished.width().mm() * PX_PER_MM);
        int h = (int) Math.round(finished.height().mm() * PX_PER_MM);
        Framing drawn = Framing.of(pixels, crop, w, h, (int) Math.round(OVERHANG.mm() * PX_PER_MM));
        BufferedImage laid =
                lay(stored, PrintLayout.of(orientation, crop, finished, OVERHANG), crop, drawn.width(), drawn.height());
        long difference = 0;
        int far = 0;
        for (int y = 0; y < drawn.height(); y++) {
            byte[] row = drawn.row(y);
            for (int x = 0; x < drawn.width(); x++) {
                int rgb = laid.getRGB(x, y);
                int worst = 0;
                for (int c = 0; c < 3; c++) {
                    int off = Math.abs((rgb >> 16 - 8 * c & 0xFF) - (row[x * 3 + c] & 0xFF));
                    difference += off;
                    worst = Math.max(worst, off);
                }
                far += worst > 40 ? 1 : 0;
            }
        }
        double mean = difference / 3.0 / (drawn.width() * drawn.height());
        String which = "orientation " + orientation + ", " + crop;
        assertThat(mean).as("mean difference of 255, " + which).isLessThan(3);
        // Along lines where colours meet a pixel may fall to either side.
        assertThat(far / (double) (drawn.width() * drawn.height()))
                .as("pixels far off, " + which)
                .isLessThan(0.02);
    }

    private static BufferedImage lay(
            BufferedImage stored, List<PrintPicture.Lay> laid, Crop crop, int width, int height) {
        BufferedImage sticker = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = sticker.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.setColor(new Color(crop.borderRgb()));
        g.fillRect(0, 0, width, height);
        g.scale(PX_PER_MM, PX_PER_MM);
        for (PrintPicture.Lay lay : laid) {
            PrintPicture.Box within = lay.within();
            g.setClip(new Rectangle2D.Double(
                    within.left(), within.top(), within.right() - within.left(), within.bottom() - within.top()));
            g.drawImage(
                    stored,
                    new AffineTransform(
                            lay.acrossX() / WIDTH,
                            lay.acrossY() / WIDTH,
                            lay.downX() / HEIGHT,
                            lay.downY() / HEIGHT,
                            lay.x(),
                            lay.y()),
                    null);
        }
        g.dispose();
        return sticker;
    }

    /** Smooth, and different in every direction. */
    private static BufferedImage picture() {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                int red = 255 * x / WIDTH;
                int green = 255 * y / HEIGHT;
                int blue = (int) (127 + 120 * Math.sin(x / 40.0) * Math.cos(y / 25.0));
                image.setRGB(x, y, red << 16 | green << 8 | blue);
            }
        }
        return image;
    }
}
