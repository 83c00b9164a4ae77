package puzzleworkshop.placing;

import java.awt.geom.AffineTransform;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutfiles.writing.GcodeFile;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.MachinePage;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * Files in a machine's coordinates for one place. Nothing is written unless the cut is shown to stay inside the print and
 * the bed; whatever is given out is put on record with its digest.
 */
@Service
public class PositionFiles {

    /** Frames are traced no faster, so that an eye can follow (common practice). */
    private static final double FRAME_MM_PER_SECOND = 50;

    private final PositionStore positions;
    private final GivenStore given;
    private final PrintsUnderLaser prints;
    private final CutJobs jobs;
    private final Clock clock;

    PositionFiles(PositionStore positions, GivenStore given, PrintsUnderLaser prints, CutJobs jobs, Clock clock) {
        this.positions = positions;
        this.given = given;
        this.prints = prints;
        this.jobs = jobs;
        this.clock = clock;
    }

    /** A file and its row in the record. */
    public record Written(GivenFile file, byte[] bytes) {}

    /** One file that may be asked for. */
    public record Choice(Purpose purpose, FileForm form) {}

    /** Why files are not written; what stands not here would be. */
    @Transactional(readOnly = true)
    public Map<Choice, Sentence> obstacles(long positionId) {
        Map<Choice, Sentence> obstacles = new HashMap<>();
        Optional<Ready> ready = Optional.empty();
        Optional<Sentence> all = Optional.empty();
        try {
            ready = Optional.of(ready(positionId));
        } catch (Refused refused) {
            all = Optional.of(refused.sentence());
        }
        for (Purpose purpose : Purpose.values()) {
            for (FileForm form : FileForm.values()) {
                Choice choice = new Choice(purpose, form);
                ready.flatMap(known -> obstacle(known, choice)).ifPresent(why -> obstacles.put(choice, why));
                all.ifPresent(why -> obstacles.put(choice, why));
            }
        }
        return obstacles;
    }

    private static Optional<Sentence> obstacle(Ready ready, Choice choice) {
        try {
            plan(ready, choice.purpose(), choice.form());
            return Optional.empty();
        } catch (Refused refused) {
            return Optional.of(refused.sentence());
        }
    }

    /**
     * Writes a file and puts it on record.
     *
     * @throws Refused when it must not be written
     */
    @Transactional
    public Written write(long positionId, Purpose purpose, FileForm form, String by) {
        Ready ready = ready(positionId);
        byte[] bytes = bytes(ready, purpose, form);
        String name = (ready.job.label() + "-" + ready.position.copy() + "-place-" + positionId + "-"
                                + purpose.name()
                                        .toLowerCase(java.util.Locale.ROOT)
                                        .replace('_', '-'))
                        .replaceAll("[^\\p{L}\\p{N}._-]+", "-")
                + "." + form.ending();
        GivenFile file = new GivenFile(
                0,
                ready.job.id(),
                positionId,
                purpose,
                form,
                name,
                digest(bytes),
                bytes.length,
                words(ready, purpose),
                by,
                clock.instant());
        given.add(file, ready.job.parameters(), power(ready, purpose));
        return new Written(file, bytes);
    }

    private record Ready(Position position, CutJob job, Machine machine, DrawnPrint print) {}

    private Ready ready(long positionId) {
        Position position = positions.find(positionId).orElseThrow(() -> new Refused("placing.file.old"));
        CutJob job = jobs.find(position.jobId()).orElseThrow(() -> new Refused("cutting.job.gone"));
        Machine machine = job.setting().machine();
        DrawnPrint print = prints.of(job).orElseThrow(() -> new Refused("placing.no-print", job.label()));
        boolean newest = positions.ofJob(job.id()).stream()
                .filter(other -> other.copy() == position.copy())
                .noneMatch(other -> other.id() > positionId);
        if (!position.holds() || !newest) {
            throw new Refused("placing.file.old");
        }
        if (job.ended().isPresent()) {
            throw new Refused("cutting.job.ended", job.label());
        }
        for (Sentence reason : job.workpiece().forbidden()) {
            throw new Refused(reason);
        }
        boolean same = machine.id() == position.machineId()
                && machine.bed().equals(position.bed())
                && machine.control().axes().equals(position.axes())
                && print.finished().equals(position.finished())
                && print.overhang().equals(position.overhang());
        if (!same) {
            throw new Refused("placing.file.changed");
        }
        if (!position.inside()) {
            throw new Refused("placing.file.outside-print", position.spare().times(-1));
        }
        return new Ready(position, job, machine, print);
    }

