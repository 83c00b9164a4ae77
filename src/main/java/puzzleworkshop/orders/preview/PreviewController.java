package puzzleworkshop.orders.preview;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import puzzleworkshop.measure.OrderId;

/**
 * Serves the faces of orders. The address holds the order's version, so a face never changes under its address and
 * browsers keep it.
 */
@RestController
class PreviewController {

    private static final int LARGEST = 1600;

    private final OpenOrderCache orders;
    private final PreviewRenderer painter;

    PreviewController(OpenOrderCache orders, PreviewRenderer painter) {
        this.orders = orders;
        this.painter = painter;
    }

    @GetMapping("/faces/{order}/{version}/{pixels}.jpg")
    ResponseEntity<byte[]> face(@PathVariable long order, @PathVariable long version, @PathVariable int pixels) {
        if (order <= 0 || pixels < 16 || pixels > LARGEST) {
            return ResponseEntity.notFound().build();
        }
        return orders.find(new OrderId(order), version)
                .map(found -> ResponseEntity.ok()
                        .contentType(MediaType.IMAGE_JPEG)
                        .cacheControl(
                                found.version() == version
                                        ? CacheControl.maxAge(Duration.ofDays(30))
                                                .cachePrivate()
                                                .immutable()
                                        : CacheControl.noCache())
                        .body(painter.jpeg(found.puzzle(), found.picture(), pixels)))
                .orElse(ResponseEntity.notFound().build());
    }
}
