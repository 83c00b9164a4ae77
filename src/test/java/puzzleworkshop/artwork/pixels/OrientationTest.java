package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;

/**
 * EXIF 2.3 (CIPA DC-008), tag 274: 1 as is, 2 mirror, 3 180°, 4 flip, 5 transpose, 6 90° clockwise to show, 7 transverse,
 * 8 270° clockwise to show.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OrientationTest {

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void every_orientation_stands_upright(int orientation) throws Exception {
        BufferedImage seen = SamplePictures.quarters(64, 48);
        BufferedImage stored = storedFor(seen, orientation);
        byte[] jpeg = SamplePictures.withOrientation(SamplePictures.encode(stored, "jpg"), orientation);
        Path file = SamplePictures.write(folder, "a.jpg", jpeg);

        ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
        assertThat(facts.orientation()).isEqualTo(orientation);
        assertThat(facts.uprightWidth()).isEqualTo(64);
        assertThat(facts.uprightHeight()).isEqualTo(48);

        Frame upright = Survey.of(file, facts, 1600, share -> {}).copy();
        assertThat(upright.width()).isEqualTo(64);
        assertThat(upright.height()).isEqualTo(48);
        assertColour(upright, 12, 10, 255, 0, 0);
        assertColour(upright, 52, 10, 0, 255, 0);
        assertColour(upright, 12, 38, 0, 0, 255);
        assertColour(upright, 52, 38, 255, 255, 0);
    }

    /** Makes the stored picture by geometry of Java 2D: the inverse of what is to be done for showing it. */
    private static BufferedImage storedFor(BufferedImage seen, int orientation) {
        int w = seen.getWidth();
        int h = seen.getHeight();
        // Each maps a point as stored to where it is seen (x right, y down).
        AffineTransform show = switch (orientation) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, w, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, w, h);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, h);
            default -> new AffineTransform();
        };
        boolean lying = orientation >= 5;
        BufferedImage stored = new BufferedImage(lying ? h : w, lying ? w : h, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = stored.createGraphics();
        try {
            g.drawImage(seen, show.createInverse(), null);
        } catch (java.awt.geom.NoninvertibleTransformException e) {
            throw new IllegalStateException(e);
        }
        g.dispose();
        return stored;
    }

    private static void assertColour(Frame frame, int x, int y, int red, int green, int blue) {
        int at = (y * frame.width() + x) * 3;
        byte[] samples = frame.samples();
        assertThat(new int[] {samples[at] & 0xFF, samples[at + 1] & 0xFF, samples[at + 2] & 0xFF})
                .as("pixel %d, %d", x, y)
                .satisfies(c -> {
                    assertThat(c[0]).isBetween(red - 12, red + 12);
                    assertThat(c[1]).isBetween(green - 12, green + 12);
                    assertThat(c[2]).isBetween(blue - 12, blue + 12);
                });
    }
}
