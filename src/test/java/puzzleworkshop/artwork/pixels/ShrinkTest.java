package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ShrinkTest {

    /** The mean of what a new pixel covers, worked out pixel by pixel in double precision. */
    @Test
    void every_new_pixel_is_the_mean_of_the_area_it_covers() {
        long seed = Seeds.from(4);
        Random random = new Random(seed);
        for (int i = 0; i < 60; i++) {
            int width = 1 + random.nextInt(70);
            int height = 1 + random.nextInt(70);
            int newWidth = 1 + random.nextInt(width);
            int newHeight = 1 + random.nextInt(height);
            byte[] samples = new byte[width * height];
            random.nextBytes(samples);
            byte[] small = Shrink.of(new Frame(width, height, 1, samples), newWidth, newHeight)
                    .samples();
            for (int y = 0; y < newHeight; y++) {
                for (int x = 0; x < newWidth; x++) {
                    double mean = mean(
                            samples,
                            width,
                            height,
                            (double) x * width / newWidth,
                            (double) (x + 1) * width / newWidth,
                            (double) y * height / newHeight,
                            (double) (y + 1) * height / newHeight);
                    assertThat(small[y * newWidth + x] & 0xFF)
                            .as("seed %d case %d", seed, i)
                            .isBetween((int) Math.floor(mean - 0.51), (int) Math.ceil(mean + 0.51));
                }
            }
        }
    }

    @Test
    void an_even_surface_stays_even() {
        byte[] samples = new byte[997 * 613 * 3];
        Arrays.fill(samples, (byte) 200);
        byte[] small = Shrink.of(new Frame(997, 613, 3, samples), 240, 148).samples();
        for (byte b : small) {
            assertThat(b & 0xFF).isEqualTo(200);
        }
    }

    private static double mean(
            byte[] samples, int width, int height, double left, double right, double top, double bottom) {
        double sum = 0;
        for (int y = (int) top; y < Math.min(height, Math.ceil(bottom)); y++) {
            for (int x = (int) left; x < Math.min(width, Math.ceil(right)); x++) {
                double share =
                        (Math.min(right, x + 1) - Math.max(left, x)) * (Math.min(bottom, y + 1) - Math.max(top, y));
                sum += Math.max(0, share) * (samples[y * width + x] & 0xFF);
            }
        }
        return sum / ((right - left) * (bottom - top));
    }
}
