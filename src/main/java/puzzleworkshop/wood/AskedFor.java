package puzzleworkshop.wood;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
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
        List<Demand.Blank> blanks = store.asked(today.minusWeeks(Demand.MOST_WEEKS), workshop.zone()).stream()
                .map(WoodStore.Asked::blank)
                .toList();
        List<Demand.Learned> learned = Demand.learn(blanks, rack.standardBlanks(), today);
        Map<Size, Double> corrections = store.corrections();
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
