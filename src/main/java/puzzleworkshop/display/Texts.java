package puzzleworkshop.display;

import com.vaadin.flow.i18n.I18NProvider;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;

/**
 * Every sentence the program says, from {@code texts/<room>.properties}, one file for each room. A key that stands in
 * two files stops the start: a sentence has one home. A key that is missing is shown as itself and logged once.
 */
@Component
public class Texts implements I18NProvider {

    /** Dates and numbers are written in this way; the language of the texts is English. */
    public static final Locale LOCALE = Locale.UK;

    private static final Logger LOG = LoggerFactory.getLogger(Texts.class);
    /** A format where something is filled in, else the sentence itself. */
    private final Map<String, Object> patterns;

    private final Map<String, Boolean> missing = new java.util.concurrent.ConcurrentHashMap<>();

    public Texts() {
        this.patterns = load();
    }

    @Override
    public List<Locale> getProvidedLocales() {
        return List.of(LOCALE);
    }

    @Override
    public String getTranslation(String key, Locale locale, Object... arguments) {
        Object pattern = patterns.get(key);
        if (pattern == null) {
            if (missing.putIfAbsent(key, true) == null) {
                LOG.warn("There is no text for '{}'", key);
            }
            return key;
        }
        // Reading a pattern costs more than filling it in, and a page says hundreds of sentences.
        return pattern instanceof MessageFormat format
                ? ((MessageFormat) format.clone()).format(arguments)
                : (String) pattern;
    }

    public boolean has(String key) {
        return patterns.containsKey(key);
    }

    private static Object pattern(String text) {
        MessageFormat format = new MessageFormat(text, LOCALE);
        return format.getFormats().length == 0 ? format.format(null) : format;
    }

    private static Map<String, Object> load() {
        Map<String, Object> all = new HashMap<>();
        try {
            for (Resource file :
                    new PathMatchingResourcePatternResolver().getResources("classpath*:texts/*.properties")) {
                Properties properties = new Properties();
                try (Reader reader = new InputStreamReader(file.getInputStream(), StandardCharsets.UTF_8)) {
                    properties.load(reader);
                }
                for (String key : properties.stringPropertyNames()) {
                    if (all.put(key, pattern(properties.getProperty(key))) != null) {
                        throw new IllegalStateException("The text '" + key + "' stands in two files, one is " + file);
                    }
                }
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return Map.copyOf(all);
    }
}
