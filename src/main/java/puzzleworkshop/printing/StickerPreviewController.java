package puzzleworkshop.printing;

import java.time.Duration;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.measure.OrderId;

/** Shows browsers of people who are signed in what a sticker will look like, overhang included, small. */
@RestController
class StickerPreviewController {

    private static final int LONGER_SIDE = 420;

    private final GangRuns runs;
    private final CroppedPictures pictures;

    StickerPreviewController(GangRuns runs, CroppedPictures pictures) {
        this.runs = runs;
        this.pictures = pictures;
    }

    /** @param look part of the address so that a browser never shows an older picture */
    @GetMapping("/stickers/{order}/{look}.jpg")
    ResponseEntity<byte[]> sticker(
            @PathVariable("order") long order, @PathVariable("look") String look, WebRequest request) {
        if (order <= 0) {
            return ResponseEntity.notFound().build();
        }
        if (request.checkNotModified("\"" + order + "-" + look + "\"")) {
            return null;
        }
        return runs.pictureOf(new OrderId(order))
                .map(item -> ResponseEntity.ok()
                        .eTag("\"" + order + "-" + look + "\"")
                        .cacheControl(CacheControl.maxAge(Duration.ofDays(30)).cachePrivate())
                        .contentType(MediaType.IMAGE_JPEG)
                        .body(pictures.proof(
                                item.picture(), item.crop(), item.finished(), item.overhang(), LONGER_SIDE)))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }
}
