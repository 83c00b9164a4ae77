package puzzleworkshop.delivery.address;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How an address is written in a country: which lines in which order, and what its postal codes look like. The table
 * {@code delivery/countries.tsv} is made from open data: lines from the npm package localized-address-format 1.3.3 (MIT;
 * the formats of Google's address data), patterns from postcode-validator 3.10.22 (MIT). A country that is not in it is
 * written as most are: name, street, town.
 *
 * @param country ISO 3166-1, two letters
 * @param lines with %N name, %O organisation, %A street lines, %D district, %C town, %S region, %Z postal code, %n line end
 */
public record CountryFormat(String country, String lines, Optional<Pattern> postalCode) {

    private static final String USUAL = "%N%n%O%n%A%n%C";

    /** Where an address without its region goes astray (from memory of the countries' own guides). */
    private static final Set<String> REGION_NEEDED = Set.of("AU", "BR", "CA", "CN", "IN", "MX", "MY", "TW", "US");

    /** In Ireland the code is younger than many address books: it may be left out. */
    private static final Set<String> CODE_MAY_MISS = Set.of("IE");

    private static final Pattern PREFIX = Pattern.compile("([A-Z]{1,3}[- ]?)%Z");

    private static final Map<String, CountryFormat> ALL = read();

    /** Parts of an address. */
    public enum Part {
        NAME('N'),
        ORGANISATION('O'),
        STREET('A'),
        DISTRICT('D'),
        TOWN('C'),
        REGION('S'),
        POSTAL_CODE('Z');

        private final char sign;

        Part(char sign) {
            this.sign = sign;
        }

        public String textKey() {
            return "delivery.address." + name();
        }
    }

    /** @param country ISO 3166-1, two letters in any case */
    public static CountryFormat of(String country) {
        String code = country.toUpperCase(Locale.ROOT);
        return ALL.getOrDefault(code, new CountryFormat(code, USUAL, Optional.empty()));
    }

    /** Codes of all countries, by their name in a language. */
    public static List<String> countries(Locale language) {
        return Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).stream()
                .sorted(Comparator.comparing(code -> name(code, language)))
                .toList();
    }

    public static String name(String country, Locale language) {
        return Locale.of("", country).getDisplayCountry(language);
    }

    /**
     * The country a house most likely lies in: the computer's where it pays with the house's money, else the one whose money
     * it is (ISO 4217: the first two letters of a currency are its country's), else the computer's.
     *
     * @param computer ISO 3166-1, two letters; empty when it does not say
     */
    public static String home(Currency money, String computer) {
        boolean known = List.of(Locale.getISOCountries()).contains(computer);
        if (known && money.equals(Currency.getInstance(Locale.of("", computer)))) {
            return computer;
        }
        String of = money.getCurrencyCode().substring(0, 2);
        if (List.of(Locale.getISOCountries()).contains(of)) {
            return of;
        }
        return of.equals("EU") || !known ? "DE" : computer;
    }

    /** Which parts are asked for. */
    public Set<Part> parts() {
        Set<Part> parts = EnumSet.noneOf(Part.class);
        for (Part part : Part.values()) {
            if (lines.indexOf("%" + part.sign) >= 0) {
                parts.add(part);
            }
        }
        parts.addAll(EnumSet.of(Part.NAME, Part.STREET, Part.TOWN));
        return parts;
    }

    public boolean needs(Part part) {
        return switch (part) {
            case NAME, STREET -> true;
            case TOWN -> lines.contains("%C");
            case POSTAL_CODE -> postalCode.isPresent() && !CODE_MAY_MISS.contains(country);
            case REGION -> REGION_NEEDED.contains(country);
            case ORGANISATION, DISTRICT -> false;
        };
    }

    /** Without the country's letters that the line has anyway. */
    String plainCode(String typed) {
        String code = typed.strip().toUpperCase(Locale.ROOT).replaceAll("\\s+", " ");
        Matcher prefix = PREFIX.matcher(lines);
        if (prefix.find() && code.startsWith(prefix.group(1).strip())) {
            return code.substring(prefix.group(1).strip().length()).strip();
        }
        return code;
    }

    boolean isCode(String plain) {
        return postalCode.map(pattern -> pattern.matcher(plain).matches()).orElse(true);
    }

    /** The lines of an address as the country writes them, without the country's name; what is empty leaves no trace. */
    List<String> write(Map<Part, String> values) {
        List<String> written = new ArrayList<>();
        for (String line : lines.split("%n")) {
            StringBuilder out = new StringBuilder();
            boolean any = false;
            for (int i = 0; i < line.length(); i++) {
                if (line.charAt(i) == '%' && i + 1 < line.length()) {
                    String value = value(values, line.charAt(++i));
                    any |= !value.isEmpty();
                    out.append(value);
                } else {
                    out.append(line.charAt(i));
                }
            }
            if (any) {
                for (String one : tidy(out.toString()).split("\n")) {
                    written.add(one.strip());
                }
            }
        }
        return List.copyOf(written);
    }

    private static String value(Map<Part, String> values, char sign) {
        for (Part part : Part.values()) {
            if (part.sign == sign) {
                return values.getOrDefault(part, "");
            }
        }
        return "";
    }

    /** A part that is missing leaves its commas and dashes behind. */
    private static String tidy(String line) {
        return line.replaceAll(" +", " ")
                .replaceAll("(^|\\n)[ ,/-]+", "$1")
                .replaceAll("[ ,/-]+(\\n|$)", "$1")
                .replaceAll(" ,", ",");
    }

    private static Map<String, CountryFormat> read() {
        Map<String, CountryFormat> all = new TreeMap<>();
        try (InputStream in = CountryFormat.class.getResourceAsStream("/delivery/countries.tsv");
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            lines.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
                String[] cells = line.split("\t", -1);
                Optional<Pattern> code = cells[2].isEmpty()
                        ? Optional.empty()
                        : Optional.of(Pattern.compile(cells[2], Pattern.CASE_INSENSITIVE));
                all.put(cells[0], new CountryFormat(cells[0], cells[1], code));
            });
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return all;
    }
}
