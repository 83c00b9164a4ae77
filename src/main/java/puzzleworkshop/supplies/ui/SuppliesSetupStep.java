package puzzleworkshop.supplies.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.workshop.ui.SetupStep;

@Component
class SuppliesSetupStep implements SetupStep {

    private final Supplies supplies;

    SuppliesSetupStep(Supplies supplies) {
        this.supplies = supplies;
    }

    @Override
    public int place() {
        return 30;
    }

    @Override
    public String key() {
        return "supplies.first";
    }

    @Override
    public String path() {
        return "supplies";
    }

    @Override
    public boolean done() {
        return !supplies.items().isEmpty();
    }
}
