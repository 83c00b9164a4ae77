package puzzleworkshop.access;

import java.util.Collection;
import java.util.List;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;

/** The one who is signed in, as Spring Security carries it in the session. */
record Person(long account, String name, Role role) implements UserDetails {

    static Person of(Account account) {
        return new Person(account.id().value(), account.name(), account.role());
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return List.of(new SimpleGrantedAuthority("ROLE_" + role));
    }

    /** Not kept: it was compared once and is not needed again. */
    @Override
    public String getPassword() {
        return null;
    }

    @Override
    public String getUsername() {
        return name;
    }
}
