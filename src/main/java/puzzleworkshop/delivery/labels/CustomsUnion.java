package puzzleworkshop.delivery.labels;

import java.util.Set;
import java.util.regex.Pattern;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;

/**
 * Where a parcel crosses no customs border although it leaves the country: within the customs territory of the European
 * Union (Regulation (EU) No 952/2013, Article 4, as it stands in 2026) but for the places that are outside of it or outside
 * its common rules for value added tax (Council Directive 2006/112/EC, Article 6), which ask for a declaration: they are
 * known by their postal codes. Lists and codes from memory; a declaration too many does no harm, so what is in doubt has one.
 */
public final class CustomsUnion {

    /** ISO 3166-1; Monaco counts with France. Åland, the Faroes, Greenland and the islands overseas have codes of their own. */
    private static final Set<String> EUROPEAN_UNION = Set.of(
            "AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT", "LU",
            "LV", "MC", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK");

    /** Heligoland, Büsingen; Canary Islands, Ceuta, Melilla; Livigno; Åland; Mount Athos; France overseas. */
    private static final Pattern APART =
            Pattern.compile("DE(27498|78266)|ES(35|38|51|52)\\d{3}|IT(23030|23041)|FI22\\d{3}|GR63086|FR9[78]\\d{3}");

    private CustomsUnion() {}

    /** Whether what leaves a country for an address crosses a border of customs; within the country it does not. */
    public static boolean isLeft(String from, PostalAddress to) {
        if (from.equals(to.country())) {
            return false;
        }
        String code = to.part(Part.POSTAL_CODE).replaceAll("\\D", "");
        return !EUROPEAN_UNION.contains(from)
                || !EUROPEAN_UNION.contains(to.country())
                || APART.matcher(to.country() + code).matches();
    }
}
