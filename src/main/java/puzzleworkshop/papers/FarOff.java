package puzzleworkshop.papers;

import puzzleworkshop.measure.Refused;

/** An amount that is probably mistyped: asked about, and booked when somebody says that it is right. */
public class FarOff extends Refused {

    FarOff(String key, Object... arguments) {
        super(key, arguments);
    }
}
