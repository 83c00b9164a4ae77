package puzzleworkshop.bench;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Shows photos taken at the bench to signed-in people. */
@RestController
class BenchPhotoController {

    private final Bench bench;

    BenchPhotoController(Bench bench) {
        this.bench = bench;
    }

    @GetMapping("/bench-photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable long id) {
        return bench.photo(id)
                .map(photo -> ResponseEntity.ok()
                        .contentType(MediaType.parseMediaType(photo.mediaType()))
                        .cacheControl(CacheControl.maxAge(Duration.ofDays(30))
                                .cachePrivate()
                                .immutable())
                        .header("X-Content-Type-Options", "nosniff")
                        .body(photo.content()))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }
}
