package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.HasValidation;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Restock;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;

/** A new supply, or the facts of a known one. */
class SupplyDialog extends Dialog {

    /** The size that most sheets have (ISO 216). */
    private static final Size A4 = Size.mm(210, 297);

    static final int USUAL_LEAD_DAYS = 7;
    static final int USUAL_SPARE_DAYS = 5;

    /** As many as the ledger holds. */
    static final int QUANTITY_DIGITS = 6;

    private final Optional<SupplyItem> before;
    private final TextField name = new TextField();
    private final Select<SupplyKind> kind = new Select<>();
    private final Select<UseUnit> useUnit = new Select<>();
    private final LengthField width;
    private final LengthField height;
    private final TextField purchaseUnit = new TextField();
    private final AmountField usePerPurchase =
            new AmountField(getTranslation("supplies.use-per-purchase.label"), QUANTITY_DIGITS);
    private final Select<LaserFacts.Pvc> pvc = new Select<>();
    private final Select<LaserFacts.Adhesive> adhesive = new Select<>();
    private final IntegerField leadDays = new IntegerField();
    private final IntegerField spareDays = new IntegerField();
    private final AmountField ownPoint = new AmountField(getTranslation("supplies.own-point"), QUANTITY_DIGITS);
    private final Checkbox usual = new Checkbox();
    private final Checkbox retired = new Checkbox();
    private final AmountField bought = new AmountField(getTranslation("supplies.first-purchase"), QUANTITY_DIGITS);
    private final AmountField paid;

    SupplyDialog(SupplyItem item, Supplies supplies, Formatter figures, String who, Runnable changed) {
        this.before = Optional.ofNullable(item);
        this.paid = AmountField.money(
                getTranslation("supplies.first-paid", supplies.currency().getCurrencyCode()), supplies.currency());
        this.width = new LengthField(getTranslation("supplies.width"), figures.units());
        this.height = new LengthField(getTranslation("supplies.height"), figures.units());
        setHeaderTitle(getTranslation(item == null ? "supplies.new" : "supplies.change"));
        setWidth("min(40rem, 96vw)");
        Note caution = new Note(Note.Kind.WARN, getTranslation("supplies.caution"));
        add(form(supplies), caution);
        fill();
        kind.addValueChangeListener(event -> {
            if (event.isFromClient() && before.isEmpty()) {
                useUnit.setValue(usualUnit(event.getValue()));
                proposeSize();
            }
            showWhatCounts();
        });
        useUnit.addValueChangeListener(event -> showWhatCounts());
        showWhatCounts();
        BookingKey key = BookingKey.fresh();
        BookButton save = new BookButton(getTranslation("supplies.save"), () -> {
            boolean kept =
                    isComplete() && Feedback.unlessRefused(figures, "supplies.saved", () -> keep(supplies, key, who));
            if (kept) {
                close();
                changed.run();
            }
            return kept;
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("supplies.cancel"), event -> close()), save);
    }

    private FormLayout form(Supplies supplies) {
        FormLayout form = new FormLayout();
        form.setAutoResponsive(true);
        form.setAutoRows(true);
        form.setExpandColumns(true);
        form.setExpandFields(true);
        name.setRequiredIndicatorVisible(true);
        purchaseUnit.setRequiredIndicatorVisible(true);
        name.setLabel(getTranslation("supplies.name"));
        purchaseUnit.setLabel(getTranslation("supplies.purchase-unit"));
        purchaseUnit.setPlaceholder(getTranslation("supplies.purchase-unit.example"));
        leadDays.setLabel(getTranslation("supplies.lead-days"));
        spareDays.setLabel(getTranslation("supplies.spare-days"));
        ownPoint.setHelperText(getTranslation("supplies.own-point.why", Restock.LEAST_DAYS));
        for (IntegerField days : List.of(leadDays, spareDays)) {
            days.setMin(0);
            days.setMax(365);
        }
        usual.setLabel(getTranslation("supplies.usual.label"));
        retired.setLabel(getTranslation("supplies.retired.label"));
        choice(kind, "supplies.kind", SupplyKind.values(), SupplyKind::textKey);
        choice(useUnit, "supplies.use-unit", UseUnit.values(), UseUnit::textKey);
        choice(pvc, "supplies.pvc", LaserFacts.Pvc.values(), LaserFacts.Pvc::textKey);
        choice(adhesive, "supplies.adhesive", LaserFacts.Adhesive.values(), LaserFacts.Adhesive::textKey);
        form.add(
                name,
                kind,
                useUnit,
                width,
                height,
                purchaseUnit,
                usePerPurchase,
                pvc,
                adhesive,
                leadDays,
                spareDays,
                ownPoint,
                usual,
                retired);
        if (before.isEmpty()) {
            form.add(bought, paid);
        }
        return form;
    }

    private void fill() {
        name.setValue(before.map(SupplyItem::name).orElse(""));
        kind.setValue(before.map(SupplyItem::kind).orElse(SupplyKind.STICKER_PAPER));
        useUnit.setValue(before.map(SupplyItem::useUnit).orElse(UseUnit.SHEET));
        if (before.isPresent()) {
            before.flatMap(SupplyItem::width).ifPresent(width::setValue);
            before.flatMap(SupplyItem::height).ifPresent(height::setValue);
        } else {
            width.setValue(A4.width());
            height.setValue(A4.height());
        }
        purchaseUnit.setValue(before.map(SupplyItem::purchaseUnit).orElse(""));
        BigDecimal per = before.map(SupplyItem::usePerPurchase).orElse(BigDecimal.ONE);
        usePerPurchase.show(per);
        pvc.setValue(before.map(item -> item.facts().pvc()).orElse(LaserFacts.Pvc.UNKNOWN));
        adhesive.setValue(before.map(item -> item.facts().adhesive()).orElse(LaserFacts.Adhesive.DRY));
        leadDays.setValue(before.map(SupplyItem::leadDays).orElse(USUAL_LEAD_DAYS));
        spareDays.setValue(before.map(SupplyItem::spareDays).orElse(USUAL_SPARE_DAYS));
        before.flatMap(SupplyItem::ownPoint).ifPresent(ownPoint::show);
        usual.setValue(before.map(SupplyItem::usual).orElse(true));
        retired.setValue(before.map(SupplyItem::retired).orElse(false));
        retired.setVisible(before.isPresent());
    }

