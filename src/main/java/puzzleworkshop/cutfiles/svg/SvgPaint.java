package puzzleworkshop.cutfiles.svg;

import java.util.Locale;
import java.util.Set;
import puzzleworkshop.cutfiles.svg.values.CssText;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.Unreadable;

/** Whether a paint shows (SVG 2, 13.2; CSS Color level 4). Which colour it is does not matter to a cut. */
final class SvgPaint {

    /** What a paint does. */
    enum Shows {
        YES,
        NO,
        /** No value of the property: the declaration does not count. */
        INVALID
    }

    private static final Set<String> FUNCTIONS = Set.of(
            "rgb",
            "rgba",
            "hsl",
            "hsla",
            "hwb",
            "lab",
            "lch",
            "oklab",
            "oklch",
            "color",
            "device-cmyk",
            "color-mix",
            "light-dark");
    /** CSS Color level 4, 6.1 and 6.2 (named colours, system colours of CSS 2). */
    private static final Set<String> NAMES = Set.of(
            ("aliceblue antiquewhite aqua aquamarine azure beige bisque black blanchedalmond blue blueviolet brown"
                            + " burlywood cadetblue chartreuse chocolate coral cornflowerblue cornsilk crimson cyan"
                            + " darkblue darkcyan darkgoldenrod darkgray darkgreen darkgrey darkkhaki darkmagenta"
                            + " darkolivegreen darkorange darkorchid darkred darksalmon darkseagreen darkslateblue"
                            + " darkslategray darkslategrey darkturquoise darkviolet deeppink deepskyblue dimgray"
                            + " dimgrey dodgerblue firebrick floralwhite forestgreen fuchsia gainsboro ghostwhite gold"
                            + " goldenrod gray green greenyellow grey honeydew hotpink indianred indigo ivory khaki"
                            + " lavender lavenderblush lawngreen lemonchiffon lightblue lightcoral lightcyan"
                            + " lightgoldenrodyellow lightgray lightgreen lightgrey lightpink lightsalmon"
                            + " lightseagreen lightskyblue lightslategray lightslategrey lightsteelblue lightyellow"
                            + " lime limegreen linen magenta maroon mediumaquamarine mediumblue mediumorchid"
                            + " mediumpurple mediumseagreen mediumslateblue mediumspringgreen mediumturquoise"
                            + " mediumvioletred midnightblue mintcream mistyrose moccasin navajowhite navy oldlace"
                            + " olive olivedrab orange orangered orchid palegoldenrod palegreen paleturquoise"
                            + " palevioletred papayawhip peachpuff peru pink plum powderblue purple rebeccapurple red"
                            + " rosybrown royalblue saddlebrown salmon sandybrown seagreen seashell sienna silver"
                            + " skyblue slateblue slategray slategrey snow springgreen steelblue tan teal thistle"
                            + " tomato turquoise violet wheat white whitesmoke yellow yellowgreen canvas canvastext"
                            + " linktext windowtext window buttontext buttonface graytext highlight highlighttext"
                            + " activeborder activecaption appworkspace background buttonhighlight buttonshadow"
                            + " captiontext inactiveborder inactivecaption inactivecaptiontext infobackground infotext"
                            + " menu menutext scrollbar threeddarkshadow threedface threedhighlight threedlightshadow"
                            + " threedshadow windowframe")
                    .split(" "));

    private SvgPaint() {}

    /** @param current the property 'color', for currentColor */
    static Shows of(String value, String current, SvgTree tree) {
        String plain = value.strip().toLowerCase(Locale.ROOT);
        if (plain.startsWith("url(")) {
            int end = CssText.find(plain, 4, ")");
            if (end == plain.length()) {
                return Shows.INVALID;
            }
            SvgNode server = tree.referred(reference(value));
            if (server != null
                    && (server.name.equals("linearGradient")
                            || server.name.equals("radialGradient")
                            || server.name.equals("pattern"))) {
                return Shows.YES;
            }
            String fallback = plain.substring(end + 1).strip();
            return fallback.isEmpty() ? Shows.NO : of(fallback, current, tree);
        }
        if (plain.equals("currentcolor")) {
            return current.equalsIgnoreCase("currentcolor") ? Shows.YES : of(current, "black", tree);
        }
        if (plain.equals("none") || plain.equals("transparent") || plain.startsWith("context-")) {
            return Shows.NO;
        }
        if (plain.startsWith("#")) {
            return hexadecimal(plain.split("[\\s]", 2)[0]);
        }
        int bracket = plain.indexOf('(');
        if (bracket > 0) {
            String function = plain.substring(0, bracket).strip();
            return FUNCTIONS.contains(function)
                    ? transparent(function, plain.substring(bracket + 1)) ? Shows.NO : Shows.YES
                    : Shows.INVALID;
        }
        return NAMES.contains(plain) ? Shows.YES : Shows.INVALID;
    }

    /** What url(…) refers to. */
    static String reference(String value) {
        int open = value.indexOf('(');
        int end = CssText.find(value, open + 1, ")");
        return CssText.unquoted(value.substring(open + 1, end).strip());
    }

    private static Shows hexadecimal(String text) {
        if (!text.matches("#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})")) {
            return Shows.INVALID;
        }
        boolean clear = text.length() == 5 && text.endsWith("0") || text.length() == 9 && text.endsWith("00");
        return clear ? Shows.NO : Shows.YES;
    }

    /** Whether the fourth number, or the one behind a stroke, is zero. */
    private static boolean transparent(String function, String arguments) {
        if (function.startsWith("color") || function.equals("light-dark") || function.equals("device-cmyk")) {
            return false;
        }
        String inner = arguments.replace(")", " ");
        String[] parts = inner.strip().split("[\\s,/]+");
        return parts.length == 4 && zero(parts[3]);
    }

    private static boolean zero(String number) {
        try {
            return SvgUnits.share(number) <= 0;
        } catch (Unreadable none) {
            return false;
        }
    }
}
