package puzzleworkshop.machines.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.machines.WearPart;
import puzzleworkshop.measure.Money;

/** What a machine's hour is made of; the rate itself is counted under Rates and prices. */
class CostFields extends Div {

    private static final double MOST_MONEY = 10_000_000;
    private static final double MOST_HOURS = 1_000_000;

    private final transient Formatter figures;
    private final Currency currency;
    private final NumberField price;
    private final NumberField residual;
    private final NumberField life;
    private final NumberField kw;
    private final NumberField upkeep;
    private final NumberField yearly;
    private final Div rows = new Div();
    private final List<WearRow> wear = new ArrayList<>();

    CostFields(MachineCosts costs, Formatter figures) {
        this.figures = figures;
        this.currency = costs.currency();
        addClassName("cutting-form-part");
        String code = currency.getCurrencyCode();
        price = Fields.number(figures, "cutting.costs.price", amount(costs.price()), 0, MOST_MONEY, code);
        residual = Fields.number(figures, "cutting.costs.residual", amount(costs.residual()), 0, MOST_MONEY, code);
        life = Fields.number(figures, "cutting.costs.life", costs.lifeHours(), 1, MOST_HOURS, "h");
        kw = Fields.number(figures, "cutting.costs.kw", costs.powerKw(), 0, 100, "kW");
        upkeep = Fields.number(figures, "cutting.costs.upkeep", amount(costs.yearlyUpkeep()), 0, MOST_MONEY, code);
        yearly = Fields.number(figures, "cutting.costs.yearly", costs.yearlyHours(), 1, 8784, "h");
        FormLayout form = Fields.form(price, residual, life, kw, upkeep, yearly);
        rows.addClassName("cutting-wear");
        costs.wearParts().forEach(part -> addRow(part.name(), amount(part.price()), part.lifeHours()));
        Button more = new Button(figures.text("cutting.costs.wear.add"), event -> addRow("", 0, 300));
        more.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        SmallText lead = new SmallText(figures.text("cutting.costs.wear"));
        add(form, lead, rows, more);
    }

    boolean valid() {
        boolean fits = Fields.inRange(price, 0, MOST_MONEY, figures)
                & Fields.inRange(residual, 0, MOST_MONEY, figures)
                & Fields.inRange(life, 1, MOST_HOURS, figures)
                & Fields.inRange(kw, 0, 100, figures)
                & Fields.inRange(upkeep, 0, MOST_MONEY, figures)
                & Fields.inRange(yearly, 1, 8784, figures);
        if (fits && residual.getValue() > price.getValue()) {
            residual.setErrorMessage(figures.text("cutting.costs.residual.high"));
            residual.setInvalid(true);
            fits = false;
        }
        Set<String> names = new HashSet<>();
        for (WearRow row : wear) {
            fits &= row.valid(names);
        }
        return fits;
    }

    MachineCosts read() {
        return new MachineCosts(
                money(price),
                money(residual),
                life.getValue(),
                kw.getValue(),
                money(upkeep),
                yearly.getValue(),
                wear.stream()
                        .map(row -> new WearPart(row.name.getValue().strip(), money(row.price), row.life.getValue()))
                        .toList());
    }

    private void addRow(String name, double cost, double hours) {
        WearRow row = new WearRow(name, cost, hours);
        wear.add(row);
        rows.add(row);
    }

    private Money money(NumberField field) {
        return Money.of(BigDecimal.valueOf(field.getValue()), currency);
    }

    private static double amount(Money money) {
        return money.amount().doubleValue();
    }

    /** One part that wears, with the way to take it off. */
    private final class WearRow extends Div {

        private final TextField name = new TextField(figures.text("cutting.costs.wear.name"));
        private final NumberField price;
        private final NumberField life;

        WearRow(String named, double cost, double hours) {
            addClassName("cutting-wear-row");
            name.setValue(named);
            name.setMaxLength(80);
            price = Fields.number(figures, "cutting.costs.wear.price", cost, 0, MOST_MONEY, currency.getCurrencyCode());
            life = Fields.number(figures, "cutting.costs.wear.life", hours, 1, MOST_HOURS, "h");
            Button off = new Button(figures.text("cutting.costs.wear.off"), event -> {
                wear.remove(this);
                rows.remove(this);
            });
            off.addThemeVariants(ButtonVariant.TERTIARY);
            add(name, price, life, off);
        }

        boolean valid(Set<String> names) {
            boolean named = !name.getValue().isBlank()
                    && names.add(name.getValue().strip().toLowerCase(Locale.ROOT));
            name.setErrorMessage(figures.text("cutting.costs.wear.name.missing"));
            name.setInvalid(!named);
            return named & Fields.inRange(price, 0, MOST_MONEY, figures) & Fields.inRange(life, 1, MOST_HOURS, figures);
        }
    }
}
