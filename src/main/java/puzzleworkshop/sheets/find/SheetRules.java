package puzzleworkshop.sheets.find;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.CutStore;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** Which boards may be used for a wish, and the rule that speaks against one. */
@Component
class SheetRules {

    private final RackSettings rack;
    private final CutStore cuts;
    private final Workshop workshop;

    SheetRules(RackSettings rack, CutStore cuts, Workshop workshop) {
        this.rack = rack;
        this.cuts = cuts;
        this.workshop = workshop;
    }

    /** The rule, if any, by which a sheet may not be used for the wish. */
    Optional<Sentence> against(Sheet sheet, BlankWish wish) {
        BoardFacts facts = sheet.facts();
        if (sheet.state() == SheetState.RESERVED) {
            return Optional.of(Sentence.of(
                    "sheets.whynot.reserved",
                    cuts.holder(sheet.id()).map(OrderRef::number).orElse("?")));
        }
        if (sheet.state() != SheetState.FREE) {
            return Optional.of(Sentence.of("sheets.whynot.gone"));
        }
        if (!facts.past().isFitForCutting()) {
            return Optional.of(Sentence.of("sheets.whynot.past." + facts.past().name()));
        }
        if (!wish.allowsMaterial(facts.material())) {
            return Optional.of(
                    Sentence.of("sheets.whynot.material", named(Set.of(facts.material())), named(wish.materials())));
        }
        if (!wish.allowsGrade(facts.grade())) {
            return Optional.of(Sentence.of(
                    "sheets.whynot.grade",
                    Sentence.of("sheets.grade." + facts.grade().name())));
        }
        if (!wish.allowsThickness(facts.thickness(), rack.rules().thicknessSlack())) {
            return Optional.of(Sentence.of("sheets.whynot.thickness", facts.thickness(), wish.thickness()));
        }
        if (facts.bow().compareTo(wish.mostBow()) > 0) {
            return Optional.of(Sentence.of("sheets.whynot.bow", facts.bow(), wish.mostBow()));
        }
        return Optional.empty();
    }

    private String named(Set<String> materials) {
        return rack.materials().stream()
                .filter(material -> materials.contains(material.id()))
                .map(Material::name)
                .collect(Collectors.joining(", "));
    }

    /** Whether a board on offer would do, in the currency in which the workshop buys. */
    boolean meets(BoardOffer offer, BlankWish wish) {
        return offer.price().currency().equals(workshop.currency())
                && wish.allows(
                        offer.material(),
                        offer.grade(),
                        offer.thickness(),
                        rack.rules().thicknessSlack());
    }
}
