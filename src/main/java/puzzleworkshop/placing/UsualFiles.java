package puzzleworkshop.placing;

import java.time.Clock;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutFileName;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutfiles.writing.MachinePage;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.orders.Order;
import puzzleworkshop.placing.given.FileForm;
import puzzleworkshop.placing.given.GivenFile;
import puzzleworkshop.placing.given.GivenStore;
import puzzleworkshop.placing.given.SettingWords;

/**
 * The usual cut file of an order, which is laid by eye: it says the setting it is meant to be cut with, and what was given
 * out is put on record with its digest, as files for a place are.
 */
@Service
public class UsualFiles {

    private final GivenStore given;
    private final PrintsUnderLaser prints;
    private final CutJobs jobs;
    private final Settings settings;
    private final Machines machines;
    private final Clock clock;

    UsualFiles(
            GivenStore given,
            PrintsUnderLaser prints,
            CutJobs jobs,
            Settings settings,
            Machines machines,
            Clock clock) {
        this.given = given;
        this.prints = prints;
        this.jobs = jobs;
        this.settings = settings;
        this.machines = machines;
        this.clock = clock;
    }

    /**
     * What a file says.
     *
     * @param machine it is meant for
     * @param parameters what is dialled in
     * @param job the cut that is prepared or runs; none when it is the setting of the standard machine for the order's board
     */
    public record Said(Machine machine, CutParameters parameters, Optional<CutJob> job) {}

    /** None while no machine is written down. */
    @Transactional(readOnly = true)
    public Optional<Said> setting(Order order) {
        Optional<CutJob> open =
                jobs.lastFor(order.id()).filter(job -> job.ended().isEmpty());
        return open.map(job -> new Said(job.setting().machine(), job.parameters(), open))
                .or(() -> machines.standard()
                        .map(machine -> new Said(
                                machine,
                                settings.forBoard(machine, order.board()).parameters(),
                                Optional.empty())));
    }

    /** How warm the board gets where the beam arrives, cut in the order of the file; takes up to a second the first time. */
    @Transactional(readOnly = true)
    public CutHeat heat(Order order, Said said) {
        return prints.heatOf(order, pace(order, Optional.of(said)));
    }

    private CutPace pace(Order order, Optional<Said> said) {
        return said.map(set -> prints.pace(order, set.machine(), set.parameters()))
                .orElse(CutPace.USUAL);
    }

    /**
     * Writes the file and puts it on record.
     *
     * @throws puzzleworkshop.measure.Refused when the order has no pattern that can be cut
     */
    @Transactional
    public PositionFiles.Written write(Order order, CutFile.Format format, String by) {
        Optional<Said> said = setting(order);
        CutPlan plan = prints.planOf(order, pace(order, said));
        Optional<SettingWords> words = said.map(set -> SettingWords.of(set.machine(), set.parameters()));
        byte[] bytes = words.map(of -> CutFile.write(plan, format, MachinePage.anywhere(of.words(), of.layer())))
                .orElseGet(() -> CutFile.write(plan, format))
                .bytes();
        GivenFile file = new GivenFile(
                0,
                Optional.of(order.id()),
                said.flatMap(Said::job).map(CutJob::id),
                Optional.empty(),
                Purpose.CUT,
                FileForm.of(format),
                CutFileName.of(order.number(), format.ending()),
                PositionFiles.digest(bytes),
                bytes.length,
                words.map(SettingWords::words).orElse("no setting: no machine was written down"),
                by,
                clock.instant());
        given.add(
                file,
                said.map(Said::parameters),
                said.map(set -> set.parameters().power()).orElse(Percent.ZERO));
        return new PositionFiles.Written(file, bytes);
    }
}
