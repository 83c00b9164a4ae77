package puzzleworkshop.papers.ticket;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Workshop;

/** Serves job ticket PDFs to those who are signed in. */
@RestController
class TicketController {

    private final Orders orders;
    private final JobTicket tickets;
    private final Workshop workshop;

    TicketController(Orders orders, JobTicket tickets, Workshop workshop) {
        this.orders = orders;
        this.tickets = tickets;
        this.workshop = workshop;
    }

    @GetMapping("/papers/{number}/ticket.pdf")
    ResponseEntity<byte[]> ticket(@PathVariable String number) {
        String own = workshop.profile().publicUrl();
        String base = own.isBlank()
                ? ServletUriComponentsBuilder.fromCurrentContextPath().toUriString()
                : own;
        return orders.findByNumber(number)
                .map(order -> ResponseEntity.ok()
                        .contentType(MediaType.APPLICATION_PDF)
                        .header(
                                HttpHeaders.CONTENT_DISPOSITION,
                                ContentDisposition.inline()
                                        .filename("ticket-" + order.number() + ".pdf")
                                        .build()
                                        .toString())
                        .body(tickets.pdf(order, base + "/orders/" + order.number())))
                .orElse(ResponseEntity.notFound().build());
    }
}
