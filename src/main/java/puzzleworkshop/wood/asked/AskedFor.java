package puzzleworkshop.wood.asked;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** What the workshop is asked for: learned from its orders, corrected by its owner. */
@Service
public class AskedFor {

    /** All that the answers depend on. */
    private record Question(LocalDate day, String version, List<Size> usual, Length margin) {}

    private final AskedStore store;
    private final RackSettings rack;
    private final Workshop workshop;
    private final Clock clock;
    private final VersionedCache<Question, List<AskedBlank>> seen =
            VersionedCache.<Question, List<AskedBlank>>ofMost(2).restingOnTheQuestion();
    private final VersionedCache<Question, List<AskedSize>> known =
            VersionedCache.<Question, List<AskedSize>>ofMost(4).restingOnTheQuestion();
    private final VersionedCache<Question, Map<BoardKindAsked, List<AskedSize>>> knownByKind =
            VersionedCache.<Question, Map<BoardKindAsked, List<AskedSize>>>ofMost(4)
                    .restingOnTheQuestion();

    AskedFor(AskedStore store, RackSettings rack, Workshop workshop, Clock clock) {
        this.store = store;
        this.rack = rack;
        this.workshop = workshop;
        this.clock = clock;
    }

    private Question now() {
        return new Question(
                workshop.today(),
                store.version(),
                rack.standardBlanks(),
                workshop.tradeNumbers().holdDownMargin());
    }

    /** Another text as soon as anything that the answers depend on has changed. */
    @Transactional(readOnly = true)
    public String stamp() {
        return now().toString();
    }

    /** Every size seen or corrected, those asked for most first. */
    @Transactional(readOnly = true)
    public List<AskedSize> sizes() {
        Question now = now();
        return known.get(now, () -> {
            List<Demand.Blank> blanks =
                    seen(now).stream().map(AskedBlank::blank).toList();
            return corrected(Demand.learn(blanks, now.usual(), now.day()), store.corrections());
        });
    }

    private List<AskedBlank> seen(Question at) {
        return seen.get(at, () -> store.asked(at.day().minusWeeks(Demand.MOST_WEEKS), workshop.zone(), at.margin()));
    }

    /** Each kind of board that blanks were asked for on, with all its blanks together, those asked for most first. */
    @Transactional(readOnly = true)
    public List<KindAsked> kinds() {
        Question now = now();
        Map<BoardKindAsked, Double> corrections = store.kindCorrections();
        return byKind(now).entrySet().stream()
                .map(kind -> new KindAsked(
                        kind.getKey(),
                        together(kind.getValue(), now.day()),
                        corrections.containsKey(kind.getKey())
                                ? OptionalDouble.of(corrections.get(kind.getKey()))
                                : OptionalDouble.empty()))
                .sorted(Comparator.comparingDouble(KindAsked::perWeek).reversed())
                .toList();
    }

    /** The material's name. */
    @Transactional(readOnly = true)
    public String name(BoardKindAsked kind) {
        return rack.materials().stream()
                .filter(one -> one.id().equals(kind.material()))
                .map(Material::name)
                .findFirst()
                .orElse(kind.material());
    }

    private Map<BoardKindAsked, List<Demand.Blank>> byKind(Question at) {
        return seen(at).stream()
                .collect(Collectors.groupingBy(
                        AskedBlank::kind,
                        LinkedHashMap::new,
                        Collectors.mapping(AskedBlank::blank, Collectors.toList())));
    }

    private static Demand.Learned together(List<Demand.Blank> blanks, LocalDate today) {
        Size any = blanks.getFirst().size();
        List<Demand.Blank> alike =
                blanks.stream().map(blank -> new Demand.Blank(blank.day(), any)).toList();
        return Demand.learn(alike, List.of(), today).getFirst();
    }

    /**
     * The sizes asked for on one kind of board. What the owner expects of a size goes to the kinds as they had it, of a size never
     * seen as they had all blanks; what the owner expects of the kind as a whole goes to its sizes as they stand then.
     */
    @Transactional(readOnly = true)
    public List<AskedSize> sizes(BoardKindAsked kind) {
        return byKind().getOrDefault(kind, List.of());
    }

