package puzzleworkshop.access;

import jakarta.servlet.http.HttpSession;
import jakarta.servlet.http.HttpSessionEvent;
import jakarta.servlet.http.HttpSessionIdListener;
import jakarta.servlet.http.HttpSessionListener;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.security.core.session.SessionInformation;
import org.springframework.security.core.session.SessionRegistry;
import org.springframework.stereotype.Component;
import puzzleworkshop.access.Account.AccountId;

/**
 * Ends what is open of an account whose password, role or right to enter has changed. At once: a page that only waited for
 * its next request would go on receiving news.
 */
@Component
class OpenSessions implements HttpSessionListener, HttpSessionIdListener {

    private static final long AFTER_ITS_ANSWER_MILLIS = 1000;

    private final SessionRegistry registry;
    private final StaySignedInStore stay;
    private final Map<String, HttpSession> open = new ConcurrentHashMap<>();

    OpenSessions(SessionRegistry registry, StaySignedInStore stay) {
        this.registry = registry;
        this.stay = stay;
    }

    void end(AccountId id) {
        stay.forget(id);
        registry.getAllPrincipals().stream()
                .filter(principal -> principal instanceof Person person && person.account() == id.value())
                .flatMap(principal -> registry.getAllSessions(principal, false).stream())
                .forEach(this::end);
    }

    private void end(SessionInformation information) {
        information.expireNow();
        HttpSession session = open.get(information.getSessionId());
        if (session != null) {
            // In a thread of its own: who changes an own password is inside that very session now.
            Thread.ofVirtual().name("session-end").start(() -> invalidate(session));
        }
    }

    private static void invalidate(HttpSession session) {
        try {
            Thread.sleep(AFTER_ITS_ANSWER_MILLIS);
            session.invalidate();
        } catch (IllegalStateException endedMeanwhile) {
            // all the better
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void sessionCreated(HttpSessionEvent event) {
        open.put(event.getSession().getId(), event.getSession());
    }

    @Override
    public void sessionDestroyed(HttpSessionEvent event) {
        open.remove(event.getSession().getId());
    }

    @Override
    public void sessionIdChanged(HttpSessionEvent event, String before) {
        open.remove(before);
        open.put(event.getSession().getId(), event.getSession());
    }
}
