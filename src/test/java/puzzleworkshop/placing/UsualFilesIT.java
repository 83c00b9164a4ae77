package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import javax.sql.DataSource;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.DxfText;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.placing.given.SettingWords;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;

/** The usual cut files of an order, read back by Java's XML parser, a DXF reader of the tests and PDFBox. */
@DatabaseTest
@Transactional
@DisplayNameGeneration(ReplaceUnderscores.class)
class UsualFilesIT {

    @Autowired
    UsualFiles files;

    @Autowired
    Positions positions;

    @Autowired
    Orders orders;

    @Autowired
    CutJobs jobs;

    @Autowired
    Machines machines;

    @Autowired
    DataSource database;

    @Test
    void each_form_says_the_setting_of_the_cut_that_is_prepared_and_lies_where_it_was_drawn() throws Exception {
        Machine machine = LaidOrders.machine(machines);
        CutJob job = LaidOrders.printed(database, jobs, machine, LaidOrders.ORDER);
        CutParameters dialled = new CutParameters(
                Speed.mmPerSecond(7.5),
                Percent.of(63),
                2,
                true,
                job.parameters().gap());
        job = jobs.dial(job.id(), dialled, Optional.empty());
        Order order = orders.find(new OrderId(LaidOrders.ORDER)).orElseThrow();
        SettingWords words = SettingWords.of(machine, dialled);
        assertThat(words.words()).startsWith("450 mm/min, 63 % power");

        byte[] svg = files.write(order, CutFile.Format.SVG, "Robin").bytes();
        var root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg))
                .getDocumentElement();
        assertThat(root.getElementsByTagName("title").item(0).getTextContent())
                .contains(order.number())
                .contains(words.words());
        assertThat(root.getAttribute("width"))
                .as("the frame of the lines, not a bed")
                .isEqualTo("300mm");

        byte[] dxf = files.write(order, CutFile.Format.DXF, "Robin").bytes();
        assertThat(DxfText.lines(new String(dxf, StandardCharsets.US_ASCII))
                        .getLast()
                        .layer())
                .isEqualTo("OUTLINE_" + words.layer());

        try (PDDocument pdf =
                Loader.loadPDF(files.write(order, CutFile.Format.PDF, "Robin").bytes())) {
            assertThat(pdf.getDocumentInformation().getTitle()).contains(words.words());
        }
    }

    @Test
    void what_was_given_out_before_a_cut_was_prepared_stands_on_the_record_of_the_cut_too() throws Exception {
        Machine machine = LaidOrders.machine(machines);
        PlainOrders.withIds(database, LaidOrders.ORDER);
        Order order = orders.find(new OrderId(LaidOrders.ORDER)).orElseThrow();
        assertThat(files.setting(order).orElseThrow().job()).isEmpty();
        PositionFiles.Written before = files.write(order, CutFile.Format.SVG, "Robin");
        assertThat(before.file().sha256())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(before.bytes())));
        CutJob job = jobs.prepare(
                new CutJob.Wish(
                        Optional.of(order.id()),
                        order.number(),
                        machine.id(),
                        puzzleworkshop.cutting.jobs.Workpiece.clean(LaidOrders.CRAFT),
                        Optional.empty()),
                "Robin");
        files.write(order, CutFile.Format.DXF, "Robin");
        assertThat(positions.given(job.id())).extracting(GivenFile::form).containsExactly(FileForm.SVG, FileForm.DXF);
        assertThat(positions.given(job.id()))
                .extracting(GivenFile::jobId)
                .containsExactly(Optional.empty(), Optional.of(job.id()));
        assertThat(positions.given(order.id())).hasSize(2);
    }

    @Test
    void without_a_machine_the_file_carries_no_setting_and_is_on_record_all_the_same() {
        PlainOrders.withIds(database, LaidOrders.ORDER);
        Order order = orders.find(new OrderId(LaidOrders.ORDER)).orElseThrow();
        assertThat(files.setting(order)).isEmpty();
        files.write(order, CutFile.Format.SVG, "Robin");
        assertThat(positions.given(order.id()).getFirst().setting()).startsWith("no setting");
    }
}
