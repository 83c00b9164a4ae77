package puzzleworkshop.artwork;

import java.time.Duration;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;

/** Hands smaller copies to browsers of people who are signed in. What an address shows never changes. */
@RestController
class PictureController {

    private final Pictures pictures;

    PictureController(Pictures pictures) {
        this.pictures = pictures;
    }

    @GetMapping("/pictures/{id}/{px}.jpg")
    ResponseEntity<byte[]> copy(@PathVariable("id") UUID id, @PathVariable("px") int px, WebRequest request) {
        String tag = "\"" + id + "-" + px + "\"";
        if (!Rendition.SIZES.contains(px)) {
            return ResponseEntity.notFound().build();
        }
        if (request.checkNotModified(tag)) {
            return null;
        }
        return pictures.rendition(new PictureId(id), px)
                .map(copy -> ResponseEntity.ok()
                        .eTag(tag)
                        .cacheControl(CacheControl.maxAge(Duration.ofDays(365))
                                .cachePrivate()
                                .immutable())
                        .contentType(MediaType.IMAGE_JPEG)
                        .body(copy.jpeg()))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }
}
