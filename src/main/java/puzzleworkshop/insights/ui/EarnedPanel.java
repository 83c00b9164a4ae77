package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HtmlContainer;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
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
        Div table = new Div(head("insights.part"), head("insights.reckoned"), head("insights.took"), head(""));
        table.addClassNames("insights-table", "insights-earned");
        outcome.parts()
                .forEach((part, compared) -> row(
                        table,
                        figures.text(part.textKey()),
                        compared.reckoned(),
                        compared.actual(),
                        compared.measured(),
                        false));
        Money nothing = Money.zero(outcome.net().currency());
        outcome.again()
                .forEach(piece -> row(
                        table,
                        new Anchor(
                                "orders/" + piece.order().number(),
                                figures.text("insights.again", piece.order().number())),
                        nothing,
                        piece.cost(),
                        true,
                        false));
        row(table, figures.text("insights.sold-for"), outcome.agreed(), outcome.net(), true, true);
        row(table, figures.text("insights.cost"), outcome.reckoned(), outcome.actual(), true, false);
        row(table, figures.text("insights.earned"), outcome.reckonedToEarn(), outcome.earned(), true, true);
        H2 title = new H2(figures.text("insights.panel"));
        boolean better = outcome.earned().compareTo(outcome.reckonedToEarn()) >= 0;
        title.add(new Verdict(
                outcome.earned().isNegative() ? Verdict.Kind.BAD : better ? Verdict.Kind.GOOD : Verdict.Kind.WARN,
                figures.text(
                        outcome.earned().isNegative() ? "insights.lost" : "insights.earned-percent",
                        outcome.margin())));
        Section section = new Section(title, table);
        insights.bornBy(order.id())
                .ifPresent(whole -> section.add(new Paragraph(
                        new Anchor("orders/" + whole.number(), figures.text("insights.born-by", whole.number())))));
        return section;
    }

    private void row(Div table, String name, Money reckoned, Money actual, boolean measured, boolean earned) {
        row(table, new Span(name), reckoned, actual, measured, earned);
    }

    private void row(Div table, HtmlContainer what, Money reckoned, Money actual, boolean measured, boolean earned) {
        Money difference = actual.minus(reckoned);
        boolean worse = earned ? difference.isNegative() : difference.isPositive();
        Span change = number(
                !measured
                        ? figures.text("insights.as-reckoned")
                        : difference.isZero() ? "=" : (difference.isPositive() ? "+" : "") + figures.money(difference));
        change.addClassName(!measured ? "insights-soft" : worse ? "insights-worse" : "insights-better");
        if (earned) {
            what.addClassName("insights-strong");
        }
        table.add(what, number(figures.money(reckoned)), number(figures.money(actual)), change);
    }

    private Span head(String key) {
        Span head = new Span(key.isEmpty() ? "" : figures.text(key));
        head.addClassName("insights-head");
        return head;
    }

    private static Span number(String text) {
        Span span = new Span(text);
        span.addClassName("pw-number");
        return span;
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
