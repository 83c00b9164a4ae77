package puzzleworkshop.database;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.HtmlUtils;
import puzzleworkshop.display.Texts;

/**
 * While the embedded database is being started again, every page is a plain one that says so and looks again by itself. What
 * an open screen sends meanwhile is answered as not available, so that the browser keeps it and sends it again.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class PageWhileDatabaseIsAway extends OncePerRequestFilter {

    private static final int LOOK_AGAIN_SECONDS = 5;

    private final Optional<EmbeddedServer> server;
    private final Texts texts;

    PageWhileDatabaseIsAway(Optional<EmbeddedServer> server, Texts texts) {
        this.server = server;
        this.texts = texts;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        EmbeddedServer own = server.orElse(null);
        if (own == null || own.isUp() || needsNoDatabase(request)) {
            chain.doFilter(request, response);
            return;
        }
        response.setStatus(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
        response.setIntHeader("Retry-After", LOOK_AGAIN_SECONDS);
        response.setHeader("Cache-Control", "no-store");
        response.setContentType("text/html;charset=UTF-8");
        response.getOutputStream().write(page(request.getContextPath()).getBytes(StandardCharsets.UTF_8));
    }

    private static boolean needsNoDatabase(HttpServletRequest request) {
        String path = request.getRequestURI().toLowerCase(Locale.ROOT);
        return path.endsWith("/healthz") || path.endsWith(".css") || path.endsWith(".js") || path.endsWith(".svg");
    }

    private String page(String context) {
        String title = HtmlUtils.htmlEscape(texts.getTranslation("database.away.title", Texts.LOCALE));
        String words = HtmlUtils.htmlEscape(texts.getTranslation("database.away", Texts.LOCALE));
        return """
            <!doctype html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="refresh" content="%d"><title>%s</title>
            <link rel="stylesheet" href="%s/workshop.css"></head>
            <body><main class="pw-page"><h1>%s</h1><p>%s</p></main></body>
            </html>
            """.formatted(LOOK_AGAIN_SECONDS, title, context, title, words);
    }
}
