package puzzleworkshop.access;

import java.time.Duration;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/** Lets in who knows the name and the password, and makes who keeps guessing wait. */
class PasswordAuthenticationProvider implements AuthenticationProvider {

    private final Accounts accounts;
    private final SignInThrottle throttle;

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
        Duration wait = throttle.waitFor(name, address);
        if (wait.isPositive()) {
            throw new MustWait(wait);
        }
        Person person = accounts.recognise(name, String.valueOf(asked.getCredentials()))
                .map(Person::of)
                .orElse(null);
        if (person == null) {
            throttle.wrong(name, address);
            throw new BadCredentialsException("Name and password do not go together");
        }
        throttle.right(name, address);
        UsernamePasswordAuthenticationToken in =
                UsernamePasswordAuthenticationToken.authenticated(person, null, person.getAuthorities());
        in.setDetails(asked.getDetails());
        return in;
    }

    @Override
    public boolean supports(Class<?> authentication) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
    }
}
