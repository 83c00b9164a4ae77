package puzzleworkshop.proofs;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * A link that leads to nothing answers 404, as any other address does; the page that comes with it says so in words. The
 * page itself is shown by a script, long after its status was sent.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
class ClosedLinkStatus extends OncePerRequestFilter {

    private static final Pattern LINK = Pattern.compile("/p(?:/([^/]*))?/?");

    private final CustomerDesk desk;

    ClosedLinkStatus(CustomerDesk desk) {
        this.desk = desk;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain next)
            throws ServletException, IOException {
        Matcher link = LINK.matcher(
                request.getRequestURI().substring(request.getContextPath().length()));
        // What a page asks after it has come carries a query; only the page itself is judged.
        if (request.getMethod().equals("GET") && request.getQueryString() == null && link.matches()) {
            String token = link.group(1) == null ? "" : link.group(1);
            if (!desk.opens(new Token(token), request.getRemoteAddr())) {
                response.setStatus(HttpServletResponse.SC_NOT_FOUND);
            }
        }
        next.doFilter(request, response);
    }
}
