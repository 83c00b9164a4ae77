package puzzleworkshop.papers.ticket;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.placing.LaidOrders;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.PositionFiles;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class JobTicketIT {

    @Autowired
    private JobTicket tickets;

    @Autowired
    private Machines machines;

    @Autowired
    private CutJobs jobs;

    @Autowired
    private Positions positions;

    @Autowired
    private PositionFiles files;

    @Autowired
    private Orders orders;

    @Autowired
    private DataSource database;

    private final SoldOrders sold;
    private final PackedOrders packed;

    JobTicketIT(@Autowired BeanFactory beans) {
        sold = new SoldOrders(beans);
        packed = new PackedOrders(beans);
    }

    @Test
    void the_ticket_says_which_cut_file_was_given_out_with_which_setting() {
        Machine machine = LaidOrders.machine(machines);
        CutJob job = LaidOrders.printed(database, jobs, machine, LaidOrders.ORDER);
        Position place = positions.measure(
                job.id(), LaidOrders.typed(positions.print(job).orElseThrow(), machine, LaidOrders.PLACE), "Robin");
        GivenFile file = files.write(List.of(place.id()), Purpose.CUT, FileForm.GCODE, "Robin")
                .file();
        Order order = orders.get(job.order().orElseThrow());
        assertThat(ReadPaper.text(tickets.pdf(order, "http://workshop.example")))
                .contains(file.shortDigest())
                .contains("mm/min");
    }

    @Test
    void at_hand_over_the_ticket_asks_for_what_the_way_of_the_order_needs() {
        CleanDatabase.now(database);
        assertThat(words(packed.one("Ines Roth", "Collection")))
                .contains("Name or order number asked of whoever collects it")
                .doesNotContain("tracking");
        assertThat(words(packed.one("Ines Roth", "Parcel")))
                .contains("Receipt or tracking number kept")
                .doesNotContain("whoever collects it");
    }

    private String words(Order order) {
        return ReadPaper.text(tickets.pdf(order, "http://workshop.example")).replaceAll("\\s+", " ");
    }

    @Test
    void a_job_ticket_writes_every_name_as_it_is_and_carries_its_letters() {
        Order order = sold.confirmed(ReadPaper.MANY_LETTERS, 2);
        assertThat(ReadPaper.text(tickets.pdf(order, "http://workshop.example/orders/" + order.number())))
                .contains(order.number(), ReadPaper.MANY_LETTERS);
    }
}
