package puzzleworkshop.bench;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import puzzleworkshop.artwork.Photos;

/** Shows photos taken at the bench to signed-in people. */
@RestController
class BenchPhotoController {

    private final Bench bench;

    private final PackingProofs proofs;

    BenchPhotoController(Bench bench, PackingProofs proofs) {
        this.bench = bench;
        this.proofs = proofs;
    }

    @GetMapping("/bench-photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable long id) {
        return bench.photo(id)
                .map(photo -> answer(photo.mediaType(), photo.content()))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }

    @GetMapping("/packing-proofs/{proof}/{place}.jpg")
    ResponseEntity<byte[]> proof(@PathVariable long proof, @PathVariable int place) {
        return proofs.photo(proof, place)
                .map(content -> answer(Photos.MEDIA_TYPE, content))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }

    /** Photos never change, so a browser may keep them. */
    private static ResponseEntity<byte[]> answer(String mediaType, byte[] content) {
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(mediaType))
                .cacheControl(
                        CacheControl.maxAge(Duration.ofDays(30)).cachePrivate().immutable())
                .header("X-Content-Type-Options", "nosniff")
                .body(content);
    }
}
