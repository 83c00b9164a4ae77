package puzzleworkshop.shell;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.util.HtmlUtils;
import puzzleworkshop.display.Formatter;

/** The last page, for requests that never reach a screen: plain, in words, without a stack trace. */
@RestController
class FaultPage implements ErrorController {

    private final Formatter figures;

    FaultPage(Formatter figures) {
        this.figures = figures;
    }

    @RequestMapping(path = "/error", produces = MediaType.TEXT_HTML_VALUE)
    ResponseEntity<String> page(HttpServletRequest request) {
        HttpStatus status = statusOf(request);
        Throwable cause = (Throwable) request.getAttribute(RequestDispatcher.ERROR_EXCEPTION);
        String words;
        if (status == HttpStatus.CONTENT_TOO_LARGE || cause instanceof MaxUploadSizeExceededException) {
            words = figures.text("fault.too-large");
        } else if (status.is5xxServerError()) {
            Object path = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI);
            words = figures.text(
                    "fault.page", Fault.log("request " + path, cause).mark());
        } else if (status == HttpStatus.FORBIDDEN) {
            words = figures.text("fault.forbidden");
        } else {
            words = figures.text("fault.nothing");
        }
        return ResponseEntity.status(status).body(html(status, words, request.getContextPath()));
    }

    private String html(HttpStatus status, String words, String context) {
        String title = figures.text(status.is5xxServerError() ? "fault.page.title" : "fault.nothing.title");
        return """
                <!doctype html>
                <html lang="en">
                <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
                <title>%s</title><link rel="stylesheet" href="%s/workshop.css"></head>
                <body><main class="pw-page"><h1>%s</h1><p>%s</p><p><a href="%s/">%s</a></p></main></body>
                </html>
                """.formatted(
                        HtmlUtils.htmlEscape(title),
                        context,
                        HtmlUtils.htmlEscape(title),
                        HtmlUtils.htmlEscape(words),
                        context,
                        HtmlUtils.htmlEscape(figures.text("fault.home")));
    }

    private static HttpStatus statusOf(HttpServletRequest request) {
        Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        HttpStatus status = code instanceof Integer number ? HttpStatus.resolve(number) : null;
        return status == null ? HttpStatus.NOT_FOUND : status;
    }
}
