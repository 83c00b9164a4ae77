package puzzleworkshop.demo;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.imageio.ImageIO;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;

/**
 * The demo customers' pictures, each drawn and looked at once and used by all orders of its scene: drawing and measuring
 * millions of pixels is most of the work of making the demo workshop.
 */
@Component
class DemoPictures {

    /** 230 pixels per inch on the largest puzzle of the demo: good, and a third of the work of 300. */
    private static final int WIDTH = 2700;

    private static final int HEIGHT = 1800;
    private static final long SEED = 11;

    private final Pictures pictures;

    DemoPictures(Pictures pictures) {
        this.pictures = pictures;
    }

    /** Scenes being drawn, or drawn and waiting. */
    final class Drawing {

        private final Map<Scene, Future<byte[]>> drawn = new EnumMap<>(Scene.class);

        private Drawing(ExecutorService ahead) {
            for (Scene scene : Scene.values()) {
                drawn.put(scene, ahead.submit(() -> draw(scene)));
            }
        }

        /** The next scene is drawn while the one before is looked at. */
        Map<Scene, Picture> take() {
            Map<Scene, Picture> taken = new EnumMap<>(Scene.class);
            drawn.forEach((scene, bytes) -> taken.put(scene, DemoPictures.this.take(scene, bytes)));
            return taken;
        }
    }

    /** Begins to draw them beside what is done meanwhile; one after the other, so that the other core is left to that. */
    Drawing begin() {
        ExecutorService ahead = Executors.newSingleThreadExecutor(
                Thread.ofPlatform().daemon().name("demo-scenes").factory());
        try {
            return new Drawing(ahead);
        } finally {
            ahead.shutdown(); // what was submitted is still done
        }
    }

    private static byte[] draw(Scene scene) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(scene.picture(WIDTH, HEIGHT, SEED + scene.ordinal()), "jpeg", bytes);
        return bytes.toByteArray();
    }

    private Picture take(Scene scene, Future<byte[]> drawn) {
        try {
            return pictures.take(
                    scene.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".jpg",
                    new ByteArrayInputStream(drawn.get()));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (ExecutionException undrawn) {
            throw new IllegalStateException(undrawn.getCause());
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(ended);
        }
    }
}