    /** A sheet begins as A4; how wide a roll is stands on the roll, so nothing is proposed for it. */
    private void proposeSize() {
        boolean untouched = A4.width().equals(width.getValue()) && A4.height().equals(height.getValue());
        if (useUnit.getValue() == UseUnit.METRE && untouched) {
            width.clear();
        } else if (useUnit.getValue() == UseUnit.SHEET && width.getValue() == null) {
            width.setValue(A4.width());
        }
    }

    private void showWhatCounts() {
        boolean sized = useUnit.getValue() == UseUnit.SHEET || useUnit.getValue() == UseUnit.METRE;
        width.setVisible(sized);
        height.setVisible(useUnit.getValue() == UseUnit.SHEET);
        pvc.setVisible(kind.getValue().isUnderLaser());
        adhesive.setVisible(kind.getValue().isUnderLaser());
    }

    /** By what most of a kind is used up; whoever knows better chooses another. */
    private static UseUnit usualUnit(SupplyKind kind) {
        return switch (kind) {
            case STICKER_PAPER -> UseUnit.SHEET;
            case LAMINATE, MASKING_TAPE -> UseUnit.METRE;
            case INK -> UseUnit.MILLILITRE;
            default -> UseUnit.PIECE;
        };
    }

    /** A new supply with what was bought of it at once. */
    private void keep(Supplies supplies, BookingKey key, String who) {
        SupplyItem kept = supplies.keep(typed(supplies));
        if (bought.getValue() != null) {
            supplies.buy(
                    key,
                    kept.id().orElseThrow(),
                    bought.getValue(),
                    Money.of(paid.getValue(), supplies.currency()),
                    "",
                    who);
        }
    }

    private boolean isComplete() {
        boolean complete = given(name, !name.getValue().isBlank(), "supplies.name-missing.name")
                & given(purchaseUnit, !purchaseUnit.getValue().isBlank(), "supplies.name-missing.unit")
                & usePerPurchase.isFilled()
                & bought.isFit()
                & paid.isFit()
                & ownPoint.isFit();
        if (!usePerPurchase.isInvalid()) {
            complete &= given(usePerPurchase, usePerPurchase.getValue().signum() > 0, "supplies.use-per-purchase");
        }
        if (!bought.isInvalid() && !paid.isInvalid()) {
            boolean whole = (bought.getValue() == null) == (paid.getValue() == null)
                    && (bought.getValue() == null || bought.getValue().signum() > 0);
            complete &= given(bought, whole, "supplies.first-purchase.missing");
        }
        if (useUnit.getValue() == UseUnit.SHEET) {
            for (LengthField side : List.of(width, height)) {
                boolean there = side.getValue() != null && side.getValue().isPositive();
                side.setErrorMessage(there ? "" : getTranslation("supplies.sheet-without-size"));
                side.setInvalid(!there);
                complete &= there;
            }
        }
        if (useUnit.getValue() == UseUnit.METRE) {
            boolean readable = width.getValue() != null || width.typed().isBlank();
            width.setErrorMessage(readable ? "" : getTranslation("supplies.width-unreadable"));
            width.setInvalid(!readable);
            complete &= readable;
        }
        for (IntegerField days : List.of(leadDays, spareDays)) {
            boolean fits = days.getValue() != null && days.getValue() >= 0 && days.getValue() <= 365;
            days.setInvalid(!fits);
            complete &= fits;
        }
        return complete;
    }

    /** Says beside the field what is missing there. */
    private boolean given(HasValidation field, boolean there, String sentence) {
        field.setErrorMessage(there ? "" : getTranslation(sentence));
        field.setInvalid(!there);
        return there;
    }

    private SupplyItem typed(Supplies supplies) {
        LaserFacts facts = kind.getValue().isUnderLaser()
                ? new LaserFacts(pvc.getValue(), adhesive.getValue())
                : new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.NONE);
        return new SupplyItem(
                before.flatMap(SupplyItem::id),
                name.getValue(),
                kind.getValue(),
                useUnit.getValue(),
                sized(width),
                sized(height),
                purchaseUnit.getValue(),
                usePerPurchase.getValue(),
                facts,
                leadDays.getValue(),
                spareDays.getValue(),
                Optional.ofNullable(ownPoint.getValue()),
                usual.getValue(),
                retired.getValue(),
                before.map(SupplyItem::stock).orElse(BigDecimal.ZERO),
                before.map(SupplyItem::unitCost).orElse(Money.zero(supplies.currency())));
    }

    private static Optional<Length> sized(LengthField field) {
        return field.isVisible() ? Optional.ofNullable(field.getValue()).filter(Length::isPositive) : Optional.empty();
    }

    private <T> void choice(Select<T> select, String key, T[] values, Function<T, String> textKey) {
        select.setLabel(getTranslation(key));
        select.setItems(List.of(values));
        select.setItemLabelGenerator(item -> getTranslation(textKey.apply(item)));
    }
}
