package puzzleworkshop.measure;

import java.util.List;

/**
 * Something to tell a person, before it is put into words: the key of a text and what goes into it. Screens and papers
 * turn it into the workshop's language.
 *
 * @param key of a text in {@code texts/<room>.properties}, starting with the room's name
 * @param arguments numbers, texts, {@link Length}s, {@link Money}…, shown in the workshop's units
 */
public record Sentence(String key, List<Object> arguments) {

    public Sentence {
        arguments = List.copyOf(arguments);
    }

    public static Sentence of(String key, Object... arguments) {
        return new Sentence(key, List.of(arguments));
    }
}
