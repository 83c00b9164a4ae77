package puzzleworkshop.artwork.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.CRC32;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Refused;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ImageProbeTest {

    @TempDir
    Path folder;

    @Test
    void content_decides_and_not_the_name() throws Exception {
        byte[] png = SamplePictures.encode(SamplePictures.quarters(20, 10), "png");
        ImageHeader facts = ImageProbe.at(SamplePictures.write(folder, "holiday.jpg", png), IntakeLimits.USUAL);
        assertThat(facts.format()).isEqualTo(PictureFormat.PNG);
        assertThat(facts.storedWidth()).isEqualTo(20);
        assertThat(facts.storedHeight()).isEqualTo(10);
    }

    @Test
    void a_text_called_jpg_is_refused() {
        assertThat(refusal("Dear workshop, my picture follows.".getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("text");
    }

    @Test
    void an_empty_file_is_refused() {
        assertThat(refusal(new byte[0])).isEqualTo("empty");
    }

    @Test
    void a_truncated_JPEG_is_refused() {
        byte[] jpeg = SamplePictures.encode(SamplePictures.leaves(200, 150, 1), "jpg");
        assertThat(refusal(Arrays.copyOf(jpeg, jpeg.length / 2))).isEqualTo("cut-short");
        assertThat(refusal(Arrays.copyOf(jpeg, 30))).isIn("cut-short", "damaged");
        assertThat(refusal(Arrays.copyOf(jpeg, jpeg.length - 2))).isEqualTo("cut-short");
    }

    @Test
    void a_truncated_PNG_is_refused() {
        byte[] png = SamplePictures.encode(SamplePictures.leaves(200, 150, 1), "png");
        assertThat(refusal(Arrays.copyOf(png, png.length / 2))).isEqualTo("cut-short");
    }

    /** 900 million pixels in a few hundred bytes; the header alone must give it away. */
    @Test
    void a_decompression_bomb_is_refused_without_decoding() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10});
        ByteArrayOutputStream header = new ByteArrayOutputStream();
        DataOutputStream headerOut = new DataOutputStream(header);
        headerOut.writeInt(30_000);
        headerOut.writeInt(30_000);
        headerOut.write(new byte[] {8, 2, 0, 0, 0});
        chunk(out, "IHDR", header.toByteArray());
        chunk(out, "IDAT", new byte[200]);
        chunk(out, "IEND", new byte[0]);
        assertThat(refusal(bytes.toByteArray())).isEqualTo("too-many-pixels");
    }

    @Test
    void a_file_over_50_megabytes_is_refused() {
        assertThat(refusal(new byte[60 * 1024 * 1024])).isEqualTo("too-many-bytes");
    }

    @ParameterizedTest
    @CsvSource({"heic,heic", "mif1,heic", "avif,avif", "isom,film", "crx ,camera-raw"})
    void phone_and_film_files_get_a_sentence_that_says_what_to_send(String brand, String sentence) {
        byte[] head =
                ("\0\0\0\u0018ftyp" + String.format("%-4s", brand) + "\0\0\0\0").getBytes(StandardCharsets.ISO_8859_1);
        assertThat(refusal(head)).isEqualTo(sentence);
    }

    @ParameterizedTest
    @CsvSource({"GIF89a,gif", "8BPS,working-file", "BM1234,other-picture", "<svg/>,svg", "II*%CR,camera-raw"})
    void other_files_too(String head, String sentence) {
        byte[] bytes = head.replace("%", "\0\0\0\0\0").getBytes(StandardCharsets.ISO_8859_1);
        assertThat(refusal(Arrays.copyOf(bytes, 64))).isEqualTo(sentence);
    }

    private String refusal(byte[] bytes) {
        Path file = SamplePictures.write(folder, "picture.jpg", bytes);
        Refused refused = catchThrowableOfType(Refused.class, () -> ImageProbe.at(file, IntakeLimits.USUAL));
        assertThat(refused).isNotNull();
        return refused.sentence().key().replace("artwork.refused.", "");
    }

    private static void chunk(DataOutputStream out, String type, byte[] body) throws Exception {
        byte[] name = type.getBytes(StandardCharsets.ISO_8859_1);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(body);
        out.writeInt(body.length);
        out.write(name);
        out.write(body);
        out.writeInt((int) crc.getValue());
    }
}
