package puzzleworkshop.placing;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutfiles.writing.CutFileName;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.placing.given.GivenStore;

/**
 * Files in a machine's coordinates for one place, or for several boards that lie on the bed together. Nothing is written
 * unless the cut is shown to stay inside the print and the bed; whatever is given out is put on record with its digest.
 */
@Service
public class PositionFiles {

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

    /**
     * Why files are not written; what stands not here would be.
     *
     * @param positionIds of one cut
     */
    @Transactional(readOnly = true)
    public Map<Choice, Sentence> obstacles(List<Long> positionIds) {
        Map<Choice, Sentence> obstacles = new HashMap<>();
        Optional<PlaceWriter.Laid> ready = Optional.empty();
        Optional<Sentence> all = Optional.empty();
        try {
            ready = Optional.of(PlaceWriter.Laid.of(ready(positionIds)));
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

    private static Optional<Sentence> obstacle(PlaceWriter.Laid laid, Choice choice) {
        try {
            new PlaceWriter(laid, choice.purpose()).plan(choice.form());
            return Optional.empty();
        } catch (Refused refused) {
            return Optional.of(refused.sentence());
        }
    }

    /**
     * Writes a file and puts it on record, for each of its places.
     *
     * @param positionIds of one cut, at least one
     * @throws Refused when it must not be written
     */
    @Transactional
    public Written write(List<Long> positionIds, Purpose purpose, FileForm form, String by) {
        List<ReadyPlace> ready = ready(positionIds);
        PlaceWriter writer = new PlaceWriter(PlaceWriter.Laid.of(ready), purpose);
        byte[] bytes = writer.bytes(form);
        CutJob job = ready.getFirst().job();
        String boards = ready.stream()
                .map(place -> Integer.toString(place.position().copy()))
                .collect(Collectors.joining("-"));
        String places = positionIds.stream().map(id -> Long.toString(id)).collect(Collectors.joining("-"));
        String name = CutFileName.of(
                job.label() + "-" + boards + "-place-" + places + "-"
                        + purpose.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                form.ending());
        GivenFile last = null;
        for (ReadyPlace place : ready) {
            last = new GivenFile(
                    0,
                    job.order(),
                    Optional.of(job.id()),
                    Optional.of(place.position().id()),
                    purpose,
                    form,
                    name,
                    digest(bytes),
                    bytes.length,
                    writer.words(),
                    by,
                    clock.instant());
            given.add(last, Optional.of(job.parameters()), writer.power());
        }
        return new Written(last, bytes);
    }

    private List<ReadyPlace> ready(List<Long> positionIds) {
        List<ReadyPlace> ready = new ArrayList<>();
        for (long id : positionIds) {
            ready.add(ready(id));
        }
        boolean oneCut =
                ready.stream().map(place -> place.job().id()).distinct().count() == 1;
        if (!oneCut) {
            throw new Refused("placing.file.old");
        }
        return ready;
    }

    private ReadyPlace ready(long positionId) {
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
                && print.overhang().equals(position.overhang())
                && machine.beam().kerf().equals(position.kerf());
        if (!same) {
            throw new Refused("placing.file.changed");
        }
        if (!position.inside()) {
            throw new Refused("placing.file.outside-print", position.spare().times(-1));
        }
        boolean traced = !position.asksToBeTraced(job, prints.copies(job))
                || positions.traced(List.of(job.id())).contains(positionId);
        return new ReadyPlace(position, job, machine, print, traced);
    }

    static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("Every Java has SHA-256", never);
        }
    }
}
