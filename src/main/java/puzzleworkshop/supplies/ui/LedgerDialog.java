package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.grid.ColumnTextAlign;
import com.vaadin.flow.component.grid.Grid;
import com.vaadin.flow.component.grid.GridVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;

/** One supply opened: its facts, what was paid when, and its ledger, newest first. */
class LedgerDialog extends Dialog {

    private static final int PRICES_SHOWN = 6;

    /** @param priced whether prices are shown and its facts may be changed; else only what came and went */
    LedgerDialog(SupplyItem item, Supplies supplies, Formatter figures, boolean priced, Runnable changed) {
        SupplyId id = item.id().orElseThrow();
        setHeaderTitle(item.name());
        setWidth("min(52rem, 96vw)");
        Paragraph facts = new Paragraph(figures.text(
                "supplies.facts",
                getTranslation(item.facts().pvc().textKey()),
                getTranslation(item.facts().adhesive().textKey()),
                item.leadDays(),
                item.spareDays()));
        Div content = new Div(facts);
        if (priced) {
            content.add(prices(supplies.purchases(id), item, figures));
        }
        content.add(ledger(id, item, supplies, figures));
        content.addClassName("pw-stack");
        add(content);
        Button change = new Button(getTranslation("supplies.change"), event -> {
            close();
            new SupplyDialog(item, supplies, figures, "", changed).open();
        });
        change.setVisible(priced);
        getFooter().add(change, new Button(getTranslation("supplies.close"), event -> close()));
    }

    private Div prices(List<Movement> purchases, SupplyItem item, Formatter figures) {
        Div box = new Div();
        if (purchases.isEmpty()) {
            return box;
        }
        box.add(new H3(getTranslation("supplies.prices")));
        UnorderedList list = new UnorderedList();
        purchases.reversed().stream()
                .limit(PRICES_SHOWN)
                .forEach(bought -> list.add(new ListItem(figures.text(
                        "supplies.prices.line",
                        bought.at(),
                        bought.unitCost().times(item.usePerPurchase()),
                        item.purchaseUnit(),
                        bought.supplier()
                                .map(from -> " · " + getTranslation("supplies.shopping.from-whom", from.name()))
                                .orElse("")))));
        box.add(list);
        return box;
    }

    private Grid<Movement> ledger(SupplyId id, SupplyItem item, Supplies supplies, Formatter figures) {
        Grid<Movement> grid = new Grid<>();
        grid.addThemeVariants(GridVariant.NO_BORDER);
        grid.setEmptyStateText(getTranslation("supplies.ledger.none"));
        String unit = getTranslation(item.useUnit().textKey());
        grid.addComponentColumn(m -> twoLines(
                        getTranslation(m.kind().textKey()),
                        figures.moment(m.at()) + " · " + (m.note().isEmpty() ? m.who() : m.who() + ": " + m.note())))
                .setHeader(getTranslation("supplies.ledger.what"))
                .setFlexGrow(3);
        grid.addComponentColumn(m -> twoLines(
                        (m.quantity().signum() > 0 ? "+" : "")
                                + figures.number(m.quantity().doubleValue(), 2) + " " + unit,
                        figures.text("supplies.ledger.left", m.stockAfter().doubleValue())))
                .setHeader(getTranslation("supplies.ledger.how-much"))
                .setTextAlign(ColumnTextAlign.END)
                .setFlexGrow(1)
                .setWidth("5.5rem");
        grid.addComponentColumn(m -> m.order()
                        .map(OrderRef::number)
                        .<Component>map(number -> new Anchor("orders/" + number, number))
                        .orElseGet(Span::new))
                .setHeader(getTranslation("supplies.ledger.order"))
                .setFlexGrow(0)
                .setWidth("6.5rem");
        grid.setItems(
                query -> supplies.movements(id, query.getOffset(), query.getLimit()).stream(),
                query -> supplies.countMovements(id));
        grid.setHeight("18rem");
        return grid;
    }

    private static Div twoLines(String first, String second) {
        Span small = new Span(second);
        small.addClassName("pw-small");
        Div lines = new Div(new Span(first), small);
        lines.addClassName("supplies-two-lines");
        return lines;
    }
}
