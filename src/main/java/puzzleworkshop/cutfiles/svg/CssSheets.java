package puzzleworkshop.cutfiles.svg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.values.CssText;
import puzzleworkshop.cutfiles.svg.values.Scanner;
import puzzleworkshop.cutfiles.svg.values.Unreadable;

/**
 * The style sheets of one SVG file: which declarations hold for an element, the weightiest last (CSS Cascade level 4:
 * importance, specificity, order; presentation attributes weigh nothing, SVG 2, 6.6).
 */
final class CssSheets {

    /** @param value as written; @param important whether it outweighs the others */
    record Declaration(String name, String value, boolean important) {}

    private record Rule(CssSelector selector, List<Declaration> declarations, int order) {}

    private static final int MOST_RULES = 50_000;
    private static final int DEEPEST = 8;
    private static final int LONGEST_SELECTOR = 2_000;

    private final FoundLines found;
    private final List<Rule> everywhere = new ArrayList<>();
    private final Map<String, List<Rule>> byWord = new HashMap<>();
    private int rules;

    CssSheets(FoundLines found) {
        this.found = found;
    }

    void add(SvgNode sheet) {
        String type = sheet.attribute("type").strip();
        if (!type.isEmpty() && !type.equalsIgnoreCase("text/css")) {
            return;
        }
        if (applies(sheet.attribute("media"))) {
            rules(CssText.withoutComments(sheet.text.toString()), 0);
        }
    }

    private void rules(String text, int depth) {
        if (depth > DEEPEST) {
            found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", "@media");
            return;
        }
        int at = 0;
        while (at < text.length()) {
            if (Scanner.isBlank(text.charAt(at)) || text.charAt(at) == ';' || text.charAt(at) == '}') {
                at++;
                continue;
            }
            int open = CssText.find(text, at, text.charAt(at) == '@' ? "{;" : "{");
            String head = text.substring(at, open).strip();
            int close = open < text.length() && text.charAt(open) == '{' ? CssText.find(text, open + 1, "}") : open;
            String body = close > open ? text.substring(open + 1, close) : "";
            if (head.startsWith("@")) {
                atRule(head, body, depth);
            } else if (open < text.length()) {
                rule(head, body);
            }
            at = close + 1;
            found.limit().steps(1);
        }
    }

    private void atRule(String head, String body, int depth) {
        String name = head.split("[\\s(]", 2)[0].toLowerCase(Locale.ROOT);
        switch (name) {
            case "@media" -> {
                if (applies(head.substring(name.length()))) {
                    rules(body, depth + 1);
                }
            }
            case "@import" -> found.count(Remark.Kind.UNSURE, "cutfiles.svg.outside");
            // neither moves nor hides a line
            case "@charset", "@font-face", "@namespace", "@page", "@keyframes", "@-webkit-keyframes", "@property" -> {}
            default -> found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", name);
        }
    }

    /** Whether a sheet for these media holds on a screen of the usual, light kind. */
    private boolean applies(String media) {
        String plain = media.strip().toLowerCase(Locale.ROOT);
        if (plain.isEmpty()) {
            return true;
        }
        boolean some = false;
        for (String query : CssText.split(plain, ',')) {
            switch (query.strip().replaceAll("\\s+", " ")) {
                case "all", "screen", "only screen", "(prefers-color-scheme: light)", "(prefers-color-scheme:light)" ->
                    some = true;
                case "print", "speech", "(prefers-color-scheme: dark)", "(prefers-color-scheme:dark)" -> {}
                default -> found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", "@media");
            }
        }
        return some;
    }

    private void rule(String head, String body) {
        List<CssSelector> selectors;
        try {
            if (head.length() > LONGEST_SELECTOR) {
                throw new Unreadable("a selector of " + head.length() + " letters");
            }
            selectors = CssSelector.list(head);
        } catch (Unreadable unknown) {
            if (!head.contains("::")) {
                found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", shortened(head));
            }
            return;
        }
        List<Declaration> declarations = declarations(body);
        rules += selectors.size();
        if (rules > MOST_RULES) {
            found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", shortened(head));
            return;
        }
        for (CssSelector selector : selectors) {
            everywhereOrBy(selector, head).add(new Rule(selector, declarations, rules));
        }
    }

    /** Rules for one class or one name alone, which most are, are looked up; all others are tried on every element. */
    private List<Rule> everywhereOrBy(CssSelector selector, String head) {
        String plain = head.strip();
        boolean single = selector.compounds().size() == 1 && plain.matches("[.#]?[A-Za-z_][A-Za-z0-9_-]*");
        return single ? byWord.computeIfAbsent(plain, word -> new ArrayList<>()) : everywhere;
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }

    /** What stands between the braces, or in an attribute 'style'. */
    List<Declaration> declarations(String body) {
        List<Declaration> all = new ArrayList<>();
        for (String part : CssText.split(body, ';')) {
            int colon = part.indexOf(':');
            if (colon < 0) {
                continue;
            }
            if (part.indexOf('{') >= 0) {
                found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", "{");
                continue;
            }
            String name = part.substring(0, colon).strip();
            String value = part.substring(colon + 1).strip();
            int mark = value.lastIndexOf('!');
            boolean important = mark >= 0 && value.substring(mark + 1).strip().equalsIgnoreCase("important");
            all.add(new Declaration(
                    name.startsWith("--") ? name : name.toLowerCase(Locale.ROOT).intern(),
                    important ? value.substring(0, mark).strip() : value,
                    important));
        }
        return all;
    }

    /** Declarations of the sheets for an element, the weightiest last; importance is left to the caller. */
    List<Declaration> of(SvgNode node) {
        if (everywhere.isEmpty() && byWord.isEmpty()) {
            return List.of();
        }
        List<Rule> matching = new ArrayList<>();
        for (Rule rule : everywhere) {
            if (rule.selector().matches(node, found.limit())) {
                matching.add(rule);
            }
        }
        if (!byWord.isEmpty()) {
            matching.addAll(byWord.getOrDefault(node.name, List.of()));
            matching.addAll(byWord.getOrDefault("#" + node.attribute("id"), List.of()));
            Set<String> words = new HashSet<>(
                    java.util.Arrays.asList(node.attribute("class").split("[ \\t\\n\\r\\f]+")));
            for (String word : words) {
                matching.addAll(byWord.getOrDefault("." + word, List.of()));
            }
        }
        matching.sort((a, b) -> a.selector().specificity() != b.selector().specificity()
                ? Integer.compare(a.selector().specificity(), b.selector().specificity())
                : Integer.compare(a.order(), b.order()));
        found.limit().steps(matching.size() * 60L);
        List<Declaration> all = new ArrayList<>();
        matching.forEach(rule -> all.addAll(rule.declarations()));
        return all;
    }
}
