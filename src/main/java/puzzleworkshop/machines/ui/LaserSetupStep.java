package puzzleworkshop.machines.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.workshop.ui.SetupStep;

@Component
class LaserSetupStep implements SetupStep {

    private final Machines machines;

    LaserSetupStep(Machines machines) {
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
