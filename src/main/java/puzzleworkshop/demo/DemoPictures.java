package puzzleworkshop.demo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
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

    Map<Scene, Picture> take() {
        Map<Scene, Picture> taken = new EnumMap<>(Scene.class);
        for (Scene scene : Scene.values()) {
            taken.put(scene, take(scene));
        }
        return taken;
    }

    private Picture take(Scene scene) {
        BufferedImage drawn = scene.picture(WIDTH, HEIGHT, SEED + scene.ordinal());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(drawn, "jpeg", bytes);
            return pictures.take(
                    scene.name().toLowerCase(Locale.ROOT).replace('_', '-') + ".jpg",
                    new ByteArrayInputStream(bytes.toByteArray()));
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }
}
