package puzzleworkshop.sheets.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.ui.SetupStep;

@Component
class SheetsSetupStep implements SetupStep {

    private final SheetRack rack;

    SheetsSetupStep(SheetRack rack) {
        this.rack = rack;
    }

    @Override
    public int place() {
        return 20;
    }

    @Override
    public String key() {
        return "sheets.first";
    }

    @Override
    public String path() {
        return "sheets/enter";
    }

    @Override
    public boolean done() {
        // a rack that is used up was entered all the same
        return rack.count(RackFilter.everEntered()) > 0;
    }
}
