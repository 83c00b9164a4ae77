package puzzleworkshop.delivery.returns;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Shows photos of complaints to signed-in people. */
@RestController
class ComplaintPhotoController {

    private final Complaints complaints;

    ComplaintPhotoController(Complaints complaints) {
        this.complaints = complaints;
    }

    @GetMapping("/complaint-photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable long id) {
        return complaints
                .photo(id)
                .map(content -> ResponseEntity.ok()
                        .contentType(MediaType.IMAGE_JPEG)
                        .cacheControl(CacheControl.maxAge(Duration.ofDays(30))
                                .cachePrivate()
                                .immutable())
                        .header("X-Content-Type-Options", "nosniff")
                        .body(content))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }
}
