package puzzleworkshop.delivery.sending;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * To which countries a way goes, so that the price of a parcel within the country is not proposed for one that leaves it.
 *
 * @param countries ISO 3166-1, two capital letters; only of {@link Kind#COUNTRIES}
 */
public record Reach(Kind kind, Set<String> countries) {

    public enum Kind {
        ANYWHERE,
        /** Within the country that parcels leave from. */
        HOME,
        /** To those that are named. */
        COUNTRIES;

        public String textKey() {
            return "delivery.reach." + name();
        }
    }

    public static final Reach ANYWHERE = new Reach(Kind.ANYWHERE, Set.of());

    public Reach {
        countries = kind == Kind.COUNTRIES ? Collections.unmodifiableSet(new TreeSet<>(countries)) : Set.of();
    }

    /**
     * Where a parcel goes.
     *
     * @param country of its address
     * @param home the country it leaves from
     */
    public record Destination(String country, String home) {}

    public boolean takes(Destination to) {
        return switch (kind) {
            case ANYWHERE -> true;
            case HOME -> to.country().equals(to.home());
            case COUNTRIES -> countries.contains(to.country());
        };
    }
}
