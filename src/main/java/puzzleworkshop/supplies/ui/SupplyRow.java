package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.supplies.Restock;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.workshop.SignedIn;

/** One supply on the shelf: stock as a bar against the point at which to buy again, and what can be booked. */
class SupplyRow extends Div {

    private static final int FULL = 100;

    SupplyRow(
            Restock restock,
            Supplies supplies,
            StockCounts counts,
            Formatter figures,
            SignedIn signedIn,
            Runnable changed) {
        SupplyItem item = restock.item();
        addClassName("supplies-row");
        Still what = new Still(Markup.div(
                "supplies-what",
                Markup.span("supplies-name", item.name()),
                Markup.span(
                        "pw-small",
                        getTranslation(item.kind().textKey())
                                + (item.usual() ? " · " + getTranslation("supplies.usual") : "") + " · "
                                + item.purchaseUnit())));
        add(
                what,
                stock(restock, figures),
                verdict(restock, figures),
                buttons(item, supplies, counts, figures, signedIn, changed));
        item.forbiddenAtLaser().ifPresent(why -> {
            Paragraph note = new Paragraph(figures.say(why));
            note.addClassNames("pw-note", "supplies-forbidden");
            note.getElement().setAttribute("data-kind", "bad");
            add(note);
        });
    }

    private Still stock(Restock restock, Formatter figures) {
        SupplyItem item = restock.item();
        Markup number = Markup.div(
                "pw-number",
                Markup.span(figures.number(item.stock().doubleValue(), 2) + " "),
                Markup.span("pw-unit", getTranslation(item.useUnit().textKey())));
        String days = restock.isTooEarly()
                ? figures.text(
                        "supplies.too-early.why", restock.used().doubleValue(), restock.days(), Restock.LEAST_DAYS)
                : restock.daysLeft()
                        .map(left -> getTranslation("supplies.days-left", left))
                        .orElse("");
        String byUse = restock.pointByUse().signum() > 0
                ? figures.text(
                        "supplies.reorder.rule",
                        restock.used().doubleValue(),
                        restock.days(),
                        restock.usePerDay().doubleValue(),
                        item.leadDays(),
                        item.spareDays(),
                        restock.pointByUse().doubleValue())
                : "";
        String rule = item.ownPoint()
                .map(point -> figures.text(
                                byUse.isEmpty() ? "supplies.reorder.own" : "supplies.reorder.own.beside",
                                point.doubleValue())
                        + byUse)
                .orElse(byUse);
        String cost = item.unitCost().isPositive()
                ? figures.text(
                        "supplies.unit-cost",
                        item.unitCost(),
                        getTranslation(item.useUnit().oneKey()))
                : "";
        Markup words = Markup.span(
                "pw-small",
                Stream.of(days, rule, cost).filter(text -> !text.isEmpty()).collect(Collectors.joining(" · ")));
        return new Still(Markup.div(
                "supplies-stock",
                restock.reorderPoint().signum() > 0 ? List.of(number, bar(restock), words) : List.of(number, words)));
    }

    /** The whole bar is three times the reorder point, so that its mark always stands at a third. */
    private static Markup bar(Restock restock) {
        BigDecimal whole = restock.reorderPoint().multiply(BigDecimal.valueOf(3));
        double share = restock.item().stock().doubleValue() / whole.doubleValue();
        Markup filled = Markup.div("").with("style", "width: " + Math.clamp(share * FULL, 0, FULL) + "%");
        return Markup.div("supplies-bar", filled).with("aria-hidden", "true");
    }

    private Verdict verdict(Restock restock, Formatter figures) {
        if (restock.item().stock().signum() < 0) {
            return new Verdict(Verdict.Kind.BAD, getTranslation("supplies.verdict.owed"));
        }
        if (restock.item().stock().signum() == 0) {
            return new Verdict(
                    restock.isDue() ? Verdict.Kind.BAD : Verdict.Kind.WAIT,
                    getTranslation(restock.isDue() ? "supplies.verdict.out" : "supplies.verdict.none-yet"));
        }
        if (restock.isTooEarly() && !restock.isDue()) {
            return new Verdict(Verdict.Kind.WAIT, getTranslation("supplies.verdict.too-early"));
        }
        return restock.isDue()
                ? new Verdict(Verdict.Kind.WARN, getTranslation("supplies.verdict.buy"))
                : new Verdict(Verdict.Kind.GOOD, getTranslation("supplies.verdict.enough"));
    }

    private Div buttons(
            SupplyItem item,
            Supplies supplies,
            StockCounts counts,
            Formatter figures,
            SignedIn signedIn,
            Runnable changed) {
        Div buttons = new Div();
        buttons.addClassName("supplies-buttons");
        for (MovementDialog.What what : MovementDialog.What.values()) {
            if (what.isMoney() && signedIn.isMaker()) {
                continue;
            }
            Button button = new Button(
                    getTranslation(what.textKey()),
                    event -> new MovementDialog(item, what, supplies, counts, figures, signedIn, changed).open());
            button.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
            button.setAriaLabel(getTranslation(what.textKey()) + ": " + item.name());
            buttons.add(button);
        }
        Button open = new Button(
                getTranslation("supplies.open"),
                event -> new LedgerDialog(item, supplies, figures, !signedIn.isMaker(), changed).open());
        open.addThemeVariants(ButtonVariant.SMALL);
        open.setAriaLabel(getTranslation("supplies.open") + ": " + item.name());
        buttons.add(open);
        return buttons;
    }
}
