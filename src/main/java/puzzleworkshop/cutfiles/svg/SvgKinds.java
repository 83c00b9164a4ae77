package puzzleworkshop.cutfiles.svg;

import java.util.Locale;
import java.util.Set;

/** Kinds of elements, and whether an element is for this reader at all. */
final class SvgKinds {

    /** Draw nothing where they stand; some are drawn from elsewhere. */
    private static final Set<String> NEVER_DRAWN = Set.of(
            "defs",
            "symbol",
            "clipPath",
            "mask",
            "pattern",
            "marker",
            "linearGradient",
            "radialGradient",
            "meshgradient",
            "hatch",
            "solidcolor",
            "solidColor",
            "stop",
            "filter",
            "title",
            "desc",
            "metadata",
            "style",
            "script",
            "view",
            "cursor",
            "font",
            "font-face",
            "color-profile",
            "animate",
            "animateTransform",
            "animateMotion",
            "animateColor",
            "set",
            "discard",
            "link");

    private SvgKinds() {}

    static boolean isNeverDrawn(SvgNode node) {
        return node.name.indexOf(' ') >= 0 || NEVER_DRAWN.contains(node.name);
    }

    /** Conditions (SVG 2, 5.9.3): no extensions are known here, and English is read. */
    static boolean isWanted(SvgNode node) {
        if (node.has("requiredExtensions")) {
            return false;
        }
        if (!node.has("systemLanguage")) {
            return true;
        }
        for (String language :
                node.attribute("systemLanguage").toLowerCase(Locale.ROOT).split(",")) {
            String plain = language.strip();
            if (plain.equals("en") || plain.startsWith("en-")) {
                return true;
            }
        }
        return false;
    }
}
