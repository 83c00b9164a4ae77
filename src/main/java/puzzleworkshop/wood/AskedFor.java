package puzzleworkshop.wood;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** What the workshop is asked for: learned from its orders, corrected by its owner. */
@Service
public class AskedFor {

    private record Question(LocalDate day, String version) {}

    private final WoodStore store;
    private final RackSettings rack;
    private final Workshop workshop;
    private final Clock clock;
    private final VersionedCache<Question, List<AskedSize>> known = VersionedCache.ofMost(4);

    AskedFor(WoodStore store, RackSettings rack, Workshop workshop, Clock clock) {
        this.store = store;
        this.rack = rack;
        this.workshop = workshop;
        this.clock = clock;
    }

    /** Every size seen or corrected, those asked for most first. */
    @Transactional(readOnly = true)
    public List<AskedSize> sizes() {
        return known.get(new Question(workshop.today(), store.version()), this::learned);
    }

    private List<AskedSize> learned() {
        LocalDate today = workshop.today();
        List<Demand.Blank> blanks =
                seenSince(today).stream().map(WoodStore.Asked::blank).toList();
        return corrected(Demand.learn(blanks, rack.standardBlanks(), today), store.corrections());
    }

    private List<WoodStore.Asked> seenSince(LocalDate today) {
        return store.asked(today.minusWeeks(Demand.MOST_WEEKS), workshop.zone());
    }

    /** Each kind of board that blanks were asked for on, with all its blanks together, those asked for most first. */
    @Transactional(readOnly = true)
    public List<KindAsked> kinds() {
        LocalDate today = workshop.today();
        return byKind(today).entrySet().stream()
                .map(kind -> new KindAsked(kind.getKey(), together(kind.getValue(), today)))
                .sorted(Comparator.comparingDouble(
                                (KindAsked kind) -> kind.learned().perWeek())
                        .reversed())
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

    private Map<BoardKindAsked, List<Demand.Blank>> byKind(LocalDate today) {
        return seenSince(today).stream()
                .collect(Collectors.groupingBy(
                        WoodStore.Asked::kind,
                        LinkedHashMap::new,
                        Collectors.mapping(WoodStore.Asked::blank, Collectors.toList())));
    }

    private static Demand.Learned together(List<Demand.Blank> blanks, LocalDate today) {
        Size any = blanks.getFirst().size();
        List<Demand.Blank> alike =
                blanks.stream().map(blank -> new Demand.Blank(blank.day(), any)).toList();
        return Demand.learn(alike, List.of(), today).getFirst();
    }

    /**
     * The sizes asked for on one kind of board. What the owner expects of a size goes to the kinds as they had it, of a size never
     * seen as they had all blanks.
     */
    List<AskedSize> sizes(BoardKindAsked kind) {
        LocalDate today = workshop.today();
        Map<BoardKindAsked, List<Demand.Blank>> kinds = byKind(today);
        List<Demand.Blank> here = kinds.getOrDefault(kind, List.of());
        List<Demand.Blank> all = kinds.values().stream().flatMap(List::stream).toList();
        Map<Size, Double> corrections = new HashMap<>();
        store.corrections().forEach((size, rate) -> {
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
                sizes.add(new AskedSize(new Demand.Learned(size, 0, 0, 0, 0, false), OptionalDouble.of(rate))));
        sizes.sort(Comparator.comparingDouble(AskedSize::perWeek).reversed());
        return List.copyOf(sizes);
    }

    /** How many blanks were seen in all; with few, nothing is learned from them yet. */
    int seen(List<AskedSize> sizes) {
        return sizes.stream().mapToInt(size -> size.learned().seen()).sum();
    }

    String version() {
        return store.version();
    }

    /**
     * The owner knows better.
     *
     * @param perWeek blanks a week, 0 to 1,000
     */
    @Transactional
    public void correct(Size size, double perWeek, String who) {
        if (!(perWeek >= 0 && perWeek <= 1000)) {
            throw new Refused("wood.asked.rate");
        }
        store.correct(Demand.upright(size), perWeek, who, clock.instant());
    }

    /** What was learned counts again. */
    @Transactional
    public void uncorrect(Size size) {
        store.uncorrect(Demand.upright(size));
    }
}
