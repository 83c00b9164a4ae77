package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.BigDecimalField;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.Optional;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * A field for a number: an amount of money, a share, a quantity. What cannot be read, lies outside its range or has more
 * digits than it may stays in the field with a sentence beside it, and is never taken for nothing or rounded without a
 * word.
 */
@JavaScript("context://amounts.js")
public class AmountField extends BigDecimalField {

    /** More than any workshop pays or counts; a number above it is a slip of the hand. */
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);

    private final BigDecimal least;
    private final BigDecimal most;
    private final int digits;
    private transient Sentence outside;
    private transient Function<Sentence, String> words =
            said -> getTranslation(said.key(), said.arguments().toArray());

    /**
     * @param least that is taken
     * @param most that is taken
     * @param digits after the point, at most
     */
    public AmountField(String label, BigDecimal least, BigDecimal most, int digits) {
        super(label);
        this.least = least;
        this.most = most;
        this.digits = digits;
        setLocale(Texts.LOCALE);
    }

    /** From zero on. */
    public AmountField(String label, int digits) {
        this(label, BigDecimal.ZERO, MOST, digits);
    }

    /** An amount from zero on, in the digits that its currency has. */
    public static AmountField money(String label, Currency currency) {
        return new AmountField(label, currency.getDefaultFractionDigits());
    }

    /** A share in hundredths, from zero to the most. */
    public static AmountField percent(String label, int most, int digits) {
        return new AmountField(label, BigDecimal.ZERO, BigDecimal.valueOf(most), digits).in("%");
    }

    /** With the currency's sign before it. */
    public AmountField signed(Currency currency) {
        setPrefixComponent(unit(currency.getSymbol(Texts.LOCALE)));
        return this;
    }

    /** With its unit behind it. */
    public AmountField in(String unit) {
        setSuffixComponent(unit(unit));
        return this;
    }

    /**
     * With a sentence of its own for a number outside the range or of too many digits.
     *
     * @param outsideRange with numbers and words only; quantities are written by the other one
     */
    public AmountField saying(Sentence outsideRange) {
        if (outsideRange.arguments().stream().anyMatch(said -> !(said instanceof Number || said instanceof String))) {
            throw new IllegalArgumentException("Quantities are written by a formatter: " + outsideRange);
        }
        this.outside = outsideRange;
        return this;
    }

    /** The same with money, shares or lengths in it. */
    public AmountField saying(Sentence outsideRange, Formatter figures) {
        this.outside = outsideRange;
        this.words = figures::say;
        return this;
    }

    /** Shows a number in as few digits as it needs; null for none. */
    public void show(BigDecimal value) {
        BigDecimal plain = value == null ? null : value.stripTrailingZeros();
        setValue(plain == null || plain.scale() >= 0 ? plain : plain.setScale(0));
    }

    /**
     * What was typed; empty only when nothing was.
     *
     * @throws Refused when it cannot be taken, saying why; the field is marked with the same sentence
     */
    public Optional<BigDecimal> typed() {
        Optional<Sentence> wrong = wrong();
        mark(wrong);
        if (wrong.isPresent()) {
            focus();
            throw new Refused(named(wrong.get()));
        }
        return Optional.ofNullable(getValue());
    }

    /**
     * A number that is needed.
     *
     * @throws Refused when there is none or it cannot be taken; the field is marked
     */
    public BigDecimal needed() {
        return typed().orElseThrow(() -> {
            Sentence missing = Sentence.of("display.amount.missing");
            mark(Optional.of(missing));
            focus();
            return new Refused(named(missing));
        });
    }

    /** The same as money. */
    public Money needed(Currency currency) {
        return Money.of(needed(), currency);
    }

    /** The same as money; empty only when nothing was typed. */
    public Optional<Money> typed(Currency currency) {
        return typed().map(amount -> Money.of(amount, currency));
    }

    /** Whether it is empty or holds a number that can be taken; marked with what is wrong, if anything is. */
    public boolean isFit() {
        Optional<Sentence> wrong = wrong();
        mark(wrong);
        return wrong.isEmpty();
    }

    /** Whether it holds a number that can be taken; marked with what is wrong, if anything is. */
    public boolean isFilled() {
        Optional<Sentence> wrong = wrong().or(() ->
                getValue() == null ? Optional.of(Sentence.of("display.amount.missing")) : Optional.empty());
        mark(wrong);
        return wrong.isEmpty();
    }

    /** Whenever it changes: at once, and not only when somebody saves. */
    @Override
    protected void validate() {
        mark(wrong());
    }

    private Optional<Sentence> wrong() {
        BigDecimal value = getValue();
        if (value == null) {
            boolean blank = getElement().getProperty("value", "").isBlank();
            return blank ? Optional.empty() : Optional.of(Sentence.of("display.amount.unreadable"));
        }
        if (value.compareTo(least) < 0 || value.compareTo(most) > 0) {
            return Optional.of(outside != null ? outside : Sentence.of("display.amount.range", least, most));
        }
        if (value.stripTrailingZeros().scale() > digits) {
            return Optional.of(outside != null ? outside : Sentence.of("display.amount.digits", digits));
        }
        return Optional.empty();
    }

    private Sentence named(Sentence wrong) {
        return getLabel() == null || getLabel().isBlank()
                ? wrong
                : Sentence.of("display.amount.named", getLabel(), wrong);
    }

    private void mark(Optional<Sentence> wrong) {
        setErrorMessage(wrong.map(words).orElse(""));
        setInvalid(wrong.isPresent());
    }

    private static Span unit(String text) {
        Span unit = new Span(text);
        unit.addClassName("pw-unit");
        return unit;
    }
}
