package puzzleworkshop.access;

import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;

/** Signs somebody in for the test's thread, as the sign-in page would. */
public final class AsPerson {

    private AsPerson() {}

    public static void owner(String name) {
        in(new Person(1, name, Role.OWNER));
    }

    public static void maker(String name) {
        in(new Person(2, name, Role.MAKER));
    }

    public static void nobody() {
        SecurityContextHolder.clearContext();
    }

    private static void in(Person person) {
        SecurityContextHolder.getContext()
                .setAuthentication(new UsernamePasswordAuthenticationToken(person, null, person.getAuthorities()));
    }
}
