package puzzleworkshop.cutting.settings;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.VersionedCache;

/** What is dialled in for which board, and the trials that speak for it. */
@Service
public class Settings {

    private static final int STATES_KEPT = 200;

    /** All that a setting's state depends on. */
    private record Evidence(Machine machine, BoardKind board, List<Trial> trials, CutParameters parameters) {}

    private final SettingStore store;
    private final Machines machines;
    private final Photos photos;
    private final Bookings bookings;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    /** Each of the nine looks before a cut asks for it, and what it rests on grows with every cut. */
    private final VersionedCache<Evidence, SettingState> states =
            VersionedCache.<Evidence, SettingState>ofMost(STATES_KEPT).restingOnTheQuestion();

    private record Untried(Machine machine, BoardKind board) {}

    /** Where each board begins that was never tried: every price and plan asks for it. */
    private final VersionedCache<Untried, CutParameters> beginnings =
            VersionedCache.<Untried, CutParameters>ofMost(STATES_KEPT).restingOnTheQuestion();

    Settings(
            SettingStore store,
            Machines machines,
            Photos photos,
            Bookings bookings,
            ApplicationEventPublisher events,
            Clock clock) {
        this.bookings = bookings;
        this.store = store;
        this.machines = machines;
        this.photos = photos;
        this.events = events;
        this.clock = clock;
    }

    /**
     * The setting for a board: the stored one, or with what its trials begin (id 0, UNTRIED) when nothing was ever tried. A
     * setting that is not proven should be said before an order is promised: a trial is needed first.
     */
    @Transactional(readOnly = true)
    public CutSetting forBoard(Machine machine, BoardKind board) {
        return store.find(machine.id(), board)
                .map(row -> setting(machine, row))
                .orElseGet(() -> new CutSetting(0, machine, board, beginning(machine, board), SettingState.UNTRIED));
    }

    @Transactional(readOnly = true)
    public CutSetting forBoard(Machine machine, String material, String grade, Length thickness) {
        return forBoard(machine, new BoardKind(material, grade, thickness));
    }

    /** All boards that a machine has a setting for. */
    @Transactional(readOnly = true)
    public List<CutSetting> of(Machine machine) {
        return settings(store.ofMachine(machine.id()));
    }

    /** These settings by their ids; those that do not exist are left out. */
    @Transactional(readOnly = true)
    public Map<Long, CutSetting> find(List<Long> settingIds) {
        return settings(store.find(settingIds)).stream().collect(Collectors.toMap(CutSetting::id, Function.identity()));
    }

    private List<CutSetting> settings(List<SettingStore.Row> rows) {
        Map<Long, List<Trial>> trials =
                store.trials(rows.stream().map(SettingStore.Row::id).toList());
        return rows.stream()
                .map(row -> setting(
                        machines.find(row.machineId()).orElseThrow(), row, trials.getOrDefault(row.id(), List.of())))
                .toList();
    }

    @Transactional(readOnly = true)
    public Optional<CutSetting> find(long settingId) {
        return store.find(settingId)
                .map(row -> setting(machines.find(row.machineId()).orElseThrow(), row));
    }

    /** The trials of a setting, oldest first. */
    @Transactional(readOnly = true)
    public TrialEvidence evidence(CutSetting setting) {
        return new TrialEvidence(
                setting.machine(), setting.board(), setting.id() == 0 ? List.of() : store.trials(setting.id()));
    }

    /** What to try next and why; none when the setting is proven as it stands. */
    @Transactional(readOnly = true)
    public Optional<NextTry> nextTry(CutSetting setting) {
        return NextTry.after(setting.machine(), setting.board(), evidence(setting), setting.parameters());
    }

    /** Puts a kind of board on the machine's list, to be tried; returns its setting, new or known. */
    @Transactional
    public CutSetting add(Machine machine, BoardKind board) {
        store.lock(machine.id(), board);
        return forBoard(machine, board);
    }

    /** From now on this is dialled in for the board, whatever the trials say. */
    @Transactional
    public CutSetting choose(Machine machine, BoardKind board, CutParameters parameters, String by) {
        requireWithin(machine, parameters);
        long id = store.lock(machine.id(), board);
        store.choose(id, parameters, by, clock.instant());
        events.publishEvent(new SettingChanged(id));
        return find(id).orElseThrow();
    }

