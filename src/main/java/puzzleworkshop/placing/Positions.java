package puzzleworkshop.placing;

import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.geometry.align.InsidePrint;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.placing.given.GivenStore;
import puzzleworkshop.placing.given.SettingWords;

/**
 * Where prints lie under the laser. A place holds until the board is moved or measured again; each new one asks for the
 * frame to be traced again.
 */
@Service
public class Positions {

    private final PositionStore store;
    private final GivenStore given;
    private final PrintsUnderLaser prints;
    private final LearnedPlaces learned;
    private final CutJobs jobs;
    private final Clock clock;

    Positions(
            PositionStore store,
            GivenStore given,
            PrintsUnderLaser prints,
            LearnedPlaces learned,
            CutJobs jobs,
            Clock clock) {
        this.store = store;
        this.given = given;
        this.prints = prints;
        this.learned = learned;
        this.jobs = jobs;
        this.clock = clock;
    }

    /**
     * What was typed at the machine.
     *
     * @param copy which of the order's puzzles, from 1
     * @param turns by how many quarters, clockwise, the print lies turned
     * @param inJig whether the board lies in the locating jig
     */
    public record Typed(int copy, int turns, boolean inJig, List<MarkVisit> visits) {

        public Typed {
            visits = List.copyOf(visits);
        }
    }

    @Transactional(readOnly = true)
    public PlacingRules rules() {
        return store.rules();
    }

    @Transactional
    public void keep(PlacingRules rules) {
        store.keep(rules);
    }

    /** The print of a cut; none for a test cut. */
    @Transactional(readOnly = true)
    public Optional<DrawnPrint> print(CutJob job) {
        return prints.of(job);
    }

    /** How many boards of one puzzle each the cut has. */
    @Transactional(readOnly = true)
    public int copies(CutJob job) {
        return prints.copies(job);
    }

    /** What was typed, looked at and not kept: for a print that {@link #print} gave. */
    @Transactional(readOnly = true)
    public Measuring look(CutJob job, DrawnPrint print, Typed typed) {
        return Measuring.of(print, typed.turns(), typed.visits(), job.setting().machine(), store.rules());
    }

    /**
     * Keeps a measured place.
     *
     * @throws Refused when the readings cannot be, or the cut has ended
     */
    @Transactional
    public Position measure(long jobId, Typed typed, String by) {
        CutJob job = jobs.placed(jobId);
        DrawnPrint print = required(job);
        Machine machine = job.setting().machine();
        requireItsMarks(print, typed);
        Measuring measured = Measuring.of(print, typed.turns(), typed.visits(), machine, store.rules());
        InsidePrint proof = measured.proof().orElseThrow(() -> new Refused(measured.said()));
        List<Length> residuals =
                measured.reading().fit().residuals().stream().map(Length::mm).toList();
        List<Position.Visited> visits = new java.util.ArrayList<>();
        for (int i = 0; i < residuals.size(); i++) {
            visits.add(new Position.Visited(measured.visits().get(i), residuals.get(i)));
        }
        return kept(new Position(
                0,
                jobId,
                machine.id(),
                copy(job, typed.copy()),
                Position.Source.MARKS,
                typed.inJig(),
                typed.turns(),
                machine.control().axes(),
                machine.bed(),
                print.finished(),
                print.overhang(),
                prints.numbers().holdDownMargin(),
                machine.beam().kerf(),
                visits,
                measured.reading().fit().place(),
                measured.followed(),
                Length.mm(proof.spare()),
                Length.mm(proof.uncertainty()),
                Optional.empty(),
                by,
                clock.instant()));
    }

    /**
     * Takes the jig's place for a board that lies in it: no marks are visited.
     *
     * @param turns by how many quarters, clockwise, its print lies turned
     * @throws Refused when no board was measured in the jig yet, or prints lie too far off without marks
     */
    @Transactional
    public Position takeJig(long jobId, int copy, int turns, String by) {
        CutJob job = jobs.placed(jobId);
        DrawnPrint print = required(job);
        Machine machine = job.setting().machine();
        LearnedPlace fence = learned.fence(machine);
        JigPlace jig = JigPlace.of(fence, print, turns, machine.beam().kerf(), machine.name());
        if (jig.spare().mm() < 0) {
            throw new Refused(
                    "placing.jig.not-proven",
                    fence.shift(),
                    degrees(fence.turnDegrees()),
                    jig.spare().times(-1));
        }
        return kept(new Position(
                0,
                jobId,
                machine.id(),
                copy(job, copy),
                Position.Source.JIG,
                true,
                turns,
                machine.control().axes(),
                machine.bed(),
                print.finished(),
                print.overhang(),
                prints.numbers().holdDownMargin(),
                machine.beam().kerf(),
                List.of(),
                jig.place(),
                false,
                jig.spare(),
                fence.shift(),
                Optional.empty(),
                by,
                clock.instant()));
    }

