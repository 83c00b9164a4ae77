package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.insights.Insights;
import puzzleworkshop.insights.Outcome;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.workshop.SignedIn;

/** On the order's page: what it cost and earned against what was reckoned, as far as it was measured. */
@org.springframework.stereotype.Component
class EarnedPanel implements OrderPanel {

    private static final int AFTER_MONEY = 55;

    private final Insights insights;
    private final Formatter figures;
    private final SignedIn signedIn;

    EarnedPanel(Insights insights, Formatter figures, SignedIn signedIn) {
        this.insights = insights;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public int place() {
        return AFTER_MONEY;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        if (!signedIn.isOwner()) {
            return Optional.empty();
        }
        boolean finished = order.state() == OrderState.HANDED_OVER || order.state() == OrderState.CLOSED;
        return insights.outcome(order.id())
                .filter(outcome -> finished || outcome.isMeasured())
                .map(outcome -> section(order, outcome));
    }

    private Component section(Order order, Outcome outcome) {
        List<Markup> cells = new ArrayList<>();
        List.of("insights.part", "insights.reckoned", "insights.took")
                .forEach(key -> cells.add(Markup.span("insights-head", figures.text(key))));
        cells.add(Markup.span("insights-head", ""));
        outcome.parts()
                .forEach((part, compared) -> row(
                        cells,
                        Markup.span(figures.text(part.textKey())),
                        compared.reckoned(),
                        compared.actual(),
                        compared.measured(),
                        false));
        Money nothing = Money.zero(outcome.net().currency());
        outcome.again()
                .forEach(piece -> row(
                        cells,
                        Markup.link(
                                "orders/" + piece.order().number(),
                                figures.text("insights.again", piece.order().number())),
                        nothing,
                        piece.cost(),
                        true,
                        false));
        row(cells, strong("insights.sold-for"), outcome.agreed(), outcome.net(), true, true);
        row(cells, Markup.span(figures.text("insights.cost")), outcome.reckoned(), outcome.actual(), true, false);
        row(cells, strong("insights.earned"), outcome.reckonedToEarn(), outcome.earned(), true, true);
        H2 title = new H2(figures.text("insights.panel"));
        boolean better = outcome.earned().compareTo(outcome.reckonedToEarn()) >= 0;
        title.add(new Verdict(
                outcome.earned().isNegative() ? Verdict.Kind.BAD : better ? Verdict.Kind.GOOD : Verdict.Kind.WARN,
                figures.text(
                        outcome.earned().isNegative() ? "insights.lost" : "insights.earned-percent",
                        // of nothing sold there is no share: the amount says it
                        outcome.margin().<Object>map(margin -> margin).orElse(outcome.earned()))));
        Section section = new Section(title, new Still(Markup.div("insights-table insights-earned", cells)));
        insights.bornBy(order.id())
                .ifPresent(whole -> section.add(new Paragraph(
                        new Anchor("orders/" + whole.number(), figures.text("insights.born-by", whole.number())))));
        return section;
    }

    private Markup strong(String key) {
        return Markup.span("insights-strong", figures.text(key));
    }

    private void row(List<Markup> cells, Markup what, Money reckoned, Money actual, boolean measured, boolean earned) {
        Money difference = actual.minus(reckoned);
        boolean worse = earned ? difference.isNegative() : difference.isPositive();
        String look = !measured ? "insights-soft" : worse ? "insights-worse" : "insights-better";
        String change = !measured
                ? figures.text("insights.as-reckoned")
                : difference.isZero() ? "=" : (difference.isPositive() ? "+" : "") + figures.money(difference);
        cells.addAll(List.of(
                what,
                number(figures.money(reckoned)),
                number(figures.money(actual)),
                Markup.span("pw-number " + look, change)));
    }

    private static Markup number(String text) {
        return Markup.span("pw-number", text);
    }

    /** Carries its own style sheet to the order's page. */
    @StyleSheet("context://insights.css")
    private static final class Section extends Div {

        private Section(Component... parts) {
            super(parts);
            addClassName("pw-section");
        }
    }
}
