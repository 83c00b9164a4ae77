package puzzleworkshop.cutfiles.svg;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.values.CssText;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.Unreadable;

/** Works out the style of elements: presentation attributes, style sheets, the attribute 'style', inheritance, variables. */
final class SvgStyles {

    /** Attributes that are properties (SVG 2, 6.6). */
    private static final Set<String> PRESENTATION = Set.of(
            "clip-path",
            "clip-rule",
            "color",
            "display",
            "fill",
            "fill-opacity",
            "filter",
            "font-size",
            "marker-end",
            "marker-mid",
            "marker-start",
            "mask",
            "opacity",
            "overflow",
            "stroke",
            "stroke-dasharray",
            "stroke-opacity",
            "stroke-width",
            "transform",
            "transform-box",
            "transform-origin",
            "visibility");

    private static final Set<String> GEOMETRY = Set.of("x", "y", "width", "height", "cx", "cy", "r", "rx", "ry", "d");
    private static final Set<String> WITH_GEOMETRY =
            Set.of("rect", "circle", "ellipse", "path", "svg", "use", "image", "foreignObject", "symbol");
    private static final Set<String> DISPLAYS = Set.of(
            "none",
            "inline",
            "block",
            "inline-block",
            "list-item",
            "contents",
            "flex",
            "inline-flex",
            "grid",
            "inline-grid",
            "table",
            "inline-table",
            "flow-root",
            "run-in",
            "compact",
            "marker",
            "table-row",
            "table-cell",
            "table-column",
            "table-caption",
            "table-row-group",
            "table-header-group",
            "table-footer-group",
            "table-column-group",
            "ruby",
            "flow");
    private static final int LONGEST_VALUE = 10_000;
    private static final int MOST_VARIABLES = 32;

    private final FoundLines found;
    private final SvgTree tree;
    private final SvgUnits units;
    private final CssSheets sheets;

    SvgStyles(FoundLines found, SvgTree tree, SvgUnits units) {
        this.found = found;
        this.tree = tree;
        this.units = units;
        this.sheets = new CssSheets(found);
        tree.sheets().forEach(sheets::add);
    }

    SvgStyle of(SvgNode node, SvgStyle around) {
        if (node.declared == null) {
            node.declared = declared(node);
        }
        if (node.declared.isEmpty()) {
            return new SvgStyle(around.inherited(), Map.of(), around.fontPx());
        }
        found.limit().steps(2L * node.declared.size());
        Map<String, String> inherited = new HashMap<>(around.inherited());
        node.declared.forEach((name, value) -> {
            if (name.startsWith("--")) {
                inherited.put(name, value);
            }
        });
        Map<String, String> own = new HashMap<>();
        double[] font = {around.fontPx()};
        node.declared.forEach((name, value) -> {
            if (name.startsWith("--")) {
                return;
            }
            boolean handedDown = SvgStyle.HANDED_DOWN.contains(name);
            String meant = value.contains("var(") ? substituted(value, inherited) : value;
            if (meant == null) {
                meant = "unset"; // invalid at computed-value time, CSS Variables 3
            } else if (!meant.equals(value) && !isValid(name, meant, false)) {
                meant = "unset";
            }
            switch (meant) {
                case "inherit" -> {
                    String above = handedDown ? null : around.own().get(name);
                    if (above != null) {
                        own.put(name, above);
                    }
                }
                case "unset", "revert", "revert-layer" -> {
                    // what was handed down stays; all else is as at first
                }
                case "initial" -> {
                    if (handedDown) {
                        inherited.remove(name);
                    } else if (name.equals("font-size")) {
                        font[0] = SvgUnits.USUAL_FONT_PX;
                    }
                }
                default -> {
                    if (name.equals("font-size")) {
                        font[0] = fontSize(meant, around.fontPx());
                    } else {
                        (handedDown ? inherited : own).put(name, meant);
                    }
                }
            }
        });
        return new SvgStyle(inherited, own, font[0]);
    }

    private Map<String, String> declared(SvgNode node) {
        Map<String, String> all = new HashMap<>();
        String[] attributes = node.attributes();
        for (int i = 0; i < attributes.length; i += 2) {
            String name = attributes[i];
            if (PRESENTATION.contains(name) || GEOMETRY.contains(name) && WITH_GEOMETRY.contains(node.name)) {
                declare(all, name, attributes[i + 1].strip(), true);
            }
        }
        var fromSheets = sheets.of(node);
        var fromStyle = node.has("style")
                ? sheets.declarations(CssText.withoutComments(node.attribute("style")))
                : java.util.List.<CssSheets.Declaration>of();
        for (boolean important : new boolean[] {false, true}) {
            for (CssSheets.Declaration each : fromSheets) {
                if (each.important() == important) {
                    declare(all, each.name(), each.value(), false);
                }
            }
            for (CssSheets.Declaration each : fromStyle) {
                if (each.important() == important) {
                    declare(all, each.name(), each.value(), false);
                }
            }
        }
        return all;
    }

