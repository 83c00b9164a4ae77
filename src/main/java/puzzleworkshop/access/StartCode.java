package puzzleworkshop.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * Anyone on the network may reach the first page before its owner does. So the owner's account is made, or a backup read
 * back, only with a code that the program says where only the person who started it can read it. With the embedded database
 * none is asked for at the computer that the program runs on.
 */
@Component
public class StartCode {

    /** Without letters and digits that are taken for each other; 12 of 30 are 58 bits, so guessing is hopeless. */
    private static final String LETTERS = "ABCDEFGHJKMNPQRSTVWXYZ23456789";

    private static final int LENGTH = 12;

    private final Accounts accounts;
    private final boolean onServer;
    private final String code;

    StartCode(Environment environment, Accounts accounts) {
        this.accounts = accounts;
        onServer = !environment.getProperty("spring.datasource.url", "").isBlank();
        code = made(new SecureRandom());
    }

    /**
     * @param address where the request comes from
     * @param passedOn whether a server in between sent it on: its address says nothing about who asks
     */
    public boolean isAsked(String address, boolean passedOn) {
        return onServer || passedOn || !isThisComputer(address);
    }

    private static boolean isThisComputer(String address) {
        try {
            // Numbers only: a name would be looked up.
            return address.matches("[0-9a-fA-F.:%]+")
                    && InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException malformed) {
            return false;
        }
    }

    /** Whether it is the code; small letters, blanks and dashes do not matter. */
    public boolean opens(String typed) {
        return MessageDigest.isEqual(bytes(plain(code)), bytes(plain(typed)));
    }

    @EventListener(ApplicationReadyEvent.class)
    void say() {
        if (accounts.none()) {
            System.out.printf(
                    onServer
                            ? "%n  The first page asks for this code:  %s%n%n"
                            : "%n  The first page can be opened at this computer. From another one it asks for this code:  %s%n%n",
                    code);
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
