package puzzleworkshop.delivery.sending;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import puzzleworkshop.delivery.address.CountryFormat;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.calendar.DeliveryWay;

/**
 * A way of delivery with all that sending by it takes: when it leaves and arrives is the planning room's, the rest ours.
 *
 * @param divisor cubic centimetres that count as one kilogram; absent where the carrier does not weigh by volume
 * @param linkPattern where a parcel can be followed, with {code} for its number; empty where it cannot
 * @param collectWindow when customers may come, in words; only of a collection
 * @param keepsDays how long something waits for collection before This week asks for it
 * @param prices lines of the price list; empty while none was entered
 * @param reach to which countries it goes
 */
public record SendingWay(
        DeliveryWay way,
        WayKind kind,
        SendingLimits limits,
        OptionalInt divisor,
        String linkPattern,
        String collectWindow,
        int keepsDays,
        List<SendingPrice> prices,
        Reach reach) {

    public static final String CODE = "{code}";
    public static final int USUAL_KEEPS_DAYS = 14;

    public SendingWay {
        prices = List.copyOf(prices);
    }

    /** A way of which nothing is known but its days. */
    static SendingWay plain(DeliveryWay way) {
        return new SendingWay(
                way,
                WayKind.PARCEL,
                SendingLimits.NONE,
                OptionalInt.empty(),
                "",
                "",
                USUAL_KEEPS_DAYS,
                List.of(),
                Reach.ANYWHERE);
    }

    public SendingWay reaching(Reach other) {
        return new SendingWay(way, kind, limits, divisor, linkPattern, collectWindow, keepsDays, prices, other);
    }

    public String name() {
        return way.name();
    }

    /** Why it does not take a parcel; empty when it does. */
    public Optional<Sentence> refuses(ParcelMeasure parcel) {
        Optional<Sentence> limit = limits.refuses(name(), parcel);
        if (limit.isPresent() || prices.isEmpty() || price(parcel).isPresent()) {
            return limit;
        }
        return Optional.of(
                Sentence.of("delivery.limit.no-price", name(), Kilograms.of(chargedGrams(parcel)), parcel.longest()));
    }

    /** Says that it does not go there; empty when it does. */
    public Optional<Sentence> notTo(Reach.Destination there) {
        return reach.takes(there)
                ? Optional.empty()
                : Optional.of(Sentence.of(
                        "delivery.limit.country", name(), CountryFormat.name(there.country(), Locale.ENGLISH)));
    }

    /** The cheapest line of its price list that takes the parcel. */
    public Optional<SendingPrice> price(ParcelMeasure parcel) {
        double charged = chargedGrams(parcel);
        return prices.stream()
                .filter(line -> line.takes(parcel, charged))
                .min(Comparator.comparing(SendingPrice::price));
    }

    public double chargedGrams(ParcelMeasure parcel) {
        return divisor.isPresent() ? parcel.chargedGrams(divisor.getAsInt()) : parcel.grams();
    }

    /** Where a parcel can be followed; empty without a pattern or a number. */
    public Optional<String> link(String tracking) {
        return linkPattern.isEmpty() || tracking.isBlank()
                ? Optional.empty()
                : Optional.of(linkPattern.replace(CODE, URLEncoder.encode(tracking.strip(), StandardCharsets.UTF_8)));
    }
}