    /**
     * Writes a trial down. While the present choice is not proven, it moves to the best that the trials now speak for; a
     * doubtful one only to one that is proven.
     *
     * @param key a trial written down twice would count as two that agree
     * @param photo of the edge, if one was taken
     * @throws Refused when the machine cannot run these parameters, or the photo is not a picture we can keep
     */
    @Books
    @Transactional
    public Trial record(
            BookingKey key,
            Machine machine,
            BoardKind board,
            CutParameters parameters,
            Finding finding,
            Source source,
            String by,
            Optional<TrialPhoto> photo) {
        String said = "trial on machine %d: %s, %s, %s, %s".formatted(machine.id(), board, parameters, finding, source);
        return bookings.once(
                key,
                said,
                () -> recordNow(machine, board, parameters, finding, source, by, photo),
                Trial::id,
                id -> store.trials(store.lock(machine.id(), board)).stream()
                        .filter(trial -> trial.id() == id)
                        .findFirst()
                        .orElseThrow());
    }

    private Trial recordNow(
            Machine machine,
            BoardKind board,
            CutParameters parameters,
            Finding finding,
            Source source,
            String by,
            Optional<TrialPhoto> photo) {
        requireWithin(machine, parameters);
        Optional<TrialPhoto> kept =
                photo.map(picture -> new TrialPhoto(Photos.MEDIA_TYPE, photos.kept(picture.bytes())));
        long id = store.lock(machine.id(), board);
        SettingStore.Row row = store.find(id).orElseThrow();
        CutParameters before = parametersOf(machine, row, store.trials(id));
        long trialId = store.addTrial(id, parameters, finding, source, by, clock.instant());
        kept.ifPresent(picture -> store.addPhoto(trialId, picture));
        List<Trial> trials = store.trials(id);
        TrialEvidence evidence = new TrialEvidence(machine, board, trials);
        SettingState state = evidence.stateOf(before);
        CutParameters best = evidence.best(before);
        boolean better = state == SettingState.UNTRIED
                || state == SettingState.TRYING
                || state == SettingState.DOUBTFUL && evidence.stateOf(best) == SettingState.PROVEN;
        // what the first trial began with is kept too: from now on no rule of beginning decides it
        if (row.chosen().isEmpty() || better && !best.equals(before)) {
            store.choose(id, better ? best : before, by, clock.instant());
        }
        events.publishEvent(new SettingChanged(id));
        return trials.getLast();
    }

    @Transactional(readOnly = true)
    public Optional<TrialPhoto> photo(long trialId) {
        return store.photo(trialId);
    }

    private CutSetting setting(Machine machine, SettingStore.Row row) {
        return setting(machine, row, store.trials(row.id()));
    }

    private CutSetting setting(Machine machine, SettingStore.Row row, List<Trial> trials) {
        CutParameters parameters = parametersOf(machine, row, trials);
        SettingState state = states.get(
                new Evidence(machine, row.board(), trials, parameters),
                () -> new TrialEvidence(machine, row.board(), trials).stateOf(parameters));
        return new CutSetting(row.id(), machine, row.board(), parameters, state);
    }

    /** Trials without a choice were made when every board began with common practice, and proved that. */
    private CutParameters parametersOf(Machine machine, SettingStore.Row row, List<Trial> trials) {
        return row.chosen()
                .orElseGet(() -> trials.isEmpty()
                        ? beginning(machine, row.board())
                        : CommonPractice.parametersFor(machine, row.board()));
    }

    /** The files, times and prices of a board say what its first trial says, not another speed beside it. */
    private CutParameters beginning(Machine machine, BoardKind board) {
        return beginnings.get(new Untried(machine, board), () -> NextTry.first(machine, board));
    }

    private static void requireWithin(Machine machine, CutParameters parameters) {
        if (parameters.speed().compareTo(machine.motion().maxCut()) > 0) {
            throw new Refused(
                    "cutting.setting.too.fast",
                    parameters.speed(),
                    machine.name(),
                    machine.motion().maxCut());
        }
    }
}
