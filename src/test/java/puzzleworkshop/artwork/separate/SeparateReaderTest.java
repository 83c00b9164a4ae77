package puzzleworkshop.artwork.separate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Framing;
import puzzleworkshop.artwork.pixels.ReadPicture;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.FormatsTest;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Refused;

@Tag("slow")
class SeparateReaderTest {

    private static final Duration TIME = Duration.ofSeconds(20);

    @TempDir
    Path folder;

    @Test
    void reading_apart_gives_what_reading_here_gives() throws Exception {
        BufferedImage picture = SamplePictures.leaves(240, 160, 2);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a.tif", SamplePictures.encode(picture, "tiff"));
        files.put("a.jpg", SamplePictures.withOrientation(FormatsTest.progressive(picture), 6));
        files.put("inks.jpg", FormatsTest.cmyk(true));
        files.put("a.png", FormatsTest.interlaced(picture));
        files.put("grey.png", SamplePictures.encode(new BufferedImage(50, 40, BufferedImage.TYPE_USHORT_GRAY), "png"));
        for (Map.Entry<String, byte[]> each : files.entrySet()) {
            Path file = SamplePictures.write(folder, each.getKey(), each.getValue());
            assertThat(SeparateReader.isNeeded(file, IntakeLimits.USUAL))
                    .as(each.getKey())
                    .isTrue();
            ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
            List<Double> progress = new ArrayList<>();
            ReadPicture apart = SeparateReader.look(file, IntakeLimits.USUAL, 100, TIME, progress::add);
            assertThat(apart.facts())
                    .as(each.getKey())
                    .usingRecursiveComparison()
                    .ignoringFields("scan")
                    .isEqualTo(facts);
            assertThat(apart.survey())
                    .as(each.getKey())
                    .usingRecursiveComparison()
                    .isEqualTo(Survey.of(file, facts, 100, share -> {}));
            assertThat(progress).isNotEmpty();
            try (UnpackedPixels here = UnpackedPixels.of(file, facts);
                    UnpackedPixels there = SeparateReader.unpack(file, IntakeLimits.USUAL, TIME)) {
                Crop whole = new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, "#ffffff", Crop.Edge.MIRRORED);
                assertThat(Framing.of(there, whole, 60, 40, 3).image().getRGB(0, 0, 66, 46, null, 0, 66))
                        .as(each.getKey())
                        .isEqualTo(Framing.of(here, whole, 60, 40, 3).image().getRGB(0, 0, 66, 46, null, 0, 66));
            }
        }
    }

    @Test
    void plain_photos_are_read_here_without_another_process() throws Exception {
        BufferedImage picture = SamplePictures.leaves(60, 40, 2);
        for (String format : List.of("jpg", "png")) {
            Path file = SamplePictures.write(folder, "a." + format, SamplePictures.encode(picture, format));
            assertThat(SeparateReader.isNeeded(file, IntakeLimits.USUAL)).isFalse();
        }
    }

    @Test
    void what_takes_longer_than_it_may_is_ended() throws Exception {
        Path file =
                SamplePictures.write(folder, "a.tif", SamplePictures.encode(SamplePictures.leaves(60, 40, 2), "tiff"));
        assertThatThrownBy(() -> SeparateReader.look(file, IntakeLimits.USUAL, 100, Duration.ofMillis(1), share -> {}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("endless");
    }

    /** A busy machine makes a reader wait: that is not the file's fault. Yet it ends. */
    @Test
    void waiting_counts_a_sixth_of_work() throws Exception {
        // of these four seconds the start of a process may take three
        assertThat(waiting(Duration.ofSeconds(4), 6)).isEqualTo(SeparateProcess.End.DONE);
        assertThat(waiting(Duration.ofMillis(500), 20)).isEqualTo(SeparateProcess.End.TOO_LONG);
    }

    private static SeparateProcess.End waiting(Duration time, int seconds) throws Exception {
        return SeparateProcess.run(
                Waiting.class, List.of(Integer.toString(seconds)), time, line -> {}, (own, how) -> how);
    }

    /** Does nothing, as a process that is never given the processor. */
    public static final class Waiting {

        private Waiting() {}

        public static void main(String[] args) throws Exception {
            Thread.sleep(1000L * Integer.parseInt(args[0]));
        }
    }

    @Test
    void a_process_that_takes_more_memory_than_it_may_outside_the_heap_is_ended() throws Exception {
        SeparateProcess.End end = SeparateProcess.run(Greedy.class, List.of(), TIME, line -> {}, (own, how) -> {
            assertThat(Files.exists(own)).isTrue();
            return how;
        });
        assertThat(end).isIn(SeparateProcess.End.TOO_MUCH_MEMORY, SeparateProcess.End.BROKEN);
    }

    /** Takes memory outside the heap as native decoders do. */
    public static final class Greedy {

        private Greedy() {}

        public static void main(String[] args) throws Exception {
            Class<?> unsafe = Class.forName("sun.misc.Unsafe");
            var field = unsafe.getDeclaredField("theUnsafe");
            field.setAccessible(true);
            Object memory = field.get(null);
            for (int i = 0; i < 40; i++) {
                long size = 100L << 20;
                Object place = unsafe.getMethod("allocateMemory", long.class).invoke(memory, size);
                unsafe.getMethod("setMemory", long.class, long.class, byte.class)
                        .invoke(memory, place, size, (byte) 1);
                Thread.sleep(30);
            }
        }
    }
}