    private void declare(Map<String, String> all, String name, String value, boolean attribute) {
        switch (name) {
            case "marker" -> {
                declare(all, "marker-start", value, false);
                declare(all, "marker-mid", value, false);
                declare(all, "marker-end", value, false);
            }
            case "font" -> {
                for (String part : value.split("[\\s/]+")) {
                    if (!part.isEmpty()
                            && (Character.isDigit(part.charAt(0)) || part.charAt(0) == '.')
                            && part.matches("[0-9.]+(?:[a-zA-Z]{2,3}|%)")) {
                        all.put("font-size", part);
                    }
                }
            }
            // properties that would move or hide lines and are not interpreted
            case "translate",
                    "rotate",
                    "scale",
                    "offset",
                    "offset-path",
                    "zoom",
                    "animation",
                    "animation-name",
                    "all",
                    "content-visibility",
                    "mask-image",
                    "-webkit-mask",
                    "-webkit-mask-image",
                    "perspective" -> {
                if (!value.equals("none") && !value.equals("normal") && !attribute) {
                    found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", name);
                }
            }
            case "display", "visibility" -> keep(all, name, value.toLowerCase(Locale.ROOT), attribute);
            default -> {
                if (name.startsWith("--") || PRESENTATION.contains(name) || GEOMETRY.contains(name)) {
                    keep(all, name, value, attribute);
                }
            }
        }
    }

    private void keep(Map<String, String> all, String name, String value, boolean attribute) {
        if (!attribute && GEOMETRY.contains(name) && value.matches("[+-]?[0-9.]*[1-9][0-9.]*")) {
            // no length by the standard; some browsers take it as px, others leave it out
            found.count(Remark.Kind.UNSURE, "cutfiles.svg.style_unknown", name + ": " + value);
            return;
        }
        boolean tooLong = value.length() > LONGEST_VALUE && !name.equals("d") && !name.equals("stroke-dasharray");
        if (!tooLong && (value.contains("var(") || isValid(name, value, attribute))) {
            all.put(name, value);
        }
    }

    private boolean isValid(String name, String value, boolean attribute) {
        if (value.isEmpty()) {
            return false;
        }
        if (isForAll(value)) {
            return true;
        }
        try {
            return switch (name) {
                case "stroke", "fill" ->
                    isContext(value) || SvgPaint.of(value, "black", tree) != SvgPaint.Shows.INVALID;
                case "color" -> SvgPaint.of(value, "black", tree) != SvgPaint.Shows.INVALID && !value.equals("none");
                case "display" -> DISPLAYS.contains(value.toLowerCase(Locale.ROOT));
                case "visibility" -> value.equals("visible") || value.equals("hidden") || value.equals("collapse");
                case "opacity", "stroke-opacity", "fill-opacity" -> Double.isFinite(SvgUnits.share(value));
                case "stroke-width" -> units.px(value, 100, 16) >= 0;
                case "x", "y", "cx", "cy", "width", "height", "r", "rx", "ry" ->
                    attribute || value.equals("auto") || value.contains("(") || hasUnitOrIsZero(value);
                default -> true;
            };
        } catch (Unreadable wrong) {
            return value.contains("calc(");
        }
    }

    private static boolean isContext(String value) {
        return value.equals("context-fill") || value.equals("context-stroke");
    }

    private static boolean isForAll(String value) {
        return switch (value) {
            case "inherit", "initial", "unset", "revert", "revert-layer" -> true;
            default -> false;
        };
    }

    /** In a style sheet a length needs its unit (CSS Values 5); in an attribute it does not (SVG 2, 8.8). */
    private boolean hasUnitOrIsZero(String value) {
        return Character.isLetter(value.charAt(value.length() - 1))
                || value.endsWith("%")
                || units.px(value, 100, 16) == 0;
    }

    private double fontSize(String value, double around) {
        try {
            return switch (value) {
                case "xx-small" -> 9;
                case "x-small" -> 10;
                case "small" -> 13;
                case "medium" -> 16;
                case "large" -> 18;
                case "x-large" -> 24;
                case "xx-large" -> 32;
                case "smaller" -> around / 1.2;
                case "larger" -> around * 1.2;
                default -> units.px(value, around, around);
            };
        } catch (Unreadable wrong) {
            return around;
        }
    }

    /** Null where a variable is missing and no other value is given. */
    private String substituted(String value, Map<String, String> variables) {
        String text = value;
        for (int i = 0; i < MOST_VARIABLES; i++) {
            found.limit().steps(1);
            int start = text.indexOf("var(");
            if (start < 0) {
                return text.strip();
            }
            int end = CssText.find(text, start + 4, ")");
            if (end == text.length()) {
                return null;
            }
            String inner = text.substring(start + 4, end);
            int comma = inner.indexOf(',');
            String name = (comma < 0 ? inner : inner.substring(0, comma)).strip();
            String meant = variables.get(name);
            if (meant == null) {
                if (comma < 0) {
                    return null;
                }
                meant = inner.substring(comma + 1);
            }
            text = text.substring(0, start) + meant + text.substring(end + 1);
            if (text.length() > LONGEST_VALUE) {
                return null;
            }
        }
        return null;
    }
}
