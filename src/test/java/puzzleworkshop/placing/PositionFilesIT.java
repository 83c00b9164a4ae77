package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.batik.parser.AWTPathProducer;
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
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutfiles.writing.DxfText;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter;
import puzzleworkshop.cutfiles.writing.PdfStrokes;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.machines.MachineControl;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.placing.given.SettingWords;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** Files for a measured place, read back by readers that share nothing with what writes them. */
@DatabaseTest
@Transactional
@DisplayNameGeneration(ReplaceUnderscores.class)
class PositionFilesIT {

    @Autowired
    Positions positions;

    @Autowired
    LearnedPlaces learned;

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

    /**
     * Read back by Batik's parser, a DXF reader of the tests, PDFBox and the tests' interpreter: every line begins in every
     * form where the print was found to lie. The page is the bed of 400 mm; y runs down in an SVG, up from its front edge in
     * the others, which is where this machine counts from.
     */
    @Test
    void every_form_holds_every_line_where_the_print_was_found_to_lie() throws Exception {
        Position position = measured(LaidOrders.PLACE);
        CutPlan plan = print.plan().transformed(LaidOrders.PLACE.transform());
        List<Point> wanted = plan.inOrder().stream().map(CurvePath::start).toList();
        List<Point> up =
                wanted.stream().map(p -> new Point(p.xMm(), 400 - p.yMm())).toList();

        Element svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(bytes(position, FileForm.SVG)))
                .getDocumentElement();
        assertThat(svg.getAttribute("viewBox")).isEqualTo("0 0 400 400");
        assertThat(svg.getAttribute("width")).isEqualTo("400mm");
        NodeList paths = svg.getElementsByTagName("path");
        List<Point> starts = new ArrayList<>();
        for (int i = 0; i < paths.getLength(); i++) {
            starts.add(start(AWTPathProducer.createShape(
                    new StringReader(((Element) paths.item(i)).getAttribute("d")), PathIterator.WIND_NON_ZERO)));
        }
        near(starts, wanted, 0.002);

        List<DxfText.Line> dxf = DxfText.lines(new String(bytes(position, FileForm.DXF), StandardCharsets.US_ASCII));
        near(
                dxf.stream()
                        .map(line -> new Point(
                                line.points().getFirst().getX(),
                                line.points().getFirst().getY()))
                        .toList(),
                up,
                0.001);
        assertThat(dxf.getLast().layer())
                .isEqualTo(
                        "OUTLINE_" + SettingWords.of(machine, job.parameters()).layer());

        try (PDDocument pdf = Loader.loadPDF(bytes(position, FileForm.PDF))) {
            assertThat(pdf.getDocumentInformation().getTitle())
                    .contains(SettingWords.of(machine, job.parameters()).words());
            assertThat(pdf.getPage(0).getMediaBox().getWidth()).isEqualTo((float) (400 * 72 / 25.4), within(0.01f));
            near(
                    PdfStrokes.of(pdf.getPage(0)).stream()
                            .map(PositionFilesIT::start)
                            .map(p -> new Point(p.xMm() * 25.4 / 72, p.yMm() * 25.4 / 72))
                            .toList(),
                    up,
                    0.004);
        }

