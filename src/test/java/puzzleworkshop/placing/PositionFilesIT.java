package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** Files for a measured place, read back: by our reader of drawings, the tests' interpreter of G-code, and PDFBox. */
@DatabaseTest
@Transactional
@DisplayNameGeneration(ReplaceUnderscores.class)
class PositionFilesIT {

    @Autowired
    Positions positions;

    @Autowired
    PositionFiles files;

    @Autowired
    CutJobs jobs;

    @Autowired
    Machines machines;

    @Autowired
    Workshop workshop;

    @Autowired
    DataSource database;

    @Autowired
    JdbcClient jdbc;

    Machine machine;
    CutJob job;
    DrawnPrint print;

    @BeforeEach
    void a_printed_order_under_the_laser() {
        machine = LaidOrders.machine(machines);
        job = LaidOrders.printed(database, jobs, machine, LaidOrders.ORDER);
        print = positions.print(job).orElseThrow();
    }

    @Test
    void every_form_holds_the_outline_where_the_print_was_found_to_lie() throws IOException {
        Position position = measured(LaidOrders.PLACE);
        Bounds wanted =
                print.outline(0).transformed(LaidOrders.PLACE.transform()).bounds();
        DrawnFile svg = DrawnFile.read(
                "a.svg",
                files.write(position.id(), Purpose.CUT, FileForm.SVG, "Robin").bytes());
        near(svg.bounds(), wanted, 0.01);
        byte[] dxf =
                files.write(position.id(), Purpose.CUT, FileForm.DXF, "Robin").bytes();
        // y of a DXF runs up from the front edge of the bed of 400 mm, which is where this machine counts from
        String words = new String(dxf, StandardCharsets.US_ASCII);
        assertThat(words)
                .contains(
                        "OUTLINE_" + SettingWords.of(machine, job.parameters()).layer());
        try (PDDocument pdf = Loader.loadPDF(
                files.write(position.id(), Purpose.CUT, FileForm.PDF, "Robin").bytes())) {
            assertThat(pdf.getDocumentInformation().getTitle())
                    .contains(SettingWords.of(machine, job.parameters()).words());
            assertThat(pdf.getPage(0).getMediaBox().getWidth()).isEqualTo((float) (400 * 72 / 25.4), within(0.01f));
        }
        GcodeInterpreter run = GcodeInterpreter.run(new String(
                files.write(position.id(), Purpose.CUT, FileForm.GCODE, "Robin").bytes(), StandardCharsets.US_ASCII));
        Bounds burnt = burnt(run);
        near(burnt, new Bounds(wanted.minX(), 400 - wanted.maxY(), wanted.maxX(), 400 - wanted.minY()), 0.02);
        assertThat(cuts(run)).allSatisfy(move -> {
            assertThat(move.feed()).isEqualTo(job.parameters().speed().toMmPerMinute(), within(0.01));
            assertThat(move.power()).isEqualTo(1000 * job.parameters().power().asDouble(), within(0.5));
        });
    }

    @Test
    void the_frame_is_traced_at_the_owners_power_and_the_dry_run_never_burns() {
        Position position = measured(LaidOrders.PLACE);
        GcodeInterpreter frame = run(position, Purpose.FRAME);
        assertThat(cuts(frame))
                .isNotEmpty()
                .allSatisfy(move -> assertThat(move.power()).isEqualTo(20));
        GcodeInterpreter dry = run(position, Purpose.DRY_RUN);
        assertThat(dry.moves()).isNotEmpty();
        assertThat(cuts(dry)).isEmpty();
    }

