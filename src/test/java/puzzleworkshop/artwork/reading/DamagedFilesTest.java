package puzzleworkshop.artwork.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.Seeds;

/** Files damaged in every way a bad copy, a bad card or bad will can damage them: each is read or refused, soon. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Tag("slow")
class DamagedFilesTest {

    private static final int FILES = 2_000;
    private static final long LONGEST_NANOS = 5_000_000_000L;

    @TempDir
    Path folder;

    @Test
    void two_thousand_damaged_files_are_read_or_refused_within_five_seconds_each() throws Exception {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        List<byte[]> good = goodFiles();
        int read = 0;
        for (int i = 0; i < FILES; i++) {
            byte[] damaged = damage(good.get(i % good.size()), random);
            Path file = SamplePictures.write(folder, "damaged", damaged);
            long start = System.nanoTime();
            try {
                // Limits as in the program, but smaller pictures: a damaged header may claim any size below them.
                ImageHeader facts =
                        ImageProbe.at(file, new IntakeLimits(IntakeLimits.USUAL.bytes(), 4_000_000, 20_000));
                Survey.of(file, facts, 240, share -> {});
                read++;
            } catch (Refused said) {
                assertThat(said.sentence().key()).startsWith("artwork.refused.");
            } catch (Throwable crash) {
                fail("seed " + seed + ", file " + i + ": " + crash, crash);
            }
            assertThat(System.nanoTime() - start)
                    .as("seed %d, file %d took too long", seed, i)
                    .isLessThan(LONGEST_NANOS);
        }
        // Many survive: one wrong bit in a picture is one wrong spot.
        assertThat(read).isBetween(FILES / 20, FILES * 19 / 20);
    }

    private static List<byte[]> goodFiles() throws Exception {
        BufferedImage picture = SamplePictures.leaves(96, 64, 2);
        byte[] jpeg = SamplePictures.encode(picture, "jpg");
        List<byte[]> files = new ArrayList<>();
        files.add(SamplePictures.withOrientation(jpeg, 6));
        files.add(SamplePictures.withProfile(
                jpeg,
                java.awt.color.ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_LINEAR_RGB)
                        .getData()));
        files.add(FormatsTest.progressive(picture));
        files.add(FormatsTest.cmyk(true));
        files.add(SamplePictures.encode(picture, "png"));
        files.add(FormatsTest.interlaced(picture));
        files.add(SamplePictures.encode(new BufferedImage(60, 40, BufferedImage.TYPE_INT_ARGB), "png"));
        files.add(SamplePictures.encode(picture, "tiff"));
        files.add(Base64.getDecoder().decode("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA=="));
        files.add(pdf(picture));
        return files;
    }

    private static byte[] pdf(BufferedImage picture) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(60, 40));
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.drawImage(JPEGFactory.createFromImage(document, picture), 0, 0, 60, 40);
            }
            document.save(bytes);
        }
        return bytes.toByteArray();
    }

    private static byte[] damage(byte[] good, Random random) {
        byte[] bytes = good.clone();
        switch (random.nextInt(6)) {
            case 0 -> { // some wrong bytes anywhere
                for (int i = 1 + random.nextInt(20); i > 0; i--) {
                    bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
                }
            }
            case 1 -> { // wrong bits in the header
                for (int i = 1 + random.nextInt(6); i > 0; i--) {
                    bytes[random.nextInt(Math.min(bytes.length, 64))] ^= (byte) (1 << random.nextInt(8));
                }
            }
            case 2 -> bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length)); // cut short
            case 3 -> { // a block lost
                int from = random.nextInt(bytes.length);
                int to = Math.min(bytes.length, from + 1 + random.nextInt(64));
                byte[] shorter = new byte[bytes.length - (to - from)];
                System.arraycopy(bytes, 0, shorter, 0, from);
                System.arraycopy(bytes, to, shorter, from, bytes.length - to);
                bytes = shorter;
            }
            case 4 -> { // a block of the extremes that break lengths and offsets
                int from = random.nextInt(bytes.length);
                Arrays.fill(bytes, from, Math.min(bytes.length, from + 1 + random.nextInt(8)), (byte)
                        (random.nextBoolean() ? 0xFF : 0));
            }
            default -> { // a block copied elsewhere
                int length = Math.min(bytes.length, 1 + random.nextInt(128));
                System.arraycopy(
                        good,
                        random.nextInt(good.length - length + 1),
                        bytes,
                        random.nextInt(bytes.length - length + 1),
                        length);
            }
        }
        return bytes;
    }
}
