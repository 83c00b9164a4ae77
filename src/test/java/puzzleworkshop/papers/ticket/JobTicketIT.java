package puzzleworkshop.papers.ticket;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class JobTicketIT {

    @Autowired
    private JobTicket tickets;

    private final SoldOrders sold;

    JobTicketIT(@Autowired BeanFactory beans) {
        sold = new SoldOrders(beans);
    }

    @Test
    void a_job_ticket_writes_every_name_as_it_is_and_carries_its_letters() {
        Order order = sold.confirmed(ReadPaper.MANY_LETTERS, 2);
        assertThat(ReadPaper.text(tickets.pdf(order, "http://workshop.example/orders/" + order.number())))
                .contains(order.number(), ReadPaper.MANY_LETTERS);
    }
}
