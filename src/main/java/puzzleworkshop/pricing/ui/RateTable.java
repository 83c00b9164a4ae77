package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import java.math.BigDecimal;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.rates.HeldRate;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.workshop.SignedIn;

/** Every figure with the day it holds from and where it was taken from; a press opens it to change it from a day on. */
class RateTable extends Div {

    /** A foot is 0.3048 m exactly (international yard and pound agreement, 1959). */
    private static final BigDecimal SQUARE_FOOT_M2 = new BigDecimal("0.09290304");

    private final transient Pricing pricing;
    private final transient RateBook book;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable changed;
    private final Div groups = new Div();

    RateTable(Pricing pricing, RateBook book, Formatter figures, SignedIn signedIn, Runnable changed) {
        this.pricing = pricing;
        this.book = book;
        this.figures = figures;
        this.signedIn = signedIn;
        this.changed = changed;
        addClassName("pw-section");
        groups.addClassName("pricing-groups");
        add(new H2(getTranslation("pricing.rates")), new Paragraph(getTranslation("pricing.rates.lead")), groups);
        refresh();
    }

    private void refresh() {
        groups.removeAll();
        RateSet rates = book.on(book.today());
        for (RateKind.Group group : RateKind.Group.values()) {
            Div box = new Div(new H3(getTranslation(group.textKey())));
            box.addClassName("pricing-group");
            for (RateKind kind : RateKind.values()) {
                boolean wear = kind.name().startsWith("LENS_") || kind.name().startsWith("FILTER_");
                if (kind.group() == group && !(wear && rates.laser().isPresent())) {
                    box.add(row(rates.held(kind), rates));
                }
            }
            if (group == RateKind.Group.MACHINE) {
                rates.laser()
                        .ifPresent(laser -> laser.wearParts()
                                .forEach(part -> box.add(shown(
                                        part.name(),
                                        figures.text("pricing.rates.lasts", part.lifeHours()),
                                        CostLabels.rate(part.price())))));
                box.add(new Anchor("machines", getTranslation("pricing.rates.at-the-machine")));
                Paragraph hour = new Paragraph(figures.text(
                        "pricing.rates.machine-hour",
                        CostLabels.rate(rates.machine().rate().perHour())));
                hour.addClassName("pricing-machine-hour");
                box.add(hour);
            }
            groups.add(box);
        }
    }

    /** A figure that stands elsewhere and is only shown here. */
    private static Still shown(String what, String where, String value) {
        return new Still(Markup.div("pricing-rate", name(what, where), Markup.span("pw-number", value)));
    }

    private static Markup name(String what, String where) {
        return Markup.div("pricing-rate-name", Markup.span(what), Markup.span("pw-small", where));
    }

    private Component row(HeldRate rate, RateSet rates) {
        if (rate.kind().isAtTheMachine()) {
            String where = rate.starting()
                    ? getTranslation("pricing.source.starting")
                    : figures.text("pricing.source.machine", rate.note());
            return shown(getTranslation(rate.kind().textKey()), where, value(rate, rates));
        }
        Button change = new Button(
                value(rate, rates),
                event -> new RateDialog(rate, pricing, book, figures, signedIn, () -> {
                            refresh();
                            changed.run();
                        })
                        .open());
        change.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        change.setAriaLabel(getTranslation(
                "pricing.rates.change", getTranslation(rate.kind().textKey())));
        Still name = new Still(name(
                getTranslation(rate.kind().textKey()),
                rate.starting()
                        ? getTranslation("pricing.source.starting")
                        : figures.text("pricing.rates.since", rate.from(), rate.note())));
        Div row = new Div(name, change);
        row.addClassName("pricing-rate");
        return row;
    }

    private String value(HeldRate rate, RateSet rates) {
        return switch (rate.kind().form()) {
            case MONEY -> {
                Money each = Money.of(rate.value(), rates.currency());
                yield rate.kind().isForArea() && figures.units() == UnitSystem.INCHES
                        ? getTranslation(
                                "pricing.rate.square-foot",
                                CostLabels.rate(each),
                                CostLabels.rate(each.times(SQUARE_FOOT_M2)))
                        : CostLabels.rate(each);
            }
            case PERCENT -> figures.number(rate.value().doubleValue(), 2) + " %";
            case NUMBER, POSITIVE -> figures.number(rate.value().doubleValue(), 3);
        };
    }
}