        GcodeInterpreter run =
                GcodeInterpreter.run(new String(bytes(position, FileForm.GCODE), StandardCharsets.US_ASCII));
        Bounds outer = plan.outline().getFirst().bounds();
        near(burnt(run), new Bounds(outer.minX(), 400 - outer.maxY(), outer.maxX(), 400 - outer.minY()), 0.02);
        assertThat(cuts(run)).allSatisfy(move -> {
            assertThat(move.feed()).isEqualTo(job.parameters().speed().toMmPerMinute(), within(0.01));
            assertThat(move.power()).isEqualTo(1000 * job.parameters().power().asDouble(), within(0.5));
        });
    }

    @Test
    void two_boards_on_the_bed_are_cut_from_one_file_and_never_on_one_another() {
        CutJob two = twoSmallBoards();
        Similarity one = Similarity.about(new Point(0, 0), 1, Math.toRadians(0.5), 20, 20);
        Similarity other = Similarity.about(new Point(0, 0), 1, Math.toRadians(-0.3), 25, 220);
        Position first = measured(two, 1, one);
        Position wrong = measured(two, 2, Similarity.about(new Point(0, 0), 1, 0, 60, 60));
        assertThat(files.obstacles(List.of(first.id(), wrong.id()))
                        .get(new PositionFiles.Choice(Purpose.CUT, FileForm.GCODE))
                        .key())
                .isEqualTo("placing.file.on-another");
        Position second = measured(two, 2, other);
        List<Long> both = List.of(first.id(), second.id());
        assertThat(files.obstacles(both)
                        .get(new PositionFiles.Choice(Purpose.CUT, FileForm.GCODE))
                        .key())
                .as("the one tick of the checklist does not say which of the boards was traced")
                .isEqualTo("placing.file.trace-first");
        positions.traced(first.id(), "Robin");
        assertThat(files.obstacles(both)).containsKey(new PositionFiles.Choice(Purpose.CUT, FileForm.SVG));
        positions.traced(second.id(), "Robin");
        GcodeInterpreter run = GcodeInterpreter.run(new String(
                files.write(both, Purpose.CUT, FileForm.GCODE, "Robin").bytes(), StandardCharsets.US_ASCII));
        CurvePath outline = positions.print(two).orElseThrow().outline(0);
        Bounds wanted = outline.transformed(one.transform())
                .bounds()
                .and(outline.transformed(other.transform()).bounds());
        near(burnt(run), new Bounds(wanted.minX(), 400 - wanted.maxY(), wanted.maxX(), 400 - wanted.minY()), 0.02);
        GcodeInterpreter frames = GcodeInterpreter.run(new String(
                files.write(both, Purpose.FRAME, FileForm.GCODE, "Robin").bytes(), StandardCharsets.US_ASCII));
        assertThat(frames.moves().stream()
                        .filter(move -> move.rapid() && move.length() > 50)
                        .count())
                .as("the head goes to the first frame, then over to the second")
                .isEqualTo(2);
        assertThat(positions.given(two.id()))
                .extracting(GivenFile::positionId)
                .contains(Optional.of(first.id()), Optional.of(second.id()));
    }

    @Test
    void a_board_measured_again_while_the_cut_runs_is_cut_only_after_its_own_frame_was_traced() {
        Position before = measured(LaidOrders.PLACE);
        for (CheckItem item : CheckItem.values()) {
            jobs.check(job.id(), item, "Robin");
        }
        jobs.start(job.id(), "Robin");
        assertThat(obstacle(before, FileForm.GCODE)).isEmpty();
        Position again = measured(LaidOrders.PLACE);
        assertThat(refusal(again, FileForm.GCODE)).isEqualTo("placing.file.trace-first");
        positions.traced(again.id(), "Robin");
        assertThat(obstacle(again, FileForm.GCODE)).isEmpty();
    }

    @Test
    void of_several_boards_each_is_cut_only_after_its_own_frame_was_traced() {
        CutJob two = twoSmallBoards();
        Position first = measured(two, 1, Similarity.about(new Point(0, 0), 1, 0, 20, 20));
        assertThat(refusal(first, FileForm.GCODE)).isEqualTo("placing.file.trace-first");
        positions.traced(first.id(), "Robin");
        for (CheckItem item : CheckItem.values()) {
            jobs.check(two.id(), item, "Robin");
        }
        jobs.start(two.id(), "Robin");
        assertThat(obstacle(first, FileForm.GCODE)).isEmpty();
        Position second = measured(two, 2, Similarity.about(new Point(0, 0), 1, 0, 30, 30));
        assertThat(refusal(second, FileForm.GCODE)).isEqualTo("placing.file.trace-first");
        assertThat(refusal(second, FileForm.SVG)).isEqualTo("placing.file.trace-first");
        assertThat(files.obstacles(List.of(second.id())))
                .doesNotContainKey(new PositionFiles.Choice(Purpose.FRAME, FileForm.GCODE));
        positions.traced(second.id(), "Robin");
        assertThat(obstacle(second, FileForm.GCODE)).isEmpty();
    }

    @Test
    void a_frame_that_would_burn_is_not_written_whatever_a_form_let_through() {
        Machine slow = machine.withControl(new MachineControl(
                machine.control().axes(),
                machine.control().feed(),
                true,
                machine.control().words(),
                Percent.of(20)));
        machines.save(slow);
        jobs.dial(
                job.id(),
                new CutParameters(
                        Speed.mmPerSecond(40),
                        Percent.of(60),
                        1,
                        true,
                        job.parameters().gap()),
                Optional.empty());
        Position position = measured(LaidOrders.PLACE);
        assertThat(files.obstacles(List.of(position.id()))
                        .get(new PositionFiles.Choice(Purpose.FRAME, FileForm.GCODE))
                        .key())
                .isEqualTo("placing.file.frame-burns");
        assertThatThrownBy(() -> new MachineControl(
                        slow.control().axes(),
                        slow.control().feed(),
                        true,
                        slow.control().words(),
                        Percent.of(21)))
                .isInstanceOf(Refused.class);
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
        PositionFiles.Written written = files.write(List.of(position.id()), Purpose.CUT, FileForm.GCODE, "Robin");
        GivenFile record = positions.given(job.id()).getLast();
        String digest =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(written.bytes()));
        assertThat(record.sha256()).isEqualTo(digest);
        assertThat(record.positionId()).contains(position.id());
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
    void the_frame_cannot_be_skipped_even_where_nothing_was_measured() {
        assertThatThrownBy(() -> jobs.skip(job.id(), CheckItem.FRAME_TRACED, "no time for that today", "Robin"))
                .isInstanceOf(Refused.class);
        for (CheckItem item : CheckItem.values()) {
            if (item != CheckItem.FRAME_TRACED) {
                jobs.check(job.id(), item, "Robin");
            }
        }
        jdbc.sql("""
            insert into cutting_check (job_id, item, done, reason, checked_by, checked_at)
            values (:job, 'FRAME_TRACED', false, 'skipped behind the program', 'x', now())
            """).param("job", job.id()).update();
        assertThat(jobs.find(job.id()).orElseThrow().unanswered()).containsExactly(CheckItem.FRAME_TRACED);
        assertThatThrownBy(() -> jdbc.sql("update cutting_job set started_by = 'x', started_at = now() where id = :job")
                        .param("job", job.id())
                        .update())
                .hasMessageContaining("unanswered");
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
    void a_place_proven_for_another_kerf_is_measured_again_and_its_stretch_and_kerf_are_known_after_the_cut() {
        Position position = measured(Similarity.about(new Point(0, 0), 1.002, 0, 40, 90));
        assertThat(obstacle(position, FileForm.SVG)).isEmpty();
        assertThat(positions.lastMeasured(job.order().orElseThrow()))
                .as("not cut yet")
                .isEmpty();
        jdbc.sql("update cutting_machine set kerf_mm = 0.4 where id = :id")
                .param("id", machine.id())
                .update();
        assertThat(refusal(position, FileForm.SVG)).isEqualTo("placing.file.changed");
        for (CheckItem item : CheckItem.values()) {
            jobs.check(job.id(), item, "Robin");
        }
        jobs.start(job.id(), "Robin");
        Position then = positions.lastMeasured(job.order().orElseThrow()).orElseThrow();
        assertThat(then.kerf()).isEqualTo(Length.mm(0.15));
        assertThat(then.followed()).isTrue();
        assertThat(then.place().stretch()).isEqualTo(1.002, within(1e-6));
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
        assertThatThrownBy(() -> positions.takeJig(next.id(), 1, 0, "Robin"))
                .as("3 mm of overhang are too little for sticking 2 mm and 0.5 degrees off")
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("placing.jig.not-proven"));
        stickingIsExactTo(Length.mm(0.5), 0.1);
        LearnedPlace fence = learned.fence(machine);
        assertThat(fence.since()).isOne();
        assertThat(fence.shift().mm())
                .as("one board says where the fence lies, and was stuck by hand too: √2 as far off")
                .isEqualTo(0.5 * Math.sqrt(2), within(1e-9));
        Position jig = positions.takeJig(next.id(), 1, 0, "Robin");
        Point corner = new Point(-3, 203);
        assertThat(jig.place().of(corner).distanceTo(LaidOrders.PLACE.of(corner)))
                .isLessThan(1e-6);
        assertThat(obstacle(jig, FileForm.GCODE)).isEmpty();
        learned.fenceLaid(machine.id(), "Robin");
        assertThat(learned.fence(machine).since()).isZero();
        assertThatThrownBy(() -> positions.takeJig(next.id(), 1, 0, "Robin"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("placing.jig.unmeasured"));
    }

    /** By the two edges that the fence holds, worked out here from the drawing alone: y of the bed runs to the front. */
    @Test
    void a_print_that_lies_the_other_way_in_the_jig_is_cut_the_other_way_against_the_same_two_edges() {
        Similarity straight = Similarity.about(new Point(0, 0), 1, 0, 40, 90);
        positions.measure(
                job.id(),
                new Positions.Typed(
                        1, 0, true, LaidOrders.typed(print, machine, straight).visits()),
                "Robin");
        stickingIsExactTo(Length.mm(0.1), 0.01);
        CutJob next = LaidOrders.printed(database, jobs, machine, 78);
        Position upright = positions.takeJig(next.id(), 1, 0, "Robin");
        Position turned = positions.takeJig(next.id(), 1, 1, "Robin");
        assertThat(upright.turns()).isZero();
        assertThat(turned.turns()).isEqualTo(1);
        DrawnPrint drawn = positions.print(next).orElseThrow();
        CurvePath lies = drawn.outline(1).transformed(turned.place().transform());
        assertThat(lies.bounds().width()).as("200 mm high, lying turned").isEqualTo(200, within(0.01));
        assertThat(lies.bounds().height()).isEqualTo(300, within(0.01));
        assertThat(lies.bounds().minX())
                .as("left edge of the print at 37 mm, 3 mm of overhang")
                .isEqualTo(40, within(0.01));
        assertThat(lies.bounds().maxY()).as("front edge of the print at 293 mm").isEqualTo(290, within(0.01));
    }

    @Test
    void places_measured_with_other_axes_teach_nothing_about_the_fence_and_a_new_margin_forgets_where_it_lies() {
        positions.measure(
                job.id(),
                new Positions.Typed(
                        1,
                        0,
                        true,
                        LaidOrders.typed(print, machine, LaidOrders.PLACE).visits()),
                "Robin");
        assertThat(learned.overhang(machine).inJig()).isOne();
        Machine mirrored = machines.save(machine.withControl(new MachineControl(
                new MachineAxes(BedCorner.BACK_LEFT, true, false, MachineAxes.Unit.MM),
                machine.control().feed(),
                true,
                machine.control().words(),
                Percent.of(2))));
        assertThat(learned.overhang(mirrored).cuts()).isZero();
        assertThat(learned.fence(machine).since()).isOne();
        TradeNumbers now = workshop.tradeNumbers();
        workshop.save(numbers(now, now.holdDownMargin().plus(Length.mm(2)), now.stickShift(), now.stickTurnDegrees()));
        assertThat(learned.fence(machine).since()).isZero();
        assertThat(learned.fence(machine).spot()).isEmpty();
    }

    /** Two puzzles of 200 × 150 mm, both printed with crosses. */
    private CutJob twoSmallBoards() {
        CutJob two = LaidOrders.printed(database, jobs, machine, 79);
        jdbc.sql("update customer_order set quantity = 2, width_mm = 200, height_mm = 150 where id = 79")
                .update();
        jdbc.sql("update print_run_item set width_mm = 200, height_mm = 150 where order_id = 79")
                .update();
        return two;
    }

    private Position measured(CutJob of, int copy, Similarity place) {
        Positions.Typed typed = LaidOrders.typed(positions.print(of).orElseThrow(), machine, place);
        return positions.measure(of.id(), new Positions.Typed(copy, 0, false, typed.visits()), "Robin");
    }

    private byte[] bytes(Position position, FileForm form) {
        return files.write(List.of(position.id()), Purpose.CUT, form, "Robin").bytes();
    }

    private static Point start(Shape shape) {
        double[] at = new double[6];
        shape.getPathIterator(null).currentSegment(at);
        return new Point(at[0], at[1]);
    }

    private static void near(List<Point> are, List<Point> wanted, double within) {
        assertThat(are).hasSameSizeAs(wanted);
        for (int i = 0; i < are.size(); i++) {
            assertThat(are.get(i).distanceTo(wanted.get(i))).as("line %d", i).isLessThan(within);
        }
    }

    private void stickingIsExactTo(Length shift, double degrees) {
        TradeNumbers now = workshop.tradeNumbers();
        workshop.save(numbers(now, now.holdDownMargin(), shift, degrees));
    }

    private static TradeNumbers numbers(TradeNumbers now, Length margin, Length shift, double degrees) {
        return new TradeNumbers(
                now.overhang(),
                margin,
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
                now.outlineLast());
    }

    private Position measured(Similarity place) {
        return positions.measure(job.id(), LaidOrders.typed(print, machine, place), "Robin");
    }

    private GcodeInterpreter run(Position position, Purpose purpose) {
        return GcodeInterpreter.run(new String(
                files.write(List.of(position.id()), purpose, FileForm.GCODE, "Robin")
                        .bytes(),
                StandardCharsets.US_ASCII));
    }

    private Optional<Sentence> obstacle(Position position, FileForm form) {
        return Optional.ofNullable(
                files.obstacles(List.of(position.id())).get(new PositionFiles.Choice(Purpose.CUT, form)));
    }

    private String refusal(Position position, FileForm form) {
        String said = obstacle(position, form).orElseThrow().key();
        assertThatThrownBy(() -> files.write(List.of(position.id()), Purpose.CUT, form, "Robin"))
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
