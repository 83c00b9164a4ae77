package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.measure.Money;
import puzzleworkshop.supplies.Restock;
import puzzleworkshop.supplies.ShoppingList;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.workshop.SignedIn;

/** The shelf: what is there, what to buy, and what must never meet the laser. */
@Route("supplies")
@Menu(title = "supplies.title", order = 50)
@PermitAll
@StyleSheet("context://supplies.css")
public class SuppliesView extends Div implements HasDynamicTitle {

    private final transient Supplies supplies;
    private final transient StockCounts counts;
    private final transient ShoppingList list;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final Div shopping = new Div();
    private final Div shelf = new Div();

    public SuppliesView(
            Supplies supplies,
            StockCounts counts,
            ShoppingList list,
            Formatter figures,
            SignedIn signedIn,
            List<ShoppingSection> more) {
        this.supplies = supplies;
        this.counts = counts;
        this.list = list;
        this.figures = figures;
        this.signedIn = signedIn;
        addClassName("pw-page");
        Button fresh = new Button(
                getTranslation("supplies.new"),
                event -> new SupplyDialog(null, supplies, figures, signedIn.name(), this::refresh).open());
        fresh.addThemeVariants(ButtonVariant.PRIMARY);
        fresh.setVisible(!signedIn.isMaker());
        Button count = new Button(
                getTranslation("supplies.take-stock"),
                event -> new StockTakingDialog(supplies, counts, figures, signedIn, this::refresh).open());
        Div buttons = new Div(count, fresh);
        buttons.addClassNames("pw-row", "pw-push");
        PageHead head =
                new PageHead(getTranslation("supplies.title"), new Paragraph(getTranslation("supplies.lead")), buttons);
        shopping.addClassName("pw-section");
        shelf.addClassNames("pw-section", "supplies-shelf");
        add(head, shopping);
        more.forEach(section -> add(section.show()));
        add(shelf);
        refresh();
    }

    @Override
    public String getPageTitle() {
        return getTranslation("supplies.title");
    }

    private void refresh() {
        List<Restock> all = list.all();
        shoppingList(all.stream().filter(Restock::isDue).toList());
        shelf.removeAll();
        if (all.isEmpty()) {
            EmptyState empty = new EmptyState(getTranslation("supplies.empty"), getTranslation("supplies.empty.next"));
            empty.add(new StartingList(supplies, figures, this::refresh));
            shelf.add(empty);
            return;
        }
        H2 title = new H2(getTranslation("supplies.shelf"));
        if (signedIn.isOwner()) {
            Money value = Money.sum(
                    all.stream().map(restock -> restock.item().stockValue()).toList(),
                    all.getFirst().item().unitCost().currency());
            title.add(small(figures.text("supplies.shelf.value", value)));
        }
        shelf.add(title);
        all.forEach(restock -> shelf.add(new SupplyRow(restock, supplies, counts, figures, signedIn, this::refresh)));
    }

    private void shoppingList(List<Restock> due) {
        shopping.removeAll();
        shopping.setVisible(!due.isEmpty());
        shopping.add(new H2(getTranslation("supplies.shopping")));
        for (Restock restock : due) {
            String expected = signedIn.isMaker()
                    ? ""
                    : restock.expected().map(figures::money).orElse("");
            String from = restock.lastSupplier()
                    .map(s -> getTranslation("supplies.shopping.from", s.name()))
                    .orElse("");
            Span what = new Span(figures.text(
                    "supplies.shopping.line",
                    restock.toBuy(),
                    restock.item().purchaseUnit(),
                    restock.item().name()));
            Span price = new Span(expected);
            price.addClassName("pw-number");
            Button bought = new Button(
                    getTranslation("supplies.movement.BOUGHT"),
                    event -> new MovementDialog(
                                    restock.item(),
                                    MovementDialog.What.BOUGHT,
                                    supplies,
                                    counts,
                                    figures,
                                    signedIn,
                                    this::refresh)
                            .open());
            bought.addThemeVariants(ButtonVariant.SMALL);
            bought.setVisible(!signedIn.isMaker());
            Div row = new Div(what, small(from), price, bought);
            row.addClassName("supplies-shopping");
            shopping.add(row);
        }
    }

    private static Span small(String text) {
        Span span = new Span(text);
        span.addClassName("pw-small");
        return span;
    }
}