    private static String degrees(double degrees) {
        return SettingWords.number(degrees, 2);
    }

    /** The frame at this very place was traced, and lies inside the print. */
    @Transactional
    public void traced(long positionId, String by) {
        Position position =
                store.find(positionId).filter(Position::holds).orElseThrow(() -> new Refused("placing.file.old"));
        store.traced(position, by, clock.instant());
    }

    /** Places of a cut whose own frame was traced. */
    @Transactional(readOnly = true)
    public Set<Long> traced(CutJob job) {
        return store.traced(List.of(job.id()));
    }

    /** The board was moved: its place no longer holds, and the frame must be traced again. */
    @Transactional
    public void moved(long jobId, int copy, String by) {
        jobs.placed(jobId);
        current(jobId, copy).ifPresent(position -> store.moved(position, by, clock.instant()));
    }

    /** The place that holds for a board; none before it is measured and after it was moved. */
    @Transactional(readOnly = true)
    public Optional<Position> current(long jobId, int copy) {
        return store.ofJob(jobId).stream()
                .filter(position -> position.copy() == copy)
                .reduce((older, newer) -> newer)
                .filter(Position::holds);
    }

    /** All places of a cut, oldest first: they stay with its record. */
    @Transactional(readOnly = true)
    public List<Position> of(long jobId) {
        return store.ofJob(jobId);
    }

    /** Where the last cut of an order was measured by marks; with its stretch and kerf a lost piece is made again. */
    @Transactional(readOnly = true)
    public Optional<Position> lastMeasured(OrderId order) {
        return jobs.of(order).stream()
                .filter(job -> job.started().isPresent() && !job.brokenOff())
                .flatMap(job -> store.ofJob(job.id()).stream())
                .filter(position -> position.source() == Position.Source.MARKS)
                .max(Comparator.comparingLong(Position::id));
    }

    /**
     * Every file that was given out for a cut, oldest first; usual files of its order that were given out before it was
     * prepared too, for nobody can say that it was not they that were cut.
     */
    @Transactional(readOnly = true)
    public List<GivenFile> given(long jobId) {
        Optional<CutJob> job = jobs.find(jobId);
        return job.flatMap(CutJob::order)
                .map(order -> given.ofOrder(order).stream()
                        .filter(file -> file.jobId()
                                .map(id -> id == jobId)
                                .orElseGet(() -> job.get()
                                        .ended()
                                        .filter(end -> file.at().isAfter(end.at()))
                                        .isEmpty()))
                        .toList())
                .orElseGet(() -> given.ofJob(jobId));
    }

    /** Every file that was given out for an order, oldest first. */
    @Transactional(readOnly = true)
    public List<GivenFile> given(OrderId order) {
        return given.ofOrder(order);
    }

    /** Crosses that were set otherwise since the form was opened are not those that were visited. */
    private static void requireItsMarks(DrawnPrint print, Typed typed) {
        boolean own = typed.visits().stream()
                .allMatch(visit -> visit.mark() <= print.marks().size()
                        && print.marks().get(visit.mark() - 1).equals(visit.drawn()));
        if (!own) {
            throw new Refused("placing.file.changed");
        }
    }

    private Position kept(Position position) {
        return store.find(store.add(position)).orElseThrow();
    }

    private int copy(CutJob job, int asked) {
        if (asked < 1 || asked > copies(job)) {
            throw new Refused("placing.no-copy", asked, copies(job));
        }
        return asked;
    }

    private DrawnPrint required(CutJob job) {
        return prints.of(job).orElseThrow(() -> new Refused("placing.no-print", job.label()));
    }
}
