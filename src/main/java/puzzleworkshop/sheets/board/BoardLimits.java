package puzzleworkshop.sheets.board;

import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/** What a board can be: no larger than a machine's bed, of a known material, its numbers within reason. */
@Component
public class BoardLimits {

    public static final Length THINNEST = Length.mm(0.3);
    public static final Length THICKEST = Length.mm(50);
    public static final Length MOST_BOW = Length.mm(100);

    private final RackStore settings;
    private final Machines machines;

    BoardLimits(RackStore settings, Machines machines) {
        this.settings = settings;
        this.machines = machines;
    }

    /**
     * Every bed counts, since a long one and a square one take different boards. Without a machine, and where boards are sawn
     * before they come to it, the rack's own rule.
     */
    public void requireReached(Outline outline) {
        List<Size> beds = machines.inUse().stream().map(Machine::bed).toList();
        RackRules rules = settings.rules();
        if (beds.isEmpty() || rules.sawnFirst()) {
            outline.requireWithin(rules.largest(), "sheets.outline.toolarge");
        } else if (beds.stream().noneMatch(outline::isWithin)) {
            outline.requireWithin(
                    beds.stream().max(Comparator.comparing(Size::area)).get(), "sheets.outline.overbed");
        }
    }

    public void requireTrue(BoardFacts facts, Money cost) {
        if (cost.isNegative()) {
            throw new Refused("sheets.cost.negative");
        }
        requireWithin(facts.nominal(), THINNEST, THICKEST, "sheets.thickness.range");
        facts.measured().ifPresent(m -> requireWithin(m, THINNEST, THICKEST, "sheets.thickness.range"));
        requireWithin(facts.bow(), Length.ZERO, MOST_BOW, "sheets.bow.range");
        if (settings.materials().stream().noneMatch(m -> m.id().equals(facts.material()))) {
            throw new Refused("sheets.material.unknown", facts.material());
        }
    }

    private static void requireWithin(Length value, Length least, Length most, String key) {
        if (value.compareTo(least) < 0 || value.compareTo(most) > 0) {
            throw new Refused(key, least, most);
        }
    }
}
