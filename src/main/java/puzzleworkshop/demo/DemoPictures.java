package puzzleworkshop.demo;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
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

    /** Scenes being drawn and looked at, or ready. */
    final class Drawing {

        private final Map<Scene, Future<Picture>> taken = new EnumMap<>(Scene.class);

        private Drawing(ExecutorService ahead) {
            for (Scene scene : Scene.values()) {
                taken.put(scene, ahead.submit(() -> DemoPictures.this.take(scene)));
            }
        }

        /** The scene's picture; waited for if it is not ready yet. */
        Picture of(Scene scene) {
            try {
                return taken.get(scene).get();
            } catch (ExecutionException undrawn) {
                throw new IllegalStateException(undrawn.getCause());
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(ended);
            }
        }
    }

    /** Begins with them beside what is done meanwhile; one after the other, so that the other core is left to that. */
    Drawing begin() {
        ExecutorService ahead = Executors.newSingleThreadExecutor(
                Thread.ofPlatform().daemon().name("demo-scenes").factory());
        try {
            return new Drawing(ahead);
        } finally {
            ahead.shutdown(); // what was submitted is still done
        }
    }

    private Picture take(Scene scene) throws IOException {
        return pictures.take(
                scene.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".jpg",
                new ByteArrayInputStream(draw(scene)));
    }

    private static byte[] draw(Scene scene) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(scene.picture(WIDTH, HEIGHT, SEED + scene.ordinal()), "jpeg", bytes);
        return bytes.toByteArray();
    }
}