    /** The same for every kind of board that blanks were asked for on. */
    @Transactional(readOnly = true)
    public Map<BoardKindAsked, List<AskedSize>> byKind() {
        Question now = now();
        return knownByKind.get(now, () -> {
            Map<BoardKindAsked, List<Demand.Blank>> asked = byKind(now);
            Map<Size, Double> ofSizes = store.corrections();
            Map<BoardKindAsked, Double> ofKinds = store.kindCorrections();
            Map<BoardKindAsked, List<AskedSize>> kinds = new LinkedHashMap<>();
            asked.forEach((kind, here) ->
                    kinds.put(kind, whole(learned(here, asked, ofSizes, now.day()), ofKinds.get(kind))));
            return Collections.unmodifiableMap(kinds);
        });
    }

    private static List<AskedSize> whole(List<AskedSize> sizes, Double whole) {
        double all = sizes.stream().mapToDouble(AskedSize::perWeek).sum();
        return whole == null || all <= 0
                ? sizes
                : sizes.stream()
                        .map(size -> new AskedSize(size.learned(), OptionalDouble.of(size.perWeek() * whole / all)))
                        .toList();
    }

    private static List<AskedSize> learned(
            List<Demand.Blank> here,
            Map<BoardKindAsked, List<Demand.Blank>> kinds,
            Map<Size, Double> ofSizes,
            LocalDate today) {
        List<Demand.Blank> all = kinds.values().stream().flatMap(List::stream).toList();
        Map<Size, Double> corrections = new HashMap<>();
        ofSizes.forEach((size, rate) -> {
            double seen = count(all, size);
            double share = seen > 0 ? count(here, size) / seen : (double) here.size() / Math.max(1, all.size());
            corrections.put(size, rate * share);
        });
        return corrected(Demand.learn(here, List.of(), today), corrections);
    }

    private static double count(List<Demand.Blank> blanks, Size upright) {
        return blanks.stream()
                .filter(blank -> Demand.upright(blank.size()).equals(upright))
                .count();
    }

    private static List<AskedSize> corrected(List<Demand.Learned> learned, Map<Size, Double> corrections) {
        List<AskedSize> sizes = new ArrayList<>();
        for (Demand.Learned size : learned) {
            Double corrected = corrections.remove(size.size());
            sizes.add(new AskedSize(size, corrected == null ? OptionalDouble.empty() : OptionalDouble.of(corrected)));
        }
        corrections.forEach((size, rate) ->
                sizes.add(new AskedSize(Demand.Learned.evenly(size, 0, 0, 0, 0), OptionalDouble.of(rate))));
        sizes.sort(Comparator.comparingDouble(AskedSize::perWeek).reversed());
        return List.copyOf(sizes);
    }

    /** Equal as long as the same is asked for. */
    @Transactional(readOnly = true)
    public Object version() {
        return now();
    }

    /** How many blanks were asked for on each kind of board since the day. */
    @Transactional(readOnly = true)
    public Map<BoardKindAsked, Long> kindsSince(LocalDate since) {
        return seen(now()).stream()
                .filter(one -> !one.blank().day().isBefore(since))
                .collect(Collectors.groupingBy(AskedBlank::kind, Collectors.counting()));
    }

    /** Since the day, oldest first; at most two years back. */
    @Transactional(readOnly = true)
    public List<AskedBlank> since(LocalDate day) {
        return seen(now()).stream()
                .filter(one -> !one.blank().day().isBefore(day))
                .toList();
    }

    /**
     * The owner knows better.
     *
     * @param perWeek blanks a week, 0 to 1,000
     */
    @Transactional
    public void correct(Size size, double perWeek, String who) {
        requireRate(perWeek);
        store.correct(Demand.upright(size), perWeek, who, clock.instant());
    }

    /** What was learned counts again. */
    @Transactional
    public void uncorrect(Size size) {
        store.uncorrect(Demand.upright(size));
    }

    /**
     * The owner knows better how much is asked for on a kind of board in all.
     *
     * @param perWeek blanks a week, 0 to 1,000
     */
    @Transactional
    public void correct(BoardKindAsked kind, double perWeek, String who) {
        requireRate(perWeek);
        store.correct(kind, perWeek, who, clock.instant());
    }

    /** What was learned of the kind counts again. */
    @Transactional
    public void uncorrect(BoardKindAsked kind) {
        store.uncorrect(kind);
    }

    private static void requireRate(double perWeek) {
        if (!(perWeek >= 0 && perWeek <= 1000)) {
            throw new Refused("wood.asked.rate");
        }
    }
}
