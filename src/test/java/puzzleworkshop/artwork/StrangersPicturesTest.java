package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.hostile.HostilePictures;

/** What whoever has a customer's link may send. */
@Tag("slow")
class StrangersPicturesTest {

    private static final Map<String, byte[]> HOSTILE = HostilePictures.all(20261129);
    /** Four seconds on the processor; by the clock six times as long where other work keeps it busy, and the start of a process. */
    private static final Duration LONGEST =
            DecodeSlots.timeFor(0).multipliedBy(6).plusSeconds(2);

    @TempDir
    Path folder;

    private final OutsidePictures pictures = new OutsidePictures();

    /** One of each kind: a scan too many, a tree without an end, a directory that leads to itself, a bomb in a palette. */
    @ParameterizedTest
    @ValueSource(
            strings = {"scans-90-of-4000.jpg", "page-tree-loop.pdf", "directory-loop.tif", "text-bomb-palette.png"})
    void is_refused_or_taken_in_a_sentence_and_in_time(String name) throws IOException {
        looked(name);
    }

    @ParameterizedTest
    @Tag("far")
    @ValueSource(
            strings = {
                "scans-800-of-14000.jpg",
                "progressive-14100.jpg",
                "channel-by-channel-14000.jpg",
                "fill-40-megabytes.jpg",
                "page-tree-60000-deep.pdf",
                "arrays-300000-nested.pdf",
                "forms-doubling-40.pdf",
                "groups-3000.pdf",
                "lossless-noise-3.webp"
            })
    void the_larger_ones_are_too(String name) throws IOException {
        looked(name);
    }

    private void looked(String name) throws IOException {
        Path file = SamplePictures.write(folder, name, HOSTILE.get(name));
        long start = System.nanoTime();
        try {
            pictures.look(file);
        } catch (Refused said) {
            assertThat(said.sentence().key()).startsWith("artwork.refused.").isNotEqualTo("artwork.refused.busy");
        }
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(LONGEST);
    }

    @Test
    void endless_pages_from_many_at_once_cost_no_place_for_good_and_leave_nothing_in_the_temporary_folder()
            throws Exception {
        Path endless = SamplePictures.write(folder, "endless.pdf", HOSTILE.get("forms-doubling-40.pdf"));
        long before = leftovers();
        List<Thread> senders = new ArrayList<>();
        List<Throwable> answers = java.util.Collections.synchronizedList(new ArrayList<>());
        for (int i = 0; i < 4; i++) {
            senders.add(Thread.startVirtualThread(() -> {
                try {
                    pictures.look(endless);
                } catch (IOException | RuntimeException answer) {
                    answers.add(answer);
                }
            }));
        }
        for (Thread sender : senders) {
            sender.join();
        }
        assertThat(answers).hasSize(4).allSatisfy(answer -> assertThat(answer).hasMessageContaining("endless"));
        Path good = SamplePictures.write(
                folder, "good.tif", SamplePictures.encode(SamplePictures.leaves(300, 200, 1), "tiff"));
        assertThat(pictures.look(good).width()).isEqualTo(300);
        assertThat(leftovers()).isEqualTo(before);
    }

    @Test
    void a_picture_that_is_only_fill_bytes_is_refused_at_once() {
        Path file = SamplePictures.write(folder, "fill.jpg", HOSTILE.get("fill-40-megabytes.jpg"));
        long start = System.nanoTime();
        assertThatThrownBy(() -> pictures.look(file)).hasMessageContaining("damaged");
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(1));
    }

    /** Of this process: other tests beside this one read files in the same temporary folder. */
    private static long leftovers() throws IOException {
        String own = "puzzle-reading-" + ProcessHandle.current().pid() + "-";
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith(own))
                    .count();
        }
    }
}
