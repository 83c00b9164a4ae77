package puzzleworkshop.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * On a server anyone on the network may reach the first page before its owner does. There the owner's account is made only
 * with a code that the program says where only the person who started it can read it. With the embedded database, on one's
 * own computer, none is asked for.
 */
@Component
public class StartCode {

    /** Without letters and digits that are taken for each other; 12 of 30 are 58 bits, so guessing is hopeless. */
    private static final String LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789";

    private static final int LENGTH = 12;

    private final Accounts accounts;
    private final Optional<String> code;

    StartCode(Environment environment, Accounts accounts) {
        this.accounts = accounts;
        boolean onServer = !environment.getProperty("spring.datasource.url", "").isBlank();
        code = onServer ? Optional.of(made(new SecureRandom())) : Optional.empty();
    }

    public boolean isAsked() {
        return code.isPresent();
    }

    /** Whether it is the code; small letters, blanks and dashes do not matter. */
    public boolean opens(String typed) {
        return code.map(StartCode::plain)
                .map(plain -> MessageDigest.isEqual(bytes(plain), bytes(plain(typed))))
                .orElse(true);
    }

    @EventListener(ApplicationReadyEvent.class)
    void say() {
        if (code.isPresent() && accounts.none()) {
            System.out.printf("%n  The first page asks for this code:  %s%n%n", code.get());
        }
    }

    private static String made(SecureRandom random) {
        String letters = random.ints(LENGTH, 0, LETTERS.length())
                .mapToObj(i -> LETTERS.substring(i, i + 1))
                .collect(Collectors.joining());
        return letters.replaceAll("(....)(?=.)", "$1-");
    }

    private static String plain(String typed) {
        return typed.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
