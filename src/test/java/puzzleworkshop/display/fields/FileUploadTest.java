package puzzleworkshop.display.fields;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.upload.FileRejectedEvent;
import com.vaadin.flow.component.upload.UploadI18N;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.support.MetricHouse;

class FileUploadTest {

    @TempDir
    Path folder;

    /** 200 MB to a sheet's photo were an OutOfMemoryError. */
    @Test
    void a_stream_that_never_ends_is_stopped_at_the_limit_whatever_its_sender_said() throws IOException {
        AtomicLong sent = new AtomicLong();
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                sent.incrementAndGet();
                return 7;
            }

            @Override
            public int read(byte[] into, int from, int length) {
                sent.addAndGet(length);
                return length;
            }
        };
        Path file = folder.resolve("endless");
        assertThat(FileUpload.copied(endless, file, 1_000_000)).isFalse();
        assertThat(Files.size(file)).isLessThanOrEqualTo(1_000_000);
        assertThat(sent).hasValueLessThan(1_200_000);
    }

    @Test
    void a_file_of_just_the_limit_is_taken_whole_and_one_byte_more_is_not() throws IOException {
        Path file = folder.resolve("file");
        byte[] content = new byte[200_000];
        assertThat(FileUpload.copied(new ByteArrayInputStream(content), file, 200_000))
                .isTrue();
        assertThat(Files.readAllBytes(file)).isEqualTo(content);
        assertThat(FileUpload.copied(new ByteArrayInputStream(content), file, 199_999))
                .isFalse();
    }

    /** A second picture chosen while the first one was on its way was called heavier than 50 MB, whatever it weighed. */
    @Test
    void a_file_chosen_while_another_is_on_its_way_is_told_so_and_not_that_it_is_too_large() {
        List<String> said = new ArrayList<>();
        FileUpload upload = new FileUpload(
                MetricHouse.figures(),
                50_000_000,
                said::add,
                file -> {
                    throw new AssertionError("nothing arrives here");
                },
                ".jpg",
                ".png");
        assertThat(upload.getMaxFiles()).isOne();
        UploadI18N.Error words = upload.getI18n().getError();
        for (String why : List.of(words.getTooManyFiles(), words.getFileIsTooBig(), words.getIncorrectFileType())) {
            ComponentUtil.fireEvent(upload, new FileRejectedEvent(upload, why, "tiny.jpg"));
        }
        assertThat(said)
                .containsExactly(
                        "'tiny.jpg' was not taken. Another file is still on its way. Wait until it is there, or take"
                                + " it off the list, then choose again.",
                        "'tiny.jpg' was not taken. It is larger than 50 MB, the most that is taken here.",
                        "'tiny.jpg' was not taken. It is of another kind. Taken here: .jpg, .png.");
    }
}
