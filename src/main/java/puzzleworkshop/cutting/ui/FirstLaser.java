package puzzleworkshop.cutting.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.Machines;
import puzzleworkshop.workshop.ui.FirstThing;

@Component
class FirstLaser implements FirstThing {

    private final Machines machines;

    FirstLaser(Machines machines) {
        this.machines = machines;
    }

    @Override
    public int place() {
        return 10;
    }

    @Override
    public String key() {
        return "cutting.first";
    }

    @Override
    public String path() {
        return "machines";
    }

    @Override
    public boolean done() {
        return !machines.inUse().isEmpty();
    }
}
