package puzzleworkshop.sheets.board;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.workshop.Workshop;

/** What is set for the whole rack: materials, boards to buy, rules, standard blanks. */
@Service
@Transactional
public class RackSettings {

    private final RackStore store;
    private final Workshop workshop;
    private final AfterCommit afterCommit;
    private final VersionedCache<Class<RackRules>, RackRules> known =
            VersionedCache.<Class<RackRules>, RackRules>ofMost(1).restingOn(RulesChanged.class);
    private final VersionedCache<Class<Material>, List<Material>> materials =
            VersionedCache.<Class<Material>, List<Material>>ofMost(1).restingOn(RulesChanged.class);
    private final VersionedCache<Class<BoardOffer>, List<BoardOffer>> offers =
            VersionedCache.<Class<BoardOffer>, List<BoardOffer>>ofMost(1).restingOn(RulesChanged.class);
    private final VersionedCache<Class<Size>, List<Size>> blanks =
            VersionedCache.<Class<Size>, List<Size>>ofMost(1).restingOn(RulesChanged.class);

    RackSettings(RackStore store, Workshop workshop, AfterCommit afterCommit) {
        this.store = store;
        this.workshop = workshop;
        this.afterCommit = afterCommit;
    }

    /** Told when something of this was changed. */
    public record RulesChanged() implements Change {}

    /** The useful sizes by which what is left of a sheet is valued. */
    @Transactional(readOnly = true)
    public UsefulSizes sizes() {
        return new UsefulSizes(workshop.tradeNumbers().smallestUseful(), standardBlanks());
    }

    /** By name. Every board's name is made with them: kept until one is added. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<Material> materials() {
        return materials.get(Material.class, store::materials);
    }

    /** A board as it was kept, with the id of its material in front, in the words of today. Other words stay as they are. */
    public String inWords(String board) {
        return materials().stream()
                .filter(material -> board.startsWith(material.id() + ","))
                .map(material -> material.name() + board.substring(material.id().length()))
                .findFirst()
                .orElse(board);
    }

    /** Adds a material; its id is made from its name. */
    public Material addMaterial(String name, double densityKgM3) {
        String id = name.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
        if (id.isEmpty()) {
            throw new Refused("sheets.material.name");
        }
        if (densityKgM3 < 50 || densityKgM3 > 1500) {
            throw new Refused("sheets.material.density");
        }
        Material material = new Material(id, name.strip(), densityKgM3);
        store.save(material);
        afterCommit.tell(new RulesChanged());
        return material;
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<BoardOffer> offers() {
        return offers.get(BoardOffer.class, store::offers);
    }

    /** One of them, also when it is not offered any more. */
    @Transactional(readOnly = true)
    public Optional<BoardOffer> offer(long id) {
        return store.offer(id);
    }

    /** Adds (id 0) or changes a board that can be bought. */
    public void save(BoardOffer offer) {
        if (offer.name().isBlank()) {
            throw new Refused("sheets.offer.name");
        }
        if (offer.price().isNegative()) {
            throw new Refused("sheets.cost.negative");
        }
        store.save(offer);
        afterCommit.tell(new RulesChanged());
    }

    /** Asked for with every board that is looked at: kept until they are changed. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public RackRules rules() {
        return known.get(RackRules.class, store::rules);
    }

    public void save(RackRules rules) {
        store.save(rules);
        afterCommit.tell(new RulesChanged());
    }

    /** Before those who look at the rack again. */
    @EventListener(RulesChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    @Transactional(propagation = Propagation.SUPPORTS)
    void forget() {
        known.forget();
        materials.forget();
        offers.forget();
        blanks.forget();
    }

    /** Blanks, not finished sizes, by area. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<Size> standardBlanks() {
        return blanks.get(Size.class, store::standardBlanks);
    }

    public void saveStandardBlanks(List<Size> blanks) {
        store.saveStandardBlanks(blanks);
        afterCommit.tell(new RulesChanged());
    }
}
