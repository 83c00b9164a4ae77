package puzzleworkshop.access;

import org.springframework.security.authentication.AnonymousAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import puzzleworkshop.workshop.SignedIn;

@Component
class SignedInPerson implements SignedIn {

    @Override
    public String name() {
        Authentication in = SecurityContextHolder.getContext().getAuthentication();
        return in != null && in.getPrincipal() instanceof Person person ? person.name() : SignedIn.NOBODY;
    }

    @Override
    public boolean isOwner() {
        Authentication in = SecurityContextHolder.getContext().getAuthentication();
        return in != null && in.isAuthenticated() && hasRole(in, Role.OWNER);
    }

    @Override
    public boolean isMaker() {
        Authentication in = SecurityContextHolder.getContext().getAuthentication();
        return in != null
                && in.isAuthenticated()
                && !(in instanceof AnonymousAuthenticationToken)
                && !hasRole(in, Role.OWNER);
    }

    private static boolean hasRole(Authentication in, Role role) {
        return in.getAuthorities().stream().anyMatch(held -> ("ROLE_" + role).equals(held.getAuthority()));
    }
}
