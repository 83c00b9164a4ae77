package puzzleworkshop.proofs;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.util.List;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import puzzleworkshop.measure.Refused;

/**
 * Pictures of a customer's page, reached by the link's token and never by a picture's or an order's number. The mark in
 * the address changes with what is shown, so browsers may keep it for a while.
 */
@RestController
class ProofImageController {

    private static final CacheControl A_DAY =
            CacheControl.maxAge(Duration.ofDays(1)).cachePrivate();

    /** One more than is kept of pictures: what a phone of three pixels to a point shows across. */
    private static final List<Integer> FACES = List.of(240, 640, 1080, 1600);

    private final CustomerDesk desk;

    ProofImageController(CustomerDesk desk) {
        this.desk = desk;
    }

    @GetMapping("/p/{token}/face/{mark}/{px}.jpg")
    ResponseEntity<byte[]> face(
            @PathVariable("token") String token,
            @PathVariable("mark") String mark,
            @PathVariable("px") int px,
            HttpServletRequest request) {
        if (!FACES.contains(px)) {
            return ResponseEntity.notFound().build();
        }
        try {
            CustomerDesk.Face face = desk.face(new Token(token), request.getRemoteAddr(), px);
            return jpeg(face.jpeg(), face.fingerprint().startsWith(mark));
        } catch (Refused closed) {
            return ResponseEntity.notFound().build();
        }
    }

    @GetMapping("/p/{token}/picture/{mark}/{px}.jpg")
    ResponseEntity<byte[]> picture(
            @PathVariable("token") String token,
            @PathVariable("mark") String mark,
            @PathVariable("px") int px,
            HttpServletRequest request) {
        try {
            return desk.picture(new Token(token), request.getRemoteAddr(), px)
                    .map(whole -> jpeg(whole.jpeg(), whole.fingerprint().startsWith(mark)))
                    .orElseGet(() -> ResponseEntity.notFound().build());
        } catch (Refused closed) {
            return ResponseEntity.notFound().build();
        }
    }

    /** What is shown under an older mark than the order's own is not what that mark stood for, and must not be kept. */
    private static ResponseEntity<byte[]> jpeg(byte[] bytes, boolean asMarked) {
        return ResponseEntity.ok()
                .cacheControl(asMarked ? A_DAY : CacheControl.noStore())
                .contentType(MediaType.IMAGE_JPEG)
                .header("X-Robots-Tag", "noindex")
                .body(bytes);
    }
}
