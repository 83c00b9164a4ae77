package puzzleworkshop.planning.feed;

import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Serves the calendar to whoever has the secret link; calendar programs cannot sign in. */
@RestController
class WeekFeedController {

    private final WeekFeed feed;

    WeekFeedController(WeekFeed feed) {
        this.feed = feed;
    }

    @GetMapping("/calendar/{token}.ics")
    ResponseEntity<String> calendar(@PathVariable String token) {
        return feed.calendar(token)
                .map(file -> ResponseEntity.ok()
                        .contentType(MediaType.parseMediaType("text/calendar;charset=UTF-8"))
                        .cacheControl(CacheControl.noStore())
                        .body(file))
                .orElseGet(() -> ResponseEntity.notFound().build());
    }
}
