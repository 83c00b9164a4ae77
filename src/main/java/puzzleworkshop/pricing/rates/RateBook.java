package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Rates, price rule and price list, each from a day on. Nothing is overwritten: a new figure is a new line, and what
 * held on any day can be asked again.
 */
@Service
public class RateBook {

    private static final int DAYS_KEPT = 60;

    private final RateStore store;
    private final HouseUnits house;
    private final Machines machines;
    private final Clock clock;
    private final AfterCommit afterCommit;
    /** Asked for with every price, and hardly ever changed: kept until they are. */
    private final VersionedCache<Held, List<HeldRate>> rates =
            VersionedCache.<Held, List<HeldRate>>ofMost(DAYS_KEPT).restingOn(RatesChanged.class);

    private final VersionedCache<Held, PriceRule> rules =
            VersionedCache.<Held, PriceRule>ofMost(DAYS_KEPT).restingOn(RatesChanged.class);
    private final VersionedCache<Held, List<ListPrice>> lists =
            VersionedCache.<Held, List<ListPrice>>ofMost(DAYS_KEPT).restingOn(RatesChanged.class);

    /** What is asked: what holds on a day, in a currency. */
    private record Held(LocalDate day, Currency currency) {}

    /** Told when a rate, a rule or a list was entered. */
    public record RatesChanged() implements Change {}

    RateBook(RateStore store, HouseUnits house, Machines machines, Clock clock, AfterCommit afterCommit) {
        this.afterCommit = afterCommit;
        this.store = store;
        this.house = house;
        this.machines = machines;
        this.clock = clock;
    }

    /** Before those who work out prices again. */
    @EventListener(RatesChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        rates.forget();
        rules.forget();
        lists.forget();
    }

    /** Today in the workshop's time zone. */
    public LocalDate today() {
        return house.today();
    }

    /** In which prices are said. */
    public Currency currency() {
        return house.currency();
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public RateSet on(LocalDate day) {
        Map<RateKind, HeldRate> held = new EnumMap<>(RateKind.class);
        rates.get(new Held(day, house.currency()), () -> store.ratesOn(day, house.currency()))
                .forEach(rate -> held.put(rate.kind(), rate));
        Optional<Machine> laser = machines.standard()
                .filter(machine -> machine.costs().price().isPositive()
                        && machine.costs().currency().equals(house.currency()));
        laser.ifPresent(machine -> RateKind.atTheMachine(machine.costs())
                .forEach((kind, value) -> held.put(kind, new HeldRate(kind, value, day, machine.name(), false))));
        return new RateSet(day, house.currency(), held, laser.map(Machine::costs));
    }

    /** Every entry of a figure, also those that hold from a later day; the starting value is not among them. */
    @Transactional(readOnly = true)
    public List<HeldRate> history(RateKind kind) {
        return store.history(kind);
    }

    /**
     * Enters a figure from a day on.
     *
     * @param note where it was taken from; may be empty
     * @throws Refused when the value lies outside the range of its kind
     */
    @Transactional
    public void set(RateKind kind, BigDecimal value, LocalDate from, String note, String who) {
        if (!kind.allows(value)) {
            throw new Refused("pricing.rate.out-of-range." + kind.form().name());
        }
        if (kind.isAtTheMachine()) {
            throw new Refused("pricing.rate.at-the-machine");
        }
        store.add(new HeldRate(kind, value, from, note.strip(), false), house.currency(), who, clock.instant());
        afterCommit.tell(new RatesChanged());
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public VatMode vatMode(LocalDate day) {
        return rule(day).vatMode();
    }

    /** How prices are made on a day. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public PriceRule rule(LocalDate day) {
        return rules.get(
                new Held(day, house.currency()),
                () -> store.ruleOn(day).orElseGet(() -> PriceRule.starting(house.currency())));
    }

    /** Enters a rule from its day on; one that says what holds on that day already is not entered again. */
    @Transactional
    public void set(PriceRule rule, String who) {
        if (rule.margin().isNegative() || rule.margin().compareTo(Percent.of(100)) >= 0) {
            throw new Refused("pricing.rule.margin-range");
        }
        if (rule.markup().isNegative() || rule.rush().isNegative()) {
            throw new Refused("pricing.rule.negative");
        }
        if (rule.method() == PriceRule.Method.MARGIN && rule.floorMargin().compareTo(rule.margin()) > 0) {
            throw new Refused("pricing.rule.floor-above-margin");
        }
        LocalDate from = rule.from();
        if (store.ruleOn(from).filter(held -> held.from(from).equals(rule)).isPresent()) {
            return;
        }
        store.add(rule, who, clock.instant());
        afterCommit.tell(new RatesChanged());
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<ListPrice> list(LocalDate day) {
        return lists.get(new Held(day, house.currency()), () -> store.listOn(day, house.currency()));
    }

    /** Enters a whole price list from a day on; the one that holds on that day already is not entered again. */
    @Transactional
    public void setList(LocalDate from, List<ListPrice> list, String who) {
        Set<List<Object>> seen = new HashSet<>();
        for (ListPrice line : list) {
            if (line.shorter().compareTo(line.longer()) > 0 || !line.shorter().isPositive()) {
                throw new Refused("pricing.list.sides");
            }
            if (!seen.add(List.of(line.longer(), line.shorter(), line.pieces()))) {
                throw new Refused("pricing.list.twice", line.size(), line.pieces());
            }
        }
        if (Set.copyOf(store.listOn(from, house.currency())).equals(Set.copyOf(list))) {
            return;
        }
        store.add(from, list, house.currency(), who, clock.instant());
        afterCommit.tell(new RatesChanged());
    }
}
