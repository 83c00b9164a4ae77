package puzzleworkshop.pricing.ui;

import java.util.Arrays;
import org.springframework.stereotype.Component;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.workshop.ui.SetupStep;

@Component
class RatesSetupStep implements SetupStep {

    private final RateBook rates;

    RatesSetupStep(RateBook rates) {
        this.rates = rates;
    }

    @Override
    public int place() {
        return 40;
    }

    @Override
    public String key() {
        return "pricing.first";
    }

    @Override
    public String path() {
        return "rates";
    }

    @Override
    public boolean done() {
        return Arrays.stream(RateKind.values())
                .anyMatch(kind -> !rates.history(kind).isEmpty());
    }
}
