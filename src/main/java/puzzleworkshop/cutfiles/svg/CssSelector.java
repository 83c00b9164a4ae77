package puzzleworkshop.cutfiles.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import puzzleworkshop.cutfiles.svg.values.CssText;
import puzzleworkshop.cutfiles.svg.values.Scanner;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.measure.WorkLimit;

/**
 * One selector of a style sheet (Selectors level 3, with :is, :where and :not of level 4): compounds from right to left.
 *
 * @param compounds the last one first
 * @param combinators between a compound and the next in the list: ' ', '&gt;', '+', '~'
 * @param specificity ids · 1,000,000 + classes · 1,000 + names
 */
record CssSelector(List<List<Test>> compounds, List<Character> combinators, int specificity) {

    static final int ID = 1_000_000;
    static final int CLASS = 1_000;
    static final int NAME = 1;

    /** What an element must be. */
    @FunctionalInterface
    interface Test {
        boolean holds(SvgNode node, WorkLimit limit);
    }

    boolean matches(SvgNode node, WorkLimit limit) {
        return matches(node, 0, limit);
    }

    private boolean matches(SvgNode node, int number, WorkLimit limit) {
        limit.steps(2);
        for (Test test : compounds.get(number)) {
            if (!test.holds(node, limit)) {
                return false;
            }
        }
        if (number == combinators.size()) {
            return true;
        }
        char combinator = combinators.get(number);
        SvgNode next = combinator == ' ' || combinator == '>' ? node.parent : sibling(node);
        while (next != null) {
            if (matches(next, number + 1, limit)) {
                return true;
            }
            if (combinator == '>' || combinator == '+') {
                return false;
            }
            next = combinator == ' ' ? next.parent : sibling(next);
        }
        return false;
    }

    private static SvgNode sibling(SvgNode node) {
        return node.place == 0 || node.parent == null ? null : node.parent.children.get(node.place - 1);
    }

    /** @throws Unreadable for what is not known here */
    static List<CssSelector> list(String text) {
        List<CssSelector> all = new ArrayList<>();
        for (String part : CssText.split(text, ',')) {
            all.add(new Reader(part.strip()).selector());
        }
        return all;
    }

    /** Reads one selector. */
    private static final class Reader {

        private final String text;
        private int at;
        private int specificity;

        Reader(String text) {
            this.text = text;
        }

        CssSelector selector() {
            List<List<Test>> compounds = new ArrayList<>();
            List<Character> combinators = new ArrayList<>();
            compounds.add(compound());
            while (at < text.length()) {
                char combinator = combinator();
                compounds.addFirst(compound());
                combinators.addFirst(combinator);
            }
            return new CssSelector(compounds, combinators, specificity);
        }

        private char combinator() {
            char found = 0;
            while (at < text.length()) {
                char c = text.charAt(at);
                if (Scanner.isBlank(c)) {
                    found = found == 0 ? ' ' : found;
                } else if ((c == '>' || c == '+' || c == '~') && (found == 0 || found == ' ')) {
                    found = c;
                } else {
                    break;
                }
                at++;
            }
            if (found == 0) {
                throw new Unreadable("selector " + text);
            }
            return found;
        }

        private List<Test> compound() {
            List<Test> tests = new ArrayList<>(2);
            int start = at;
            while (at < text.length() && ">+~ \t\r\n\f".indexOf(text.charAt(at)) < 0) {
                char c = text.charAt(at);
                switch (c) {
                    case '*' -> at++;
                    case '|' -> at++; // a namespace in front of a name: all that is drawn here is SVG
                    case '#' -> {
                        at++;
                        String id = word();
                        specificity += ID;
                        tests.add((node, limit) -> node.attribute("id").equals(id));
                    }
                    case '.' -> {
                        at++;
                        String name = word();
                        specificity += CLASS;
                        tests.add((node, limit) -> hasWord(node.attribute("class"), name));
                    }
                    case '[' -> tests.add(attribute());
                    case ':' -> tests.add(pseudo());
                    default -> {
                        String name = word();
                        if (at < text.length() && text.charAt(at) == '|') {
                            continue; // it was the namespace's prefix
                        }
                        specificity += NAME;
                        tests.add((node, limit) -> node.name.equals(name));
                    }
                }
            }
            if (at == start) {
                throw new Unreadable("selector " + text);
            }
            return tests;
        }

        private String word() {
            StringBuilder word = new StringBuilder();
            while (at < text.length()) {
                char c = text.charAt(at);
                if (c == '\\' && at + 1 < text.length()) {
                    at++;
                    word.append(text.charAt(at));
                } else if (Character.isLetterOrDigit(c) || c == '-' || c == '_' || c > 127) {
                    word.append(c);
                } else {
                    break;
                }
                at++;
            }
            if (word.isEmpty()) {
                throw new Unreadable("selector " + text);
            }
            return word.toString();
        }

        private String inside(char close) {
            int start = at;
            int end = CssText.closing(text, at, close);
            at = end + 1;
            return text.substring(start, end).strip();
        }

