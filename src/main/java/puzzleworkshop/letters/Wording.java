package puzzleworkshop.letters;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * How one kind of letter is worded: plain text with fields in braces. What stands in square brackets is left out when one
 * of its fields has nothing to say, so that a letter without a tracking number does not speak of one. Doubled braces and
 * brackets stand for themselves.
 *
 * @param subject one line
 * @param body paragraphs, an empty line between them
 */
public record Wording(LetterKind kind, String subject, String body) {

    static final int MOST_SUBJECT = 200;
    static final int MOST_BODY = 8_000;

    public Wording {
        subject = subject.strip();
        body = body.replace("\r\n", "\n").replace('\r', '\n').strip();
    }

    /** Subject and body with their fields filled in, and the fields outside brackets that had nothing to say. */
    public record Filled(String subject, String body, Set<LetterField> missing) {}

    /**
     * Itself, when it can be kept.
     *
     * @throws Refused when it is empty or too long, a brace or bracket has no partner, or a field is unknown or not known
     *     for this kind
     */
    public Wording checked() {
        if (subject.isEmpty() || body.isEmpty()) {
            throw new Refused("letters.wording.empty");
        }
        if (subject.length() > MOST_SUBJECT || subject.indexOf('\n') >= 0) {
            throw new Refused("letters.wording.subject", MOST_SUBJECT);
        }
        if (body.length() > MOST_BODY) {
            throw new Refused("letters.wording.long", MOST_BODY);
        }
        filled(Map.of());
        return this;
    }

    /** @throws Refused as {@link #checked()} does for braces, brackets and fields */
    public Filled filled(Map<LetterField, String> values) {
        Set<LetterField> missing = EnumSet.noneOf(LetterField.class);
        Map<LetterField, String> oneLine = new EnumMap<>(LetterField.class);
        values.forEach((field, value) ->
                oneLine.put(field, value.replaceAll("\\s*\\R\\s*", ", ").strip()));
        String head = new Filling(kind, subject, oneLine, missing).text();
        String text = new Filling(kind, body, values, missing).text();
        // a part that was left out may leave a line of nothing behind
        return new Filled(
                head.replaceAll("\\s+", " ").strip(),
                text.replaceAll("[ \\t]+\n", "\n").replaceAll("\n{3,}", "\n\n").strip(),
                missing);
    }

    /** One text, read once from its beginning to its end. */
    private static final class Filling {

        private final LetterKind kind;
        private final String text;
        private final Map<LetterField, String> values;
        private final Set<LetterField> missing;
        private final StringBuilder out = new StringBuilder();
        private int part = -1;
        private boolean partIsEmpty;

        Filling(LetterKind kind, String text, Map<LetterField, String> values, Set<LetterField> missing) {
            this.kind = kind;
            this.text = text;
            this.values = values;
            this.missing = missing;
        }

        String text() {
            for (int i = 0; i < text.length(); i++) {
                char sign = text.charAt(i);
                if ("{}[]".indexOf(sign) < 0) {
                    out.append(sign);
                } else if (i + 1 < text.length() && text.charAt(i + 1) == sign) {
                    out.append(sign);
                    i++;
                } else if (sign == '{') {
                    i = field(i);
                } else if (sign == '[') {
                    begin(i);
                } else if (sign == ']') {
                    end(i);
                } else {
                    throw alone(sign, i);
                }
            }
            if (part >= 0) {
                throw new Refused("letters.wording.open", "[");
            }
            return out.toString();
        }

        private int field(int at) {
            int end = text.indexOf('}', at);
            if (end < 0) {
                throw alone('{', at);
            }
            String word = text.substring(at + 1, end);
            LetterField field = LetterField.of(word)
                    .filter(kind.fields()::contains)
                    .orElseThrow(() -> new Refused(
                            "letters.wording.field",
                            word.length() > 40 ? word.substring(0, 40) + "…" : word,
                            Sentence.of(kind.textKey()),
                            kind.fields().stream()
                                    .map(known -> "{" + known.word() + "}")
                                    .collect(Collectors.joining(" "))));
            String value = Optional.ofNullable(values.get(field)).orElse("");
            if (value.isBlank()) {
                if (part >= 0) {
                    partIsEmpty = true;
                } else {
                    missing.add(field);
                }
            }
            out.append(value.strip());
            return end;
        }

        private void begin(int at) {
            if (part >= 0) {
                throw alone('[', at);
            }
            part = out.length();
            partIsEmpty = false;
        }

        private void end(int at) {
            if (part < 0) {
                throw alone(']', at);
            }
            if (partIsEmpty) {
                out.setLength(part);
            }
            part = -1;
        }

        private Refused alone(char sign, int at) {
            String before = text.substring(Math.max(0, at - 20), at).replace('\n', ' ');
            return new Refused("letters.wording.alone", String.valueOf(sign), before);
        }
    }
}
