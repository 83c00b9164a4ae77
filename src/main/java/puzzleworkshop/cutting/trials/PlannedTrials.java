package puzzleworkshop.cutting.trials;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutMoved;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.SettingChanged;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.runtime.AfterCommit;

/**
 * Trials that confirmed orders wait for. One is planned when an order is confirmed on settings that are not proven; it is
 * closed when they are proven, when the order has been cut through, or when the order no longer needs it.
 */
@Service
public class PlannedTrials {

    /** Setting the gap, a few short lines in waste of the same board, looking at the edge; common practice. */
    public static final Minutes TAKES = Minutes.of(15);

    /** Why one was closed. */
    enum Closed {
        PROVEN,
        CUT,
        GIVEN_UP
    }

    private final PlannedTrialStore store;
    private final Settings settings;
    private final AfterCommit afterCommit;
    private final Clock clock;

    PlannedTrials(PlannedTrialStore store, Settings settings, AfterCommit afterCommit, Clock clock) {
        this.store = store;
        this.settings = settings;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** Plans a trial for an order, unless the settings for its board are proven or one is planned already. */
    @Transactional
    public Optional<PlannedTrial> planFor(OrderId order, String label, Machine machine, BoardKind board, String by) {
        CutSetting setting = settings.add(machine, board);
        if (setting.isProven()) {
            return Optional.empty();
        }
        if (store.insert(setting.id(), order, label, by, clock.instant())) {
            afterCommit.tell(new TrialsPlanned());
        }
        return openFor(order);
    }

    /** All that are still to be made, the oldest first; one for each setting, whatever the number of orders on it. */
    @Transactional(readOnly = true)
    public List<PlannedTrial> open() {
        return bySetting(store.open());
    }

    private List<PlannedTrial> bySetting(List<PlannedTrialStore.Row> rows) {
        Map<Long, List<PlannedTrialStore.Row>> bySetting = new LinkedHashMap<>();
        rows.forEach(row -> bySetting
                .computeIfAbsent(row.settingId(), setting -> new ArrayList<>())
                .add(row));
        return bySetting.values().stream().map(this::told).toList();
    }

    @Transactional(readOnly = true)
    public Optional<PlannedTrial> openFor(OrderId order) {
        return store.openFor(order).map(row -> told(store.openOf(row.settingId())));
    }

    /** What each order's trial takes of hands and laser; orders on the same setting need it once, the oldest carries it. */
    @Transactional(readOnly = true)
    public Map<OrderId, Minutes> minutesByOrder() {
        Set<Long> carried = new HashSet<>();
        Map<OrderId, Minutes> minutes = new HashMap<>();
        for (PlannedTrialStore.Row row : store.open()) {
            if (carried.add(row.settingId())) {
                minutes.put(row.order(), TAKES);
            }
        }
        return minutes;
    }

    /** The order no longer needs its trial: it was given up, or is to be cut from another board. */
    @Transactional
    public void dropFor(OrderId order) {
        close(store.openFor(order).stream().toList(), Closed.GIVEN_UP);
    }

    @EventListener
    void changed(SettingChanged event) {
        if (settings.find(event.settingId()).orElseThrow().isProven()) {
            close(store.openOf(event.settingId()), Closed.PROVEN);
        }
    }

    /** A cut without its time has no result: whoever was there has said that it was cut. */
    @EventListener
    void cut(CutMoved event) {
        if (event.job().order().isPresent()
                && event.job().state() == CutJob.State.DONE
                && event.job().result().orElse(Result.THROUGH) == Result.THROUGH) {
            close(store.openFor(event.job().order().get()).stream().toList(), Closed.CUT);
        }
    }

    private void close(List<PlannedTrialStore.Row> rows, Closed how) {
        rows.forEach(row -> store.close(row.id(), how, clock.instant()));
        if (!rows.isEmpty()) {
            afterCommit.tell(new TrialsPlanned());
        }
    }

    /** @param rows of one setting, the oldest first */
    private PlannedTrial told(List<PlannedTrialStore.Row> rows) {
        PlannedTrialStore.Row first = rows.getFirst();
        CutSetting setting = settings.find(first.settingId()).orElseThrow();
        return new PlannedTrial(
                first.id(),
                setting,
                rows.stream().map(PlannedTrialStore.Row::order).toList(),
                rows.stream().map(PlannedTrialStore.Row::label).toList(),
                first.planned(),
                settings.nextTry(setting));
    }
}
