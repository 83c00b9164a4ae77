package puzzleworkshop.cutfiles.svg;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;

/**
 * What holds for one element where it is drawn: its own properties and those that it has from around it.
 *
 * @param inherited properties that go on to what lies within
 * @param own all others
 * @param fontPx size of the font
 */
record SvgStyle(Map<String, String> inherited, Map<String, String> own, double fontPx) {

    /** Properties that are handed down (SVG 2, appendix F); others have no say in where a line lies. */
    static final Set<String> HANDED_DOWN = Set.of(
            "clip-rule",
            "color",
            "fill",
            "fill-opacity",
            "marker-start",
            "marker-mid",
            "marker-end",
            "stroke",
            "stroke-dasharray",
            "stroke-opacity",
            "stroke-width",
            "visibility");

    static final SvgStyle INITIAL = new SvgStyle(new HashMap<>(), new HashMap<>(), SvgUnits.USUAL_FONT_PX);

    String get(String property, String initial) {
        return (HANDED_DOWN.contains(property) ? inherited : own).getOrDefault(property, initial);
    }

    boolean has(String property) {
        return !get(property, "none").equals("none");
    }
}
