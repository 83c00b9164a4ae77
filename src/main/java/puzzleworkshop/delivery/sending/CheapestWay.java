package puzzleworkshop.delivery.sending;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.Journey;

/**
 * The cheapest way of sending that keeps the promise. Of ways that keep it the lowest price wins, of equal prices the one
 * that is there first; a way without a price list comes after all that have one. When no way keeps it, the one that is
 * there first wins, of several the cheapest.
 */
public final class CheapestWay {

    private CheapestWay() {}

    /**
     * What one way can do.
     *
     * @param journey when it leaves and when it is there
     * @param price absent while its price list is empty
     */
    public record Offer(SendingWay way, Journey journey, Optional<Money> price) {

        public LocalDateTime leaves() {
            return journey.leaves();
        }

        public LocalDate arrives() {
            return journey.arrives();
        }

        boolean keeps(Optional<LocalDate> promised) {
            return promised.map(day -> !arrives().isAfter(day)).orElse(true);
        }
    }

    /**
     * The answer.
     *
     * @param best absent when no way takes the parcel
     * @param reason why it is proposed, or why there is none
     * @param others what else takes the parcel, in order
     * @param refused why others do not
     */
    public record Answer(Optional<Offer> best, Sentence reason, List<Offer> others, List<Sentence> refused)
            implements Confidential<Answer> {

        /** As with {@link SendingPrice}: whoever takes the parcel to the counter pays it. */
        @Override
        public Answer withoutMoney() {
            return this;
        }
    }

    /**
     * @param ways among which to choose; ways of collection are left out
     * @param ready when the parcel can leave
     * @param promised the day on which it was to be there; absent when none was promised
     * @param free days on which nothing leaves or arrives
     * @param to where it goes; absent while its address was not looked through: every way is taken into account
     */
    public static Answer of(
            List<SendingWay> ways,
            ParcelMeasure parcel,
            LocalDateTime ready,
            Optional<LocalDate> promised,
            FreeDays free,
            Optional<Reach.Destination> to) {
        List<Offer> offers = new ArrayList<>();
        List<Sentence> refused = new ArrayList<>();
        for (SendingWay way : ways) {
            if (way.kind() == WayKind.COLLECTION) {
                continue;
            }
            Optional<Sentence> why = to.flatMap(way::notTo).or(() -> way.refuses(parcel));
            if (why.isPresent()) {
                refused.add(why.get());
                continue;
            }
            offers.add(new Offer(
                    way, Journey.of(way.way(), ready, free), way.price(parcel).map(SendingPrice::price)));
        }
        Comparator<Offer> cheap = Comparator.comparing(
                        (Offer offer) -> offer.price().isEmpty())
                .thenComparing(offer -> offer.price().map(Money::amount).orElse(java.math.BigDecimal.ZERO));
        Comparator<Offer> soon = Comparator.comparing(Offer::arrives);
        boolean kept = offers.stream().anyMatch(offer -> offer.keeps(promised));
        List<Offer> sorted = offers.stream()
                .sorted(
                        kept
                                ? Comparator.comparing((Offer offer) -> !offer.keeps(promised))
                                        .thenComparing(cheap)
                                        .thenComparing(soon)
                                : soon.thenComparing(cheap))
                .toList();
        if (sorted.isEmpty()) {
            return new Answer(Optional.empty(), Sentence.of("delivery.way.none"), List.of(), List.copyOf(refused));
        }
        Offer best = sorted.getFirst();
        List<Offer> others = sorted.subList(1, sorted.size());
        return new Answer(
                Optional.of(best), reason(best, others, promised, kept), List.copyOf(others), List.copyOf(refused));
    }

    private static Sentence reason(Offer best, List<Offer> others, Optional<LocalDate> promised, boolean kept) {
        String name = best.way().name();
        if (!kept) {
            return Sentence.of("delivery.way.late", name, best.arrives(), promised.orElseThrow());
        }
        if (best.price().isEmpty()) {
            return Sentence.of("delivery.way.priceless", name, best.arrives());
        }
        Optional<Offer> cheaperButLate = others.stream()
                .filter(other -> !other.keeps(promised))
                .filter(other -> other.price()
                        .map(price -> price.compareTo(best.price().get()) < 0)
                        .orElse(false))
                .findFirst();
        if (cheaperButLate.isPresent()) {
            Offer late = cheaperButLate.get();
            return Sentence.of(
                    "delivery.way.cheaper-late",
                    name,
                    best.price().get(),
                    best.arrives(),
                    late.way().name(),
                    late.price().orElseThrow(),
                    late.arrives());
        }
        Optional<Offer> next = others.stream()
                .filter(other -> other.keeps(promised) && other.price().isPresent())
                .findFirst();
        return next.map(other -> Sentence.of(
                        "delivery.way.cheapest",
                        name,
                        best.price().get(),
                        best.arrives(),
                        other.way().name(),
                        other.price().get()))
                .orElseGet(() ->
                        Sentence.of("delivery.way.only", name, best.price().get(), best.arrives()));
    }
}
