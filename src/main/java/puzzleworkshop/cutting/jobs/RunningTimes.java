package puzzleworkshop.cutting.jobs;

import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.cutting.time.MachineRatio;
import puzzleworkshop.cutting.time.TimeRange;
import puzzleworkshop.geometry.path.CurvePath;

/** What cuts really take: estimates, corrected by how each machine's recorded cuts compare with theirs. */
@Service
public class RunningTimes {

    private final CutJobStore store;

    RunningTimes(CutJobStore store) {
        this.store = store;
    }

    /** How the machine's real running times compare with the estimates, by its latest recorded cuts. */
    @Transactional(readOnly = true)
    public MachineRatio ratio(long machineId) {
        return MachineRatio.of(store.ratios(machineId));
    }

    /** What a cut takes on the setting's machine, corrected by the machine's own ratio, set-up included. */
    @Transactional(readOnly = true)
    public TimeRange timeFor(List<CurvePath> paths, CutSetting setting) {
        return ratio(setting.machine().id()).applyTo(CutTime.estimate(paths, setting));
    }
}
