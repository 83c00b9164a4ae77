package puzzleworkshop.placing;

import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.StickingCheck;
import puzzleworkshop.workshop.TradeNumbers;

/**
 * Where the jig brings a print: the corner of the print that the fence fixes comes to where it came on the board that was
 * measured in the jig, and lies turned as it did. That holds because every blank has the same margin round its print.
 *
 * @param place from the drawing, turned by quarters, to the bed; never stretched
 * @param spare what is left at the worst that sticking by hand allows, after half the kerf
 */
record JigPlace(Similarity place, Length spare) {

    static JigPlace of(Position measured, DrawnPrint print, TradeNumbers numbers, Length kerf) {
        Size before = measured.finished();
        double o = measured.overhang().mm();
        Bounds old = Bounds.at(DrawnPrint.turned(new Point(-o, -o), measured.turns()))
                .and(DrawnPrint.turned(
                        new Point(before.width().mm() + o, before.height().mm() + o), measured.turns()));
        // the fence holds the blank at its left and front edges, so the front left corner of the print is the fixed one
        Point fixed = measured.place().of(new Point(old.minX(), old.maxY()));
        Bounds now = print.edges(measured.turns());
        Similarity turned =
                Similarity.about(new Point(0, 0), 1, measured.place().turn(), 0, 0);
        Point corner = turned.of(new Point(now.minX(), now.maxY()));
        Similarity place =
                new Similarity(turned.a(), turned.b(), fixed.xMm() - corner.xMm(), fixed.yMm() - corner.yMm());
        StickingCheck check = StickingCheck.of(
                print.outline(0), print.finished(), print.overhang(), numbers.stickShift(), numbers.stickTurnDegrees());
        return new JigPlace(place, check.spare().minus(kerf.times(0.5)));
    }
}
