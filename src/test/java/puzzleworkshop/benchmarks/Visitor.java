package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One signed-in person as the program sees them: a page is opened with the requests that a browser sends (the page itself,
 * the start of its screen, the way to the view, and the rows of a list that is filled as one scrolls), without drawing it.
 */
final class Visitor {

    private static final Pattern LIST = Pattern.compile(
            "\"node\":(\\d+),\"type\":\"put\",\"key\":\"tag\",\"feat\":0,\"value\":\"vaadin-(?:grid|virtual-list)\"");

    private static final Pattern PART = Pattern.compile("\"type\":\"attach\"");

    private final HttpClient browser = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();
    private final String address;

    Visitor(String address) {
        this.address = address;
    }

    void signIn(String name, String password) throws IOException, InterruptedException {
        String token = found("name=\"_csrf\" content=\"([^\"]+)\"", get("sign-in"));
        String form = "username=" + encoded(name) + "&password=" + encoded(password) + "&_csrf=" + encoded(token);
        HttpResponse<String> answer = browser.send(
                HttpRequest.newBuilder(URI.create(address + "/sign-in"))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(BodyPublishers.ofString(form))
                        .build(),
                BodyHandlers.ofString());
        if (answer.uri().getPath().contains("sign-in")) {
            throw new IllegalStateException("The sign-in was refused: " + answer.uri());
        }
    }

    /**
     * A page once its content is there.
     *
     * @param ms until then
     * @param parts elements and texts that the program made for it: no load of the machine changes their number
     * @param kilobytes of the answers that brought them
     */
    record Opened(double ms, int parts, double kilobytes) {}

    /** Opens a page and leaves it again. */
    Opened open(String path) throws IOException, InterruptedException {
        long begin = System.nanoTime();
        get(path);
        String start =
                get("?v-r=init&location=" + encoded(path) + "&query=&v-sh=900&v-sw=1440&v-wh=900&v-ww=1440&v-bh=900"
                        + "&v-bw=1440&v-tzo=0&v-dstd=0&v-rtzo=0&v-dston=false&v-tzid=UTC&v-wn=v-1&v-td=false&v-pr=1");
        String ui = found("\"v-uiId\":(\\d+)", start);
        String key = found("\"Vaadin-Security-Key\":\"([^\"]+)\"", start);
        String view = tell(ui, key, 0, """
                {"type":"event","node":1,"event":"ui-navigate","data":{"route":"/%s","query":"","appShellTitle":"",\
                "historyState":{"idx":0},"trigger":""}}""".formatted(path));
        List<String> rows = new ArrayList<>();
        Matcher list = LIST.matcher(view);
        while (list.find()) {
            rows.add("""
                    {"type":"publishedEventHandler","node":%s,"templateEventMethodName":"setViewportRange",\
                    "templateEventMethodArgs":[0,50],"promise":0}""".formatted(list.group(1)));
        }
        String filled = rows.isEmpty() ? "" : tell(ui, key, 1, String.join(",", rows));
        double took = (System.nanoTime() - begin) / 1e6;
        post(ui, "{\"csrfToken\":\"" + key + "\",\"rpc\":[],\"syncId\":-1,\"clientId\":-1,\"UNLOAD\":true}");
        return new Opened(took, parts(start) + parts(view) + parts(filled), (view.length() + filled.length()) / 1024.0);
    }

    private static int parts(String answer) {
        return (int) PART.matcher(answer).results().count();
    }

    private String tell(String ui, String key, int sequence, String calls) throws IOException, InterruptedException {
        String answer = post(
                ui,
                "{\"csrfToken\":\"%s\",\"rpc\":[%s],\"syncId\":%d,\"clientId\":%d}"
                        .formatted(key, calls, sequence, sequence));
        if (!answer.contains("\"syncId\"") || answer.contains("\"appError\"")) {
            throw new IllegalStateException(
                    "The program answered: " + answer.substring(0, Math.min(answer.length(), 500)));
        }
        return answer;
    }

    private String post(String ui, String body) throws IOException, InterruptedException {
        return browser.send(
                        HttpRequest.newBuilder(URI.create(address + "/?v-r=uidl&v-uiId=" + ui))
                                .header("Content-Type", "application/json; charset=UTF-8")
                                .POST(BodyPublishers.ofString(body))
                                .build(),
                        BodyHandlers.ofString())
                .body();
    }

    private String get(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = browser.send(
                HttpRequest.newBuilder(URI.create(address + "/" + path))
                        .header("Accept", "text/html,*/*")
                        .build(),
                BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException("/" + path + " answered " + answer.statusCode());
        }
        return answer.body();
    }

    private static String found(String pattern, String text) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException(
                    "No " + pattern + " in: " + text.substring(0, Math.min(text.length(), 500)));
        }
        return matcher.group(1);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
