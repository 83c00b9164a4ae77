package puzzleworkshop.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;

@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptFacesTest {

    private final KeptFaces kept = new KeptFaces();
    private final AtomicInteger painted = new AtomicInteger();

    @Test
    void a_face_is_painted_once_however_many_ask_at_the_same_time() throws Exception {
        CountDownLatch all = new CountDownLatch(8);
        List<Future<byte[]>> asked = new ArrayList<>();
        try (ExecutorService browsers = Executors.newFixedThreadPool(8)) {
            for (int i = 0; i < 8; i++) {
                asked.add(browsers.submit(() -> {
                    all.countDown();
                    all.await();
                    return kept.of(look(640), () -> paint(1000));
                }));
            }
        }
        for (Future<byte[]> answer : asked) {
            assertThat(answer.get()).hasSize(1000);
        }
        assertThat(painted).hasValue(1);
        kept.of(look(240), () -> paint(10));
        assertThat(painted).hasValue(2);
    }

    @Test
    void what_was_not_looked_at_for_longest_goes_first() {
        kept.of(look(1), () -> paint(7 << 20));
        kept.of(look(2), () -> paint(7 << 20));
        kept.of(look(1), () -> paint(7 << 20));
        kept.of(look(3), () -> paint(7 << 20));
        assertThat(painted).hasValue(3);
        kept.of(look(1), () -> paint(7 << 20));
        assertThat(painted).hasValue(3);
        kept.of(look(2), () -> paint(7 << 20));
        assertThat(painted).hasValue(4);
    }

    @Test
    void one_that_failed_is_tried_again() {
        assertThatThrownBy(() -> kept.of(look(1), () -> {
                    throw new IllegalStateException("no picture");
                }))
                .hasMessage("no picture");
        assertThat(kept.of(look(1), () -> paint(3))).hasSize(3);
    }

    private byte[] paint(int bytes) {
        painted.incrementAndGet();
        return new byte[bytes];
    }

    private static KeptFaces.Look look(int pixels) {
        return new KeptFaces.Look(null, Size.mm(300, 200), Optional.empty(), pixels);
    }
}