    /** What is written, on the bed; refused when it must not be. */
    private static CutPlan plan(Ready ready, Purpose purpose, FileForm form) {
        Machine machine = ready.machine;
        if (form == FileForm.GCODE && !machine.control().takesGcode()) {
            throw new Refused("placing.file.no-gcode", machine.name());
        }
        if (form != FileForm.GCODE && purpose == Purpose.DRY_RUN) {
            throw new Refused("placing.file.no-dry-run");
        }
        AffineTransform toBed = toBed(ready);
        CutPlan plan = ready.print.plan().transformed(toBed);
        Bounds bed = new Bounds(
                0, 0, machine.bed().width().mm(), machine.bed().height().mm());
        if (!bed.holds(plan.frame().grownBy(machine.beam().kerf().mm() / 2))) {
            throw new Refused("placing.file.outside-bed", machine.name());
        }
        CutPlan frame = new CutPlan(
                plan.title() + " frame",
                plan.sequence(),
                List.of(),
                List.of(ready.print.frame(0).transformed(toBed)),
                0,
                0);
        if (!bed.holds(frame.frame())) {
            throw new Refused("placing.file.outside-bed", machine.name());
        }
        return purpose == Purpose.FRAME ? frame : plan;
    }

    private static byte[] bytes(Ready ready, Purpose purpose, FileForm form) {
        CutPlan wanted = plan(ready, purpose, form);
        return form.drawing()
                .map(format ->
                        CutFile.write(wanted, format, page(ready, purpose)).bytes())
                .orElseGet(() -> gcode(ready, wanted, purpose));
    }

    /** The whole way of a drawn point to the bed: turned by quarters, then to where the print lies. */
    private static AffineTransform toBed(Ready ready) {
        Similarity place = ready.position.place();
        Similarity cut = ready.position.followed() ? place : place.unstretched(middle(ready));
        AffineTransform way = cut.transform();
        way.concatenate(DrawnPrint.quarters(ready.position.turns()));
        return way;
    }

    /** The middle of the visited marks, about which the stretch is left out; as the proof did. */
    private static Point middle(Ready ready) {
        List<Point> marks = ready.position.visits().stream()
                .map(seen -> DrawnPrint.turned(seen.visit().drawn(), ready.position.turns()))
                .toList();
        if (marks.isEmpty()) {
            return new Point(0, 0);
        }
        double x = marks.stream().mapToDouble(Point::xMm).average().orElseThrow();
        double y = marks.stream().mapToDouble(Point::yMm).average().orElseThrow();
        return new Point(x, y);
    }

    private static byte[] gcode(Ready ready, CutPlan plan, Purpose purpose) {
        Machine machine = ready.machine;
        AffineTransform toMachine = machine.control().axes().toMachine(machine.bed());
        CutPlan lines = plan.transformed(toMachine);
        Point one = DrawnPrint.moved(new Point(0, 0), toMachine);
        Point other = DrawnPrint.moved(
                new Point(machine.bed().width().mm(), machine.bed().height().mm()), toMachine);
        Bounds bed = Bounds.at(one).and(other);
        CutParameters set = ready.job.parameters();
        boolean frame = purpose == Purpose.FRAME;
        Percent framePower = machine.control().framePower();
        boolean dark = frame && framePower.asDouble() == 0;
        double feed = frame
                ? Math.min(machine.motion().maxCut().mmPerSecond(), FRAME_MM_PER_SECOND)
                : Math.min(set.speed().mmPerSecond(), machine.motion().maxCut().mmPerSecond());
        // inside the print by the proof that comes with the position: the print may lie turned, which upright bounds
        // cannot say
        GcodeFile.Job job = new GcodeFile.Job(
                lines.title() + " place " + ready.position.id(),
                lines.inOrder(),
                feed * 60,
                frame && !dark ? framePower.asDouble() : set.power().asDouble(),
                frame ? 1 : set.passes(),
                !frame && set.airAssist(),
                frame ? 0 : machine.passPause().toSeconds(),
                bed,
                bed.grownBy(machine.beam().kerf().mm()),
                machine.beam().kerf().mm());
        return GcodeFile.write(job, machine.control().words(), dark ? Purpose.DRY_RUN : purpose);
    }

    private static MachinePage page(Ready ready, Purpose purpose) {
        SettingWords words = SettingWords.of(ready.machine, ready.job.parameters());
        return new MachinePage(
                ready.machine.bed(),
                words(ready, purpose),
                purpose == Purpose.FRAME
                        ? "FRAME_"
                                + SettingWords.number(
                                                power(ready, purpose)
                                                        .hundredths()
                                                        .doubleValue(),
                                                1)
                                        .replace('.', '-')
                                + "PC"
                        : words.layer());
    }

    private static String words(Ready ready, Purpose purpose) {
        String power = SettingWords.number(power(ready, purpose).hundredths().doubleValue(), 1);
        return switch (purpose) {
            case CUT -> SettingWords.of(ready.machine, ready.job.parameters()).words();
            case FRAME -> "frame to trace, " + power + " % power, once";
            case DRY_RUN -> "dry run, beam off";
        };
    }

    private static Percent power(Ready ready, Purpose purpose) {
        return switch (purpose) {
            case CUT -> ready.job.parameters().power();
            case FRAME -> ready.machine.control().framePower();
            case DRY_RUN -> Percent.ZERO;
        };
    }

    private static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("Every Java has SHA-256", never);
        }
    }
}
