package puzzleworkshop.access;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/** Lets in who knows the name and the password, and makes who keeps guessing wait. */
class PasswordAuthenticationProvider implements AuthenticationProvider {

    private final Accounts accounts;
    private static final int CHECKS_AT_ONCE = 2;
    private static final long LONGEST_QUEUE_SECONDS = 3;

    private final SignInThrottle throttle;
    private final Semaphore checks = new Semaphore(CHECKS_AT_ONCE, true);

    PasswordAuthenticationProvider(Accounts accounts, SignInThrottle throttle) {
        this.accounts = accounts;
        this.throttle = throttle;
    }

    /** Too many wrong tries; even the right password is not looked at until the wait is over. */
    static class MustWait extends AuthenticationException {

        private final Duration wait;

        MustWait(Duration wait) {
            super("Too many wrong tries, wait " + wait);
            this.wait = wait;
        }

        long seconds() {
            return Math.max(1, wait.plusMillis(999).toSeconds());
        }
    }

    @Override
    public Authentication authenticate(Authentication asked) {
        String name = asked.getName();
        String address = asked.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        Duration wait = throttle.begin(name, address);
        if (wait.isPositive()) {
            throw new MustWait(wait);
        }
        Person person = check(name, address, String.valueOf(asked.getCredentials()))
                .map(Person::of)
                .orElseThrow(() -> new BadCredentialsException("Name and password do not go together"));
        throttle.right(name, address);
        UsernamePasswordAuthenticationToken in =
                UsernamePasswordAuthenticationToken.authenticated(person, null, person.getAuthorities());
        in.setDetails(asked.getDetails());
        return in;
    }

    /** A few at a time, whoever asks: comparing a password is made to cost a processor a tenth of a second. */
    private Optional<Account> check(String name, String address, String password) {
        try {
            if (!checks.tryAcquire(LONGEST_QUEUE_SECONDS, TimeUnit.SECONDS)) {
                throttle.notLookedAt(name, address);
                throw new MustWait(Duration.ofSeconds(LONGEST_QUEUE_SECONDS));
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throttle.notLookedAt(name, address);
            throw new MustWait(Duration.ofSeconds(LONGEST_QUEUE_SECONDS));
        }
        try {
            return accounts.recognise(name, password);
        } finally {
            checks.release();
        }
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
    }
}
