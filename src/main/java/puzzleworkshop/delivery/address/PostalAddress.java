package puzzleworkshop.delivery.address;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.measure.Sentence;

/**
 * Where a parcel goes, in its parts.
 *
 * @param country ISO 3166-1, two letters
 * @param parts what is known; street may have several lines
 */
public record PostalAddress(String country, Map<Part, String> parts) {

    private static final int LONGEST = 200;

    public PostalAddress {
        country = country.toUpperCase(Locale.ROOT);
        Map<Part, String> plain = new EnumMap<>(Part.class);
        for (Map.Entry<Part, String> part : parts.entrySet()) {
            String value = part.getValue().strip();
            if (part.getKey() == Part.POSTAL_CODE) {
                value = CountryFormat.of(country).plainCode(value);
            }
            if (!value.isEmpty()) {
                plain.put(part.getKey(), value);
            }
        }
        parts = Map.copyOf(plain);
    }

    public String part(Part part) {
        return parts.getOrDefault(part, "");
    }

    /** What is wrong with it, by the part it is about; empty when it can be written on a parcel. */
    public Map<Part, Sentence> faults() {
        CountryFormat format = CountryFormat.of(country);
        Map<Part, Sentence> faults = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            if (format.needs(part) && part(part).isEmpty()) {
                faults.put(part, Sentence.of("delivery.address.missing", Sentence.of(part.textKey())));
            } else if (part(part).length() > LONGEST) {
                faults.put(part, Sentence.of("delivery.address.long", Sentence.of(part.textKey()), LONGEST));
            }
        }
        String code = part(Part.POSTAL_CODE);
        if (!code.isEmpty() && !format.isCode(code)) {
            faults.put(
                    Part.POSTAL_CODE,
                    Sentence.of("delivery.address.code", code, CountryFormat.name(country, Locale.ENGLISH)));
        }
        return faults;
    }

    /**
     * As it is written on a parcel.
     *
     * @param from the country it is sent from: to another one the country stands in the last line, in capitals and in
     *     English (Universal Postal Convention; from memory)
     */
    public List<String> lines(String from) {
        List<String> lines = new ArrayList<>(CountryFormat.of(country).write(parts));
        if (!country.equalsIgnoreCase(from)) {
            lines.add(CountryFormat.name(country, Locale.ENGLISH).toUpperCase(Locale.ENGLISH));
        }
        return List.copyOf(lines);
    }

    /**
     * A proposal from an address kept as plain lines: the last line that holds one of the country's postal codes is that of
     * town and code, what stands above is street, and name where there is more than one line.
     */
    public static PostalAddress proposed(String name, String plain, String country) {
        CountryFormat format = CountryFormat.of(country);
        Map<Part, String> parts = new EnumMap<>(Part.class);
        parts.put(Part.NAME, name);
        List<String> lines =
                plain.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
        int last = lines.size() - 1;
        for (int i = last; i >= 0 && !parts.containsKey(Part.POSTAL_CODE); i--) {
            Optional<String> code = codeIn(lines.get(i), format);
            if (code.isPresent()) {
                parts.put(Part.POSTAL_CODE, code.get());
                String town = lines.get(i).replace(code.get(), "").replaceAll("^[\\s,-]+|[\\s,-]+$", "");
                int townAt = i;
                if (town.isEmpty() && i > 0) {
                    townAt = i - 1;
                    town = lines.get(townAt);
                }
                parts.put(Part.TOWN, town);
                parts.put(Part.STREET, String.join("\n", lines.subList(0, townAt)));
            }
        }
        if (!parts.containsKey(Part.TOWN)) {
            parts.put(Part.STREET, String.join("\n", lines.isEmpty() ? lines : lines.subList(0, Math.max(1, last))));
            parts.put(Part.TOWN, last > 0 ? lines.get(last) : "");
        }
        return new PostalAddress(country, parts);
    }

    private static Optional<String> codeIn(String line, CountryFormat format) {
        if (format.postalCode().isEmpty()) {
            return Optional.empty();
        }
        String[] words = line.split("[\\s,]+");
        for (int length = Math.min(2, words.length); length > 0; length--) {
            for (int start = 0; start + length <= words.length; start++) {
                String tried = String.join(" ", List.of(words).subList(start, start + length));
                if (format.isCode(format.plainCode(tried))) {
                    return Optional.of(tried);
                }
            }
        }
        return Optional.empty();
    }
}
