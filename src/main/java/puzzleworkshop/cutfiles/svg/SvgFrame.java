package puzzleworkshop.cutfiles.svg;

import java.awt.geom.AffineTransform;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;

/**
 * What holds around an element where it is drawn.
 *
 * @param toMm from user units to millimetres
 * @param style what is inherited
 * @param around nearest viewport
 * @param clip what is left of lines
 * @param unsure key of a sentence, when it is not sure whether lines show at all; else null
 */
record SvgFrame(AffineTransform toMm, SvgStyle style, SvgViewport around, SvgClip clip, String unsure) {

    SvgFrame with(AffineTransform other) {
        return new SvgFrame(other, style, around, clip, unsure);
    }

    SvgFrame with(SvgStyle other) {
        return new SvgFrame(toMm, other, around, clip, unsure);
    }

    SvgFrame with(SvgViewport other) {
        return new SvgFrame(toMm, style, other, clip, unsure);
    }

    SvgFrame with(SvgClip other) {
        return new SvgFrame(toMm, style, around, other, unsure);
    }

    SvgFrame unsure(String why) {
        return new SvgFrame(toMm, style, around, clip, why);
    }
}
