package puzzleworkshop.delivery.labels;

import java.util.Optional;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;

/** Serves what is printed for parcels to those who are signed in. */
@RestController
class ParcelPapersController {

    private final Orders orders;
    private final ParcelPapers papers;
    private final Formatter figures;

    ParcelPapersController(Orders orders, ParcelPapers papers, Formatter figures) {
        this.orders = orders;
        this.papers = papers;
        this.figures = figures;
    }

    /**
     * @param first place on the first sheet of labels, from 1 as people count
     * @param declared as what the goods are declared where they pass customs
     */
    @GetMapping("/parcels/{number}/{what:parcel|labels}.pdf")
    ResponseEntity<byte[]> papers(
            @PathVariable String number,
            @PathVariable String what,
            @RequestParam(required = false) LabelKind kind,
            @RequestParam(defaultValue = "1") int first,
            @RequestParam Optional<GoodsCategory> declared) {
        Optional<Order> order = orders.findByNumber(number);
        if (order.isEmpty()) {
            return ResponseEntity.notFound().build();
        }
        LabelKind used = kind == null ? papers.settings().kind() : kind;
        try {
            byte[] pdf = what.equals("labels")
                    ? papers.labels(order.get().id(), used, first - 1)
                    : papers.all(order.get().id(), used, first - 1, declared);
            return ResponseEntity.ok()
                    .contentType(MediaType.APPLICATION_PDF)
                    .header(
                            HttpHeaders.CONTENT_DISPOSITION,
                            ContentDisposition.inline()
                                    .filename(what + "-" + number + ".pdf")
                                    .build()
                                    .toString())
                    .body(pdf);
        } catch (Refused refused) {
            return ResponseEntity.status(HttpStatus.UNPROCESSABLE_CONTENT)
                    .contentType(new MediaType(MediaType.TEXT_PLAIN, java.nio.charset.StandardCharsets.UTF_8))
                    .body(figures.say(refused).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
    }
}
