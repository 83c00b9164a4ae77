package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;

/**
 * What a workshop of this kind usually keeps (common practice), put on an empty shelf with one press: names, units and
 * packs, nothing in stock and no price. Whether a film or tape holds PVC is left unknown, since only its data sheet says.
 */
class StartingList extends Div {

    private static final LaserFacts UNREAD = new LaserFacts(LaserFacts.Pvc.UNKNOWN, LaserFacts.Adhesive.DRY);
    private static final LaserFacts BESIDE = new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.NONE);

    private final transient Supplies supplies;

    StartingList(Supplies supplies, Formatter figures, Runnable changed) {
        this.supplies = supplies;
        addClassName("pw-stack");
        Button start = new Button(
                getTranslation("supplies.start"),
                event -> Feedback.unlessRefused(figures, "supplies.start.done", () -> {
                    items(figures.units()).forEach(supplies::keep);
                    changed.run();
                }));
        start.addThemeVariants(ButtonVariant.PRIMARY);
        start.setDisableOnClick(true);
        SmallText what = new SmallText(getTranslation("supplies.start.what"));
        add(start, what);
    }

    /** A4 (ISO 216), or Letter (ANSI Y14.1) where the house measures in inches. */
    private List<SupplyItem> items(UnitSystem units) {
        boolean inches = units == UnitSystem.INCHES;
        Optional<Length> across = Optional.of(inches ? Length.inches(8.5) : Length.mm(210));
        Optional<Length> down = Optional.of(inches ? Length.inches(11) : Length.mm(297));
        return List.of(
                item("paper", SupplyKind.STICKER_PAPER, UseUnit.SHEET, across, down, 100, UNREAD),
                item("laminate", SupplyKind.LAMINATE, UseUnit.METRE, Optional.of(Length.mm(330)), none(), 25, UNREAD),
                item("tape", SupplyKind.MASKING_TAPE, UseUnit.METRE, Optional.of(Length.mm(300)), none(), 50, UNREAD),
                item("ink", SupplyKind.INK, UseUnit.MILLILITRE, none(), none(), 70, BESIDE),
                item("box", SupplyKind.BOX, UseUnit.PIECE, none(), none(), 25, BESIDE),
                item("bag", SupplyKind.BAG, UseUnit.PIECE, none(), none(), 100, BESIDE),
                item("label", SupplyKind.LABEL, UseUnit.PIECE, none(), none(), 100, BESIDE),
                item("blade", SupplyKind.BLADE, UseUnit.PIECE, none(), none(), 10, BESIDE));
    }

    private static Optional<Length> none() {
        return Optional.empty();
    }

    private SupplyItem item(
            String key,
            SupplyKind kind,
            UseUnit unit,
            Optional<Length> width,
            Optional<Length> height,
            int inAPack,
            LaserFacts facts) {
        return new SupplyItem(
                Optional.empty(),
                getTranslation("supplies.start." + key),
                kind,
                unit,
                width,
                height,
                getTranslation("supplies.start." + key + ".pack"),
                BigDecimal.valueOf(inAPack),
                facts,
                SupplyDialog.USUAL_LEAD_DAYS,
                SupplyDialog.USUAL_SPARE_DAYS,
                true,
                false,
                BigDecimal.ZERO,
                Money.zero(supplies.currency()));
    }
}
