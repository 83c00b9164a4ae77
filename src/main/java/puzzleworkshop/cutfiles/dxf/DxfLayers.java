package puzzleworkshop.cutfiles.dxf;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Whether layers show (DXF reference, LAYER: 62 negative is off, 70 bit 1 is frozen, 290 = 0 is not plotted). */
final class DxfLayers {

    /** How a layer shows. */
    enum State {
        SHOWN,
        /** Of a block on it, what lies on other layers still shows. */
        OFF,
        /** Nothing of a block on it shows. */
        FROZEN,
        NOT_PLOTTED
    }

    private static final int FROZEN = 1;

    private final Map<String, State> states = new HashMap<>();
    private final Map<String, String> linetypes = new HashMap<>();

    DxfLayers(List<DxfThing> tables) {
        states.put("DEFPOINTS", State.NOT_PLOTTED); // never plotted, whatever its flag says
        for (DxfThing thing : tables) {
            if (thing.kind().equals("LAYER")) {
                states.merge(thing.name(2), state(thing), (one, other) -> one == State.SHOWN ? other : one);
                linetypes.put(thing.name(2), thing.name(6));
            }
        }
    }

    private static State state(DxfThing layer) {
        if (layer.has(70, FROZEN)) {
            return State.FROZEN;
        }
        if (layer.number(62, 7) < 0) {
            return State.OFF;
        }
        return layer.whole(290, 1) == 0 ? State.NOT_PLOTTED : State.SHOWN;
    }

    State of(String layer) {
        return states.getOrDefault(layer, State.SHOWN);
    }

    /** Name of the layer's line type in capitals. */
    String linetype(String layer) {
        return linetypes.getOrDefault(layer, "");
    }
}
