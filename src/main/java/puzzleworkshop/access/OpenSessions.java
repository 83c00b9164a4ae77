package puzzleworkshop.access;

import org.springframework.security.core.session.SessionInformation;
import org.springframework.security.core.session.SessionRegistry;
import org.springframework.stereotype.Component;
import puzzleworkshop.access.Account.AccountId;

/** Ends what is open of an account whose password, role or right to enter has changed: at its next request. */
@Component
class OpenSessions {

    private final SessionRegistry registry;

    OpenSessions(SessionRegistry registry) {
        this.registry = registry;
    }

    void end(AccountId id) {
        registry.getAllPrincipals().stream()
                .filter(principal -> principal instanceof Person person && person.account() == id.value())
                .flatMap(principal -> registry.getAllSessions(principal, false).stream())
                .forEach(SessionInformation::expireNow);
    }
}
