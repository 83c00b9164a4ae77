package puzzleworkshop.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.ResponseCookie;
import org.springframework.security.authentication.RememberMeAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.RememberMeServices;
import org.springframework.security.web.authentication.logout.LogoutHandler;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps people signed in over a restart of the program: the browser holds a random token, the database its SHA-256. It is
 * good for exactly as long as a session would be: for the session's timeout after the browser was last seen, and until its
 * person signs out, or the account's password, role or right to enter changes. A token is not changed at each use, since
 * several requests of one page come at once after a restart.
 */
@Component
class StaySignedIn extends OncePerRequestFilter implements RememberMeServices, LogoutHandler {

    /** Links the two halves of Spring Security's mechanism within one run; no secret lies in it. */
    static final String KEY = "stay-signed-in";

    private static final String COOKIE = "pw-stay";
    private static final String IN_SESSION = StaySignedIn.class.getName();
    private static final Duration SEEN_EVERY = Duration.ofMinutes(5);
    private static final int TOKEN_BYTES = 32;

    private final StaySignedInStore store;
    private final Clock clock;
    private final Duration timeout;
    private final SecureRandom random = new SecureRandom();

    /** Kept in the session: which token belongs to it, and when the database heard of it last. */
    private record Kept(String hash, OffsetDateTime seen) implements java.io.Serializable {}

    StaySignedIn(StaySignedInStore store, Clock clock, @Value("${server.servlet.session.timeout}") Duration timeout) {
        this.store = store;
        this.clock = clock;
        this.timeout = timeout;
    }

    @Override
    public Authentication autoLogin(HttpServletRequest request, HttpServletResponse response) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        return token(request)
                .map(StaySignedIn::sha256)
                .flatMap(hash -> store.seen(hash, now.minus(timeout), now).map(account -> {
                    request.getSession().setAttribute(IN_SESSION, new Kept(hash, now));
                    Person person = Person.of(account);
                    return new RememberMeAuthenticationToken(KEY, person, person.getAuthorities());
                }))
                .orElse(null);
    }

    @Override
    public void loginSuccess(HttpServletRequest request, HttpServletResponse response, Authentication in) {
        if (!(in.getPrincipal() instanceof Person person)) {
            return;
        }
        byte[] bytes = new byte[TOKEN_BYTES];
        random.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        OffsetDateTime now = OffsetDateTime.now(clock);
        store.add(sha256(token), new Account.AccountId(person.account()), now, now.minus(timeout));
        request.getSession().setAttribute(IN_SESSION, new Kept(sha256(token), now));
        setCookie(request, response, token, Duration.ofDays(30));
    }

    @Override
    public void loginFail(HttpServletRequest request, HttpServletResponse response) {
        // Who mistypes a password on a signed-in browser stays what it was.
    }

    @Override
    public void logout(HttpServletRequest request, HttpServletResponse response, Authentication in) {
        token(request).map(StaySignedIn::sha256).ifPresent(store::forget);
        kept(request).map(Kept::hash).ifPresent(store::forget);
        if (!response.isCommitted()) {
            setCookie(request, response, "", Duration.ZERO);
        }
    }

    /** Says now and then that the browser was seen. */
    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        OffsetDateTime now = OffsetDateTime.now(clock);
        kept(request).filter(kept -> kept.seen().plus(SEEN_EVERY).isBefore(now)).ifPresent(kept -> {
            store.seen(kept.hash(), now.minus(timeout), now);
            request.getSession().setAttribute(IN_SESSION, new Kept(kept.hash(), now));
        });
        chain.doFilter(request, response);
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        // Only what is done on a screen counts, not what a page sends by itself while nobody is there.
        return !"uidl".equals(queryPart(request, "v-r"));
    }

    private static String queryPart(HttpServletRequest request, String name) {
        String query = request.getQueryString();
        if (query == null) {
            return "";
        }
        for (String part : query.split("&")) {
            if (part.startsWith(name + "=")) {
                return part.substring(name.length() + 1);
            }
        }
        return "";
    }

    private static Optional<Kept> kept(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return session != null && session.getAttribute(IN_SESSION) instanceof Kept kept
                ? Optional.of(kept)
                : Optional.empty();
    }

    private static Optional<String> token(HttpServletRequest request) {
        Cookie[] cookies = request.getCookies();
        if (cookies == null) {
            return Optional.empty();
        }
        for (Cookie cookie : cookies) {
            if (cookie.getName().equals(COOKIE) && cookie.getValue().length() > TOKEN_BYTES) {
                return Optional.of(cookie.getValue());
            }
        }
        return Optional.empty();
    }

    private static void setCookie(
            HttpServletRequest request, HttpServletResponse response, String value, Duration age) {
        String path = request.getContextPath().isEmpty() ? "/" : request.getContextPath();
        response.addHeader(
                "Set-Cookie",
                ResponseCookie.from(COOKIE, value)
                        .httpOnly(true)
                        .secure(request.isSecure())
                        .sameSite("Lax")
                        .path(path)
                        .maxAge(age)
                        .build()
                        .toString());
    }

    private static String sha256(String token) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.US_ASCII)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
