package puzzleworkshop.papers;

import org.springframework.stereotype.Component;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PreviewRenderer;

/** The picture with its cut lines as it stands on quotes and invoices; painted once, so it may be asked for beforehand. */
@Component
public class PaperFaces {

    private static final int PIXELS = 720;

    private final PreviewRenderer faces;

    PaperFaces(PreviewRenderer faces) {
        this.faces = faces;
    }

    /** As JPEG. */
    public byte[] of(Order order) {
        return faces.jpeg(order.puzzle(), order.picture(), PIXELS);
    }
}
