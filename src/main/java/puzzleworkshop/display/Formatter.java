package puzzleworkshop.display;

import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.measure.UnitSystem;

/** Puts quantities and sentences into words, in the workshop's units, the same on every screen and paper. */
@Component
public class Formatter {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Texts.LOCALE);
    private static final DateTimeFormatter DAY_AND_YEAR = DateTimeFormatter.ofPattern("EEE d MMM yyyy", Texts.LOCALE);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Texts.LOCALE);
    private static final DateTimeFormatter MOMENT_AND_YEAR =
            DateTimeFormatter.ofPattern("EEE d MMM yyyy, HH:mm", Texts.LOCALE);

    /** Java knows English of places that have no country of their own, such as en_DG, and refuses to name their currency. */
    private static final java.util.Set<String> ISO_COUNTRIES = java.util.Set.of(Locale.getISOCountries());

    private static final double SQUARE_FOOT_SIDE = 12 * Length.MM_PER_INCH;

    private static final Map<Currency, String> AT_HOME = new ConcurrentHashMap<>();

    private final Texts texts;
    private final HouseUnits house;

    public Formatter(Texts texts, HouseUnits house) {
        this.texts = texts;
        this.house = house;
    }

    /** A text with its arguments shown in the house's units. */
    public String text(String key, Object... arguments) {
        Object[] shown = new Object[arguments.length];
        for (int i = 0; i < arguments.length; i++) {
            shown[i] = asShown(arguments[i]);
        }
        return texts.getTranslation(key, Texts.LOCALE, shown);
    }

    public String say(Sentence sentence) {
        return text(sentence.key(), sentence.arguments().toArray());
    }

    public String say(Refused refused) {
        return say(refused.sentence());
    }

    /** 200 mm, or 7.874 in. */
    public String length(Length length) {
        return number(house.units().valueOf(length), lengthDigits()) + " "
                + house.units().symbol();
    }

    /** A small measure, to a hundredth of a millimetre: 0.15 mm, or 0.0059 in. */
    public String fine(Length length) {
        return number(house.units().valueOf(length), house.units() == UnitSystem.INCHES ? 4 : 2) + " "
                + house.units().symbol();
    }

    /** 200 × 300 mm. */
    public String size(Size size) {
        return sides(size.width(), size.height());
    }

    /** 200 × 150 × 40 mm. */
    public String sides(Length... sides) {
        UnitSystem units = house.units();
        return Stream.of(sides)
                        .map(side -> number(units.valueOf(side), lengthDigits()))
                        .collect(Collectors.joining(" × "))
                + " " + units.symbol();
    }

    public String area(Area area) {
        return house.units() == UnitSystem.INCHES
                ? number(area.mm2() / (Length.MM_PER_INCH * Length.MM_PER_INCH), 1) + " in²"
                : number(area.toSquareCentimetres(), 1) + " cm²";
    }

    /** Wood by the board, digits alike so that a column can be read down: 4.75 m², or 51.2 ft². */
    public String largeArea(Area area) {
        boolean feet = house.units() == UnitSystem.INCHES;
        double value = feet ? area.mm2() / (SQUARE_FOOT_SIDE * SQUARE_FOOT_SIDE) : area.toSquareMetres();
        int digits = feet ? 1 : 2;
        double least = Math.pow(10, -digits);
        boolean little = value > 0 && value < least / 2;
        return (little ? "under " : "") + digits(little ? least : value, digits) + (feet ? " ft²" : " m²");
    }

    /** Rounded to the currency's minor unit, with its symbol: €24.00. */
    public String money(Money money) {
        NumberFormat format = NumberFormat.getCurrencyInstance(Texts.LOCALE);
        format.setCurrency(money.currency());
        int digits = money.currency().getDefaultFractionDigits();
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(digits);
        format.setRoundingMode(RoundingMode.HALF_UP);
        if (format instanceof DecimalFormat own && money.currency().equals(house.currency())) {
            DecimalFormatSymbols signs = own.getDecimalFormatSymbols();
            signs.setCurrencySymbol(atHome(money.currency()));
            own.setDecimalFormatSymbols(signs);
        }
        return format.format(money.amount());
    }

    /** Its sign where it is the usual money: $ in a house of dollars, which elsewhere are US$. */
    private static String atHome(Currency currency) {
        return AT_HOME.computeIfAbsent(
                currency,
                own -> Locale.availableLocales()
                        .filter(locale -> locale.getLanguage().equals(Texts.LOCALE.getLanguage())
                                && ISO_COUNTRIES.contains(locale.getCountry()))
                        .filter(locale -> own.equals(Currency.getInstance(locale)))
                        .map(own::getSymbol)
                        .min(Comparator.comparingInt(String::length))
                        .orElseGet(() -> own.getSymbol(Texts.LOCALE)));
    }

    public String percent(Percent percent) {
        return number(percent.hundredths().doubleValue(), 1) + " %";
    }

    /** 45 min, or 2 h 05. */
    public String minutes(Minutes minutes) {
        long whole = Math.round(minutes.value());
        if (whole < 60) {
            return (whole == 0 && minutes.value() > 0 ? "under 1" : Long.toString(whole)) + " min";
        }
        return whole / 60 + " h " + String.format(Texts.LOCALE, "%02d", whole % 60);
    }

    /** Both ways, since a factor of 60 is the classic mistake: 300 mm/min (5 mm/s). */
    public String speed(Speed speed) {
        return number(speed.toMmPerMinute(), 0) + " mm/min (" + number(speed.mmPerSecond(), 2) + " mm/s)";
    }

    /** Thu 3 Dec; with the year when it is not within the next or last half year. */
    public String day(LocalDate day) {
        return day.format(isNear(day) ? DAY : DAY_AND_YEAR);
    }

    /** Thu 3 Dec, 14:05; with the year when it is not within the next or last half year. */
    public String moment(Instant instant) {
        ZonedDateTime moment = ZonedDateTime.ofInstant(instant, house.zone());
        return moment.format(isNear(moment.toLocalDate()) ? MOMENT : MOMENT_AND_YEAR);
    }

    private boolean isNear(LocalDate day) {
        LocalDate today = house.today();
        return !day.isBefore(today.minusMonths(6)) && !day.isAfter(today.plusMonths(6));
    }

    /** An amount in the house's currency without its sign, for columns whose head says which it is. */
    public String amount(double value) {
        return digits(value, house.currency().getDefaultFractionDigits());
    }

    private static String digits(double value, int digits) {
        NumberFormat format = NumberFormat.getNumberInstance(Texts.LOCALE);
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(digits);
        format.setRoundingMode(RoundingMode.HALF_UP);
        return format.format(value);
    }

    /** With at most the given digits after the point, none wasted: 12.5, 12. */
    public String number(double value, int digits) {
        DecimalFormat format = new DecimalFormat("#,##0", DecimalFormatSymbols.getInstance(Texts.LOCALE));
        format.setMaximumFractionDigits(digits);
        format.setRoundingMode(RoundingMode.HALF_UP);
        return format.format(value);
    }

    public UnitSystem units() {
        return house.units();
    }

    private int lengthDigits() {
        return house.units() == UnitSystem.INCHES ? house.units().digits() : 1;
    }

    /** One argument of a sentence as people read it. */
    public String shown(Object argument) {
        return String.valueOf(asShown(argument));
    }

    private Object asShown(Object argument) {
        return switch (argument) {
            case Length length -> length(length);
            case Size size -> size(size);
            case Area area -> area(area);
            case Money money -> money(money);
            case Percent percent -> percent(percent);
            case Minutes minutes -> minutes(minutes);
            case Speed speed -> speed(speed);
            case LocalDate day -> day(day);
            case Instant instant -> moment(instant);
            case Sentence sentence -> say(sentence);
            case Double value -> number(value, 2);
            default -> argument;
        };
    }
}