    @Test
    void what_was_given_out_is_on_record_for_ever_with_digest_and_setting() throws Exception {
        Position position = measured(LaidOrders.PLACE);
        PositionFiles.Written written = files.write(position.id(), Purpose.CUT, FileForm.GCODE, "Robin");
        GivenFile record = positions.given(job.id()).getLast();
        String digest =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(written.bytes()));
        assertThat(record.sha256()).isEqualTo(digest);
        assertThat(record.positionId()).isEqualTo(position.id());
        assertThat(record.setting()).contains("mm/min").contains("1 pass");
        assertThat(positions.given(job.order().orElseThrow())).contains(record);
        assertThatThrownBy(() -> jdbc.sql("update placing_given set sha256 = repeat('0', 64)")
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void a_board_that_was_moved_is_measured_again_before_any_file_is_written() {
        Position position = measured(LaidOrders.PLACE);
        positions.moved(job.id(), 1, "Robin");
        assertThat(positions.current(job.id(), 1)).isEmpty();
        assertThat(refusal(position, FileForm.SVG)).isEqualTo("placing.file.old");
        Position again = measured(Similarity.about(new Point(0, 0), 1, 0, 30, 80));
        assertThat(obstacle(again, FileForm.SVG)).isEmpty();
        assertThat(positions.of(job.id())).hasSize(2);
        assertThat(positions.of(job.id()).getFirst().moved()).isPresent();
    }

    @Test
    void a_new_place_asks_for_the_frame_to_be_traced_again_and_that_cannot_be_skipped() {
        jobs.check(job.id(), CheckItem.FRAME_TRACED, "Robin");
        measured(LaidOrders.PLACE);
        assertThat(jobs.find(job.id()).orElseThrow().unanswered()).contains(CheckItem.FRAME_TRACED);
        assertThatThrownBy(() -> jobs.skip(job.id(), CheckItem.FRAME_TRACED, "no time for that today", "Robin"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("cutting.job.frame.required"));
        jobs.check(job.id(), CheckItem.FRAME_TRACED, "Robin");
        assertThat(jobs.find(job.id()).orElseThrow().unanswered()).doesNotContain(CheckItem.FRAME_TRACED);
    }

    @Test
    void nothing_is_written_that_would_leave_the_bed() {
        Position position = measured(Similarity.about(new Point(0, 0), 1, 0, 150, 80));
        assertThat(refusal(position, FileForm.SVG)).isEqualTo("placing.file.outside-bed");
        assertThat(refusal(position, FileForm.GCODE)).isEqualTo("placing.file.outside-bed");
    }

    @Test
    void nothing_is_written_when_the_proof_fails() {
        positions.keep(new PlacingRules(Length.mm(2), Length.mm(0.05), true, PlacingRules.USUAL.followMost()));
        Position position = measured(LaidOrders.PLACE);
        assertThat(position.inside()).isFalse();
        assertThat(refusal(position, FileForm.PDF)).isEqualTo("placing.file.outside-print");
    }

    @Test
    void a_machine_that_takes_no_gcode_gets_the_other_forms_only() {
        Machine plain = machines.save(machine.withControl(puzzleworkshop.machines.MachineControl.USUAL));
        assertThat(plain.control().takesGcode()).isFalse();
        Position position = measured(LaidOrders.PLACE);
        assertThat(refusal(position, FileForm.GCODE)).isEqualTo("placing.file.no-gcode");
        assertThat(obstacle(position, FileForm.DXF)).isEmpty();
    }

    @Test
    void a_board_in_the_jig_lies_where_the_last_one_measured_in_it_lay() {
        Positions.Typed typed = LaidOrders.typed(print, machine, LaidOrders.PLACE);
        positions.measure(job.id(), new Positions.Typed(1, 0, true, typed.visits()), "Robin");
        CutJob next = LaidOrders.printed(database, jobs, machine, 78);
        stickingIsExactTo(Length.mm(2), 0.5);
        assertThatThrownBy(() -> positions.takeJig(next.id(), 1, "Robin"))
                .as("3 mm of overhang are too little for sticking 2 mm and 0.5 degrees off")
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("placing.jig.not-proven"));
        stickingIsExactTo(Length.mm(0.5), 0.1);
        Position jig = positions.takeJig(next.id(), 1, "Robin");
        Point corner = new Point(-3, 203);
        assertThat(jig.place().of(corner).distanceTo(LaidOrders.PLACE.of(corner)))
                .isLessThan(1e-6);
        assertThat(obstacle(jig, FileForm.GCODE)).isEmpty();
    }

    private void stickingIsExactTo(Length shift, double degrees) {
        TradeNumbers now = workshop.tradeNumbers();
        workshop.save(new TradeNumbers(
                now.overhang(),
                now.holdDownMargin(),
                shift,
                degrees,
                now.sharpPpi(),
                now.goodPpi(),
                now.softPpi(),
                now.smallestPiece(),
                now.boardThickness(),
                now.smallestUseful(),
                now.bufferDays(),
                now.quoteValidDays(),
                now.outlineLast()));
    }

    private Position measured(Similarity place) {
        return positions.measure(job.id(), LaidOrders.typed(print, machine, place), "Robin");
    }

    private GcodeInterpreter run(Position position, Purpose purpose) {
        return GcodeInterpreter.run(new String(
                files.write(position.id(), purpose, FileForm.GCODE, "Robin").bytes(), StandardCharsets.US_ASCII));
    }

    private Optional<Sentence> obstacle(Position position, FileForm form) {
        return Optional.ofNullable(files.obstacles(position.id()).get(new PositionFiles.Choice(Purpose.CUT, form)));
    }

    private String refusal(Position position, FileForm form) {
        String said = obstacle(position, form).orElseThrow().key();
        assertThatThrownBy(() -> files.write(position.id(), Purpose.CUT, form, "Robin"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo(said));
        return said;
    }

    private static List<GcodeInterpreter.Move> cuts(GcodeInterpreter run) {
        return run.moves().stream().filter(GcodeInterpreter.Move::beamOn).toList();
    }

    private static Bounds burnt(GcodeInterpreter run) {
        List<Point> ends = cuts(run).stream()
                .flatMap(move -> List.of(move.from(), move.to()).stream())
                .toList();
        Comparator<Point> byX = Comparator.comparingDouble(Point::xMm);
        Comparator<Point> byY = Comparator.comparingDouble(Point::yMm);
        return new Bounds(
                ends.stream().min(byX).orElseThrow().xMm(),
                ends.stream().min(byY).orElseThrow().yMm(),
                ends.stream().max(byX).orElseThrow().xMm(),
                ends.stream().max(byY).orElseThrow().yMm());
    }

    private static void near(Bounds is, Bounds wanted, double within) {
        assertThat(is.minX()).isEqualTo(wanted.minX(), within(within));
        assertThat(is.minY()).isEqualTo(wanted.minY(), within(within));
        assertThat(is.maxX()).isEqualTo(wanted.maxX(), within(within));
        assertThat(is.maxY()).isEqualTo(wanted.maxY(), within(within));
    }
}