        private Test attribute() {
            at++;
            String inner = inside(']');
            specificity += CLASS;
            int sign = inner.indexOf('=');
            if (sign < 0) {
                return (node, limit) -> node.has(inner);
            }
            char kind = sign > 0 ? inner.charAt(sign - 1) : 0;
            boolean plain = "~|^$*".indexOf(kind) < 0;
            String name = inner.substring(0, plain ? sign : sign - 1).strip();
            String wanted = CssText.unquoted(inner.substring(sign + 1).strip());
            return (node, limit) -> {
                String value = node.attribute(name);
                return node.has(name)
                        && switch (kind) {
                            case '~' -> hasWord(value, wanted);
                            case '|' -> value.equals(wanted) || value.startsWith(wanted + "-");
                            case '^' -> !wanted.isEmpty() && value.startsWith(wanted);
                            case '$' -> !wanted.isEmpty() && value.endsWith(wanted);
                            case '*' -> !wanted.isEmpty() && value.contains(wanted);
                            default -> value.equals(wanted);
                        };
            };
        }

        private Test pseudo() {
            at++;
            if (at < text.length() && text.charAt(at) == ':') {
                throw new Unreadable("a pseudo-element");
            }
            String name = word().toLowerCase(Locale.ROOT);
            String inner = "";
            if (at < text.length() && text.charAt(at) == '(') {
                at++;
                inner = inside(')');
            }
            if (name.equals("not") || name.equals("is") || name.equals("where")) {
                List<CssSelector> of = list(inner);
                boolean wanted = !name.equals("not");
                specificity += name.equals("where")
                        ? 0
                        : of.stream().mapToInt(CssSelector::specificity).max().orElse(0);
                return (node, limit) -> of.stream().anyMatch(each -> each.matches(node, limit)) == wanted;
            }
            specificity += CLASS;
            return switch (name) {
                case "root" -> (node, limit) -> node.parent == null;
                case "first-child" -> nth(0, 1, false, false);
                case "last-child" -> nth(0, 1, true, false);
                case "first-of-type" -> nth(0, 1, false, true);
                case "last-of-type" -> nth(0, 1, true, true);
                case "only-child" -> (node, limit) -> node.parent == null || node.parent.children.size() == 1;
                case "empty" -> (node, limit) -> node.children.isEmpty() && node.text.isEmpty();
                case "nth-child" -> nth(inner, false, false);
                case "nth-last-child" -> nth(inner, true, false);
                case "nth-of-type" -> nth(inner, false, true);
                case "nth-last-of-type" -> nth(inner, true, true);
                // nobody points at a file that is being read
                case "hover",
                        "active",
                        "focus",
                        "focus-within",
                        "focus-visible",
                        "target",
                        "visited",
                        "link",
                        "any-link" -> (node, limit) -> false;
                default -> throw new Unreadable("selector " + text);
            };
        }

        private static Test nth(String formula, boolean fromEnd, boolean ofType) {
            String plain = formula.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
            int n = plain.indexOf('n');
            try {
                if (plain.equals("odd")) {
                    return nth(2, 1, fromEnd, ofType);
                } else if (plain.equals("even")) {
                    return nth(2, 0, fromEnd, ofType);
                } else if (n < 0) {
                    return nth(0, Integer.parseInt(plain), fromEnd, ofType);
                }
                String step = plain.substring(0, n);
                String rest = plain.substring(n + 1);
                int a = step.isEmpty() || step.equals("+") ? 1 : step.equals("-") ? -1 : Integer.parseInt(step);
                return nth(a, rest.isEmpty() ? 0 : Integer.parseInt(rest), fromEnd, ofType);
            } catch (NumberFormatException unknown) {
                throw new Unreadable("selector :nth(" + formula + ")");
            }
        }

        private static Test nth(int step, int first, boolean fromEnd, boolean ofType) {
            return (node, limit) -> {
                if (node.parent == null) {
                    return false;
                }
                List<SvgNode> all = node.parent.children;
                int number = fromEnd ? all.size() - node.place : node.place + 1;
                if (ofType) {
                    number = 1;
                    int way = fromEnd ? 1 : -1;
                    limit.steps(fromEnd ? all.size() - node.place : node.place);
                    for (int i = node.place + way; i >= 0 && i < all.size(); i += way) {
                        number += all.get(i).name.equals(node.name) ? 1 : 0;
                    }
                }
                return step == 0 ? number == first : (number - first) % step == 0 && (number - first) / step >= 0;
            };
        }

        private static boolean hasWord(String words, String wanted) {
            for (int i = words.indexOf(wanted); i >= 0; i = words.indexOf(wanted, i + 1)) {
                int end = i + wanted.length();
                if ((i == 0 || Scanner.isBlank(words.charAt(i - 1)))
                        && (end == words.length() || Scanner.isBlank(words.charAt(end)))) {
                    return true;
                }
            }
            return false;
        }
    }
}
